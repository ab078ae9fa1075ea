// dialplate-prove: runs a firmware on the simulated microcontroller and says what it did on the bus.
#include "sim/prove/board.hpp"

#include <nlohmann/json.hpp>

#include <CLI/CLI.hpp>
#include <iostream>

namespace {

const char* said(dialplate::Stop stop) {
    switch (stop) {
        case dialplate::Stop::mark:
            return "mark";
        case dialplate::Stop::cycles:
            return "time over";
        case dialplate::Stop::ended:
            return "asleep with interrupts off";
        case dialplate::Stop::crashed:
            return "crashed";
    }
    return "";
}

}  // namespace

int main(int argc, char** argv) {
    CLI::App app{
        "Runs a firmware for an AVR with a display at its pins and counts what goes wrong on the "
        "bus"};
    std::string firmware, bus = "spi";
    dialplate::BoardOptions options;
    double clock_mhz = 16.0, for_ms = 1000.0;
    bool json = false;
    app.add_option("firmware", firmware, "ELF file")->required();
    app.add_option("--mcu", options.mcu, "atmega328p or atmega2560")->capture_default_str();
    app.add_option("--clock-mhz", clock_mhz, "Clock of the microcontroller")->capture_default_str();
    app.add_option("--bus", bus, "spi, usart_spi or parallel8")
        ->check(CLI::IsMember({"spi", "usart_spi", "parallel8"}))
        ->capture_default_str();
    app.add_option("--for-ms", for_ms, "Simulated time")->capture_default_str();
    app.add_flag("--json", json, "Result as JSON");
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return app.exit(error) == 0 ? 0 : 2;
    }
    options.clock = dialplate::Hertz{clock_mhz * 1e6};
    options.display.bus = bus == "usart_spi"   ? dialplate::BusKind::usart_spi
                          : bus == "parallel8" ? dialplate::BusKind::parallel8
                                               : dialplate::BusKind::spi;

    dialplate::Board board(options);
    if (const auto wrong = board.load(firmware)) {
        std::cerr << "dialplate-prove: " << *wrong << '\n';
        return 2;
    }
    const auto stop =
        board.run_for(static_cast<dialplate::CycleCount>(for_ms * clock_mhz * 1000.0));
    const dialplate::BusFaults faults = board.faults();
    if (json) {
        std::cout << nlohmann::json{{"flash", board.size().flash},
                                    {"data", board.size().data},
                                    {"stack", board.stack_mark()},
                                    {"cycles", board.cycles()},
                                    {"stopped", said(stop)},
                                    {"bus_bytes", board.bus_bytes()},
                                    {"collisions", faults.collisions},
                                    {"overruns", faults.overruns},
                                    {"edges_while_shifting", faults.edges_while_shifting}}
                         .dump(2)
                  << '\n';
    } else {
        std::cout << "flash " << board.size().flash << " bytes, data " << board.size().data
                  << " bytes, stack " << board.stack_mark() << " bytes\n"
                  << board.cycles() << " cycles, " << said(stop) << '\n'
                  << board.bus_bytes() << " bytes on the bus, " << faults.collisions
                  << " collisions, " << faults.overruns << " overruns, "
                  << faults.edges_while_shifting << " edges while a byte shifted\n";
    }
    return faults.total() == 0 && stop != dialplate::Stop::crashed ? 0 : 1;
}
