#include "sim/prove/run_firmware.hpp"

#include <nlohmann/json.hpp>

#include <iostream>

namespace dialplate {
namespace {

const char* said(Stop stop) {
    switch (stop) {
        case Stop::mark:
            return "mark";
        case Stop::cycles:
            return "time over";
        case Stop::ended:
            return "asleep with interrupts off";
        case Stop::crashed:
            return "crashed";
    }
    return "";
}

}  // namespace

int run_firmware(const FirmwareRun& run) {
    Board board(run.board);
    if (const auto wrong = board.load(run.elf)) {
        std::cerr << "dialplate-prove: " << *wrong << '\n';
        return 2;
    }
    const Stop stop =
        board.run_for(static_cast<CycleCount>(run.for_ms * run.board.clock.value / 1000.0));
    const BusFaults faults = board.faults();
    if (run.json) {
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
    return faults.total() == 0 && stop != Stop::crashed ? 0 : 1;
}

}  // namespace dialplate
