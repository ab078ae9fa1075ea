// dialplate-prove: proves that the firmware of a layout draws what the simulator draws.
#include "sim/layout/reader.hpp"
#include "sim/prototype/play.hpp"
#include "sim/prototype/prototype.hpp"
#include "sim/prove/proof.hpp"
#include "sim/prove/proof_report.hpp"
#include "sim/prove/run_firmware.hpp"
#include "sim/prove/toolchain.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <fstream>
#include <iostream>

namespace {

constexpr int fine = 0, failed = 1, unusable = 2;

struct Wish {
    std::vector<std::string> layouts;
    std::string play;
    std::string pictures = ".";
    bool json = false, details = false;
    dialplate::ScenarioOptions scenario;
};

void say(const std::string& sentence) {
    std::cerr << "dialplate-prove: " << sentence << '\n';
}

void complain(const std::string& file, const std::vector<dialplate::Finding>& findings) {
    for (const dialplate::Finding& finding : findings) {
        if (finding.severity == dialplate::Severity::error) {
            std::cerr << dialplate::gnu_line(file, finding) << '\n';
        }
    }
}

struct Loaded {
    dialplate::Layout layout;
    dialplate::BuiltImage built;
};

std::optional<Loaded> load(const std::string& file) {
    dialplate::Reading reading = dialplate::load_layout(file);
    complain(file, reading.findings);
    if (!reading.layout) return std::nullopt;
    dialplate::Building building = dialplate::build_image(*reading.layout);
    complain(file, building.findings);
    if (!building.image) return std::nullopt;
    return Loaded{std::move(*reading.layout), std::move(*building.image)};
}

/// The steps, once the prototype has shown that each of them can be done.
std::optional<std::vector<dialplate::PlayStep>> load_steps(const std::string& file,
                                                           const Loaded& loaded) {
    dialplate::PlayReading reading = dialplate::load_play(file, loaded.layout);
    complain(file, reading.findings);
    if (!reading.steps) return std::nullopt;
    dialplate::Prototype prototype(loaded.layout, loaded.built);
    prototype.settle();
    if (const auto finding = dialplate::perform(prototype, *reading.steps)) {
        complain(file, {*finding});
        return std::nullopt;
    }
    return std::move(*reading.steps);
}

/// A shell's `layouts/*.json` names the schemas too: those stand beside the layouts for editors.
bool is_schema(const std::string& file) {
    if (file == "-") return false;
    std::ifstream in(file);
    const auto json = nlohmann::json::parse(in, nullptr, false);
    if (!json.is_object()) return false;
    const auto schema = json.find("$schema");
    return schema != json.end() && schema->is_string() &&
           schema->get_ref<const std::string&>().find("//json-schema.org/") != std::string::npos;
}

/// @return Exit status.
int prove_one(const Wish& wish,
              const dialplate::Toolchain& toolchain,
              const std::string& file,
              std::size_t name_width,
              nlohmann::ordered_json& all) {
    const std::optional<Loaded> loaded = load(file);
    if (!loaded) return unusable;
    dialplate::ProofOptions options{.scenario = wish.scenario, .play = std::nullopt};
    if (!wish.play.empty()) {
        options.play = load_steps(wish.play, *loaded);
        if (!options.play) return unusable;
    }
    const dialplate::Proof proof =
        dialplate::prove(toolchain, loaded->layout, loaded->built, options);
    all.push_back(dialplate::proof_json(proof));
    if (!wish.json) {
        std::cout << dialplate::proof_line(proof, name_width);
        if (wish.details || !proof.ok()) std::cout << dialplate::proof_details(proof);
        std::cout << std::flush;
    }
    for (const auto& picture : dialplate::write_pictures(proof, wish.pictures)) {
        say("wrote " + picture.string());
    }
    return proof.ok() ? fine : failed;
}

int prove_all(const Wish& wish) {
    const auto toolchain = dialplate::find_toolchain();
    if (!toolchain) {
        say("a proof needs avr-g++ with its C library: install the packages gcc-avr and avr-libc");
        return unusable;
    }
    std::vector<std::string> files;
    std::size_t name_width = 0;
    for (const std::string& file : wish.layouts) {
        if (is_schema(file)) {
            say(file + " is a JSON Schema and no layout: skipped");
            continue;
        }
        files.push_back(file);
        name_width = std::max(name_width, file.size());
    }
    if (files.empty()) {
        say("no layout among the files named");
        return unusable;
    }
    int status = fine;
    nlohmann::ordered_json all = nlohmann::ordered_json::array();
    for (const std::string& file : files) {
        status = std::max(status, prove_one(wish, *toolchain, file, name_width, all));
    }
    if (wish.json && !all.empty()) {
        // One layout: its object. Several: a list.
        std::cout << (files.size() == 1 ? all.front() : all)
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
    app.add_flag("--details", wish.details, "Sizes and times against the ledger too");
    app.add_flag("--json", wish.json, "Report as JSON; several layouts give a list");
    app.add_option("--play", wish.play, "JSON file of steps, done in place of the scenario")
        ->needs(layouts);
    app.add_option("--pictures", wish.pictures, "Where pictures of a difference are written")
        ->type_name("DIR")
        ->check(CLI::ExistingDirectory)
        ->capture_default_str();
    app.add_option("--tuning-steps",
                   wish.scenario.tuning_steps,
                   "Shared out among the pages with the frequency")
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
