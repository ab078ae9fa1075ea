// A layout drawn by the firmware on a simulated chip, and by the same engine on the PC: what each call of the
// engine's service function did, and how long it took.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"
#include "sim/prototype/engine_work.hpp"
#include "sim/prototype/parts_used.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {

/// A driver as firmware is built with it.
struct TimedDriver {
    const char* name;  ///< As layouts and BusKind have it.
    const char* link;  ///< tests/firmware/bench/display.hpp
    BusKind kind = BusKind::spi;
    int bytes_per_pixel = 2;
};

struct TimedService {
    EngineWork work;
    double cycles = 0.0;
};

/// Services until the engine is idle.
struct TimedUpdate {
    std::string what;
    std::vector<TimedService> services;
};

struct TimedRun {
    PartSet parts;
    std::vector<TimedUpdate> updates;  ///< Those that sent something.
    std::string trouble;               ///< Why it is no use; empty: nothing.
};

/// Plays every page, changes of every value small and large, and a press of each key.
/// @param rounds  Of changes.
/// @param tree    Of the sources.
/// @param mcu     "atmega328p" or "atmega2560", at 16 MHz; a serial bus at 8 MHz.
TimedRun timed_run(const Layout& layout,
                   const BuiltImage& built,
                   const TimedDriver& driver,
                   int rounds,
                   const std::filesystem::path& tree,
                   const std::string& mcu = "atmega328p");

/// On the first page, gives one value these numbers, one after the other; an update for each.
TimedRun timed_numbers(const Layout& layout,
                       const BuiltImage& built,
                       const TimedDriver& driver,
                       ValueId value,
                       const std::vector<std::int32_t>& numbers,
                       const std::filesystem::path& tree);

}  // namespace dialplate
