// dialplate-prove: proves that the firmware of a layout draws what the simulator draws.
#include "sim/layout/reader.hpp"
#include "sim/prove/proof.hpp"
#include "sim/prove/proof_report.hpp"
#include "sim/prove/run_firmware.hpp"
#include "sim/prove/toolchain.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <iostream>

namespace {

constexpr int fine = 0, failed = 1, unusable = 2;

struct Wish {
    std::vector<std::string> layouts;
    std::string pictures = ".";
    bool json = false;
    dialplate::ScenarioOptions scenario;
};

void complain(const std::string& file, const std::vector<dialplate::Finding>& findings) {
    for (const dialplate::Finding& finding : findings) {
        if (finding.severity == dialplate::Severity::error) {
            std::cerr << dialplate::gnu_line(file, finding) << '\n';
        }
    }
}

/// @return Exit status.
int prove_one(const Wish& wish,
              const dialplate::Toolchain& toolchain,
              const std::string& file,
              nlohmann::ordered_json& all) {
    const dialplate::Reading reading = dialplate::load_layout(file);
    complain(file, reading.findings);
    if (!reading.layout) return unusable;
    const dialplate::Building building = dialplate::build_image(*reading.layout);
    complain(file, building.findings);
    if (!building.image) return unusable;
    const dialplate::Proof proof = dialplate::prove(
        toolchain, *reading.layout, *building.image, *building.image, wish.scenario);
    all.push_back(dialplate::proof_json(proof));
    if (!wish.json) std::cout << dialplate::proof_text(proof) << std::flush;
    for (const auto& picture : dialplate::write_pictures(proof, wish.pictures)) {
        std::cerr << "dialplate-prove: wrote " << picture.string() << '\n';
    }
    return proof.ok() ? fine : failed;
}

int prove_all(const Wish& wish) {
    const auto toolchain = dialplate::find_toolchain();
    if (!toolchain) {
        std::cerr << "dialplate-prove: a proof needs avr-g++ with its C library: install the "
                     "packages gcc-avr and avr-libc\n";
        return unusable;
    }
    int status = fine;
    nlohmann::ordered_json all = nlohmann::ordered_json::array();
    for (const std::string& file : wish.layouts) {
        status = std::max(status, prove_one(wish, *toolchain, file, all));
    }
    if (wish.json && !all.empty()) {
        // One layout: its object. Several: a list.
        std::cout << (wish.layouts.size() == 1 ? all.front() : all)
                         .dump(2, ' ', false, nlohmann::json::error_handler_t::replace)
                  << '\n';
    }
    return status;
}

}  // namespace

int main(int argc, char** argv) {
    CLI::App app{
        "Compiles the code for a layout, runs it on the simulated microcontroller, and compares "
        "every byte and every pixel with the engine on the PC"};
    Wish wish;
    dialplate::FirmwareRun firmware;
    std::string bus = "spi";
    double clock_mhz = 16.0;
    auto* layouts = app.add_option("LAYOUT", wish.layouts, "Layout files");
    app.add_flag("--json", wish.json, "Report as JSON");
    app.add_option("--pictures", wish.pictures, "Where pictures of a difference are written")
        ->type_name("DIR")
        ->check(CLI::ExistingDirectory)
        ->capture_default_str();
    app.add_option("--tuning-steps", wish.scenario.tuning_steps, "On each page with the frequency")
        ->check(CLI::Range(0, 1'000'000))
        ->capture_default_str();
    app.add_option("--random-steps", wish.scenario.random_steps, "Of the random mixture")
        ->check(CLI::Range(0, 1'000'000))
        ->capture_default_str();
    app.add_option("--seed", wish.scenario.seed, "Of the random mixture")->capture_default_str();

    auto* elf = app.add_option("--elf", firmware.elf, "Run this firmware instead, without a layout")
                    ->excludes(layouts)
                    ->type_name("FILE");
    app.add_option("--mcu", firmware.board.mcu, "With --elf: atmega328p or atmega2560")
        ->needs(elf)
        ->capture_default_str();
    app.add_option("--clock-mhz", clock_mhz, "With --elf: clock of the microcontroller")
        ->needs(elf)
        ->capture_default_str();
    app.add_option("--bus", bus, "With --elf: spi, usart_spi or parallel8")
        ->needs(elf)
        ->check(CLI::IsMember({"spi", "usart_spi", "parallel8"}))
        ->capture_default_str();
    app.add_option("--for-ms", firmware.for_ms, "With --elf: simulated time")
        ->needs(elf)
        ->capture_default_str();
    app.footer("Exit status: 0 proven, 1 a proof failed, 2 unusable input or wrong usage.");
    try {
        app.parse(argc, argv);
        if (wish.layouts.empty() && firmware.elf.empty()) throw CLI::RequiredError("LAYOUT");
    } catch (const CLI::ParseError& error) {
        return app.exit(error) == 0 ? fine : unusable;
    }
    if (firmware.elf.empty()) return prove_all(wish);
    firmware.json = wish.json;
    firmware.board.clock = dialplate::Hertz{clock_mhz * 1e6};
    firmware.board.display.bus = bus == "usart_spi"   ? dialplate::BusKind::usart_spi
                                 : bus == "parallel8" ? dialplate::BusKind::parallel8
                                                      : dialplate::BusKind::spi;
    return dialplate::run_firmware(firmware);
}
