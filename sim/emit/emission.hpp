// The code for a sketch, as files in memory.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"

#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// Which sketch is written beside the display's code.
enum class Example {
    driver,      ///< One of the bus drivers of ui/mcu.
    own_driver,  ///< The sketch's own driver supplies the two functions of ui/bus.hpp.
};

struct EmittedFile {
    std::string name;  ///< Relative, parts joined by '/'.
    std::string text;
    bool authors = false;  ///< Meant to be changed by the author: kept when it was.
};

/// Everything that is written for a layout. A function of the layout and the example alone: no dates, no
/// paths, no order of a hash table.
struct Emission {
    std::vector<EmittedFile> files;  ///< In order of their names.
    std::string sketch;              ///< Name of the .ino file, without its ending.
    Example example = Example::driver;
    int memory_bytes = 0;  ///< Of the array that the sketch hands to the engine.
    Bytes image;
};

/// Why there can be no code for a layout.
struct EmitRefusal {
    std::string why;  ///< A sentence with the figures, and what could be dropped.
};

/// @pre `built` was made from `layout` without errors.
/// @return Why not; empty: it can be emitted. The drivers know the classic AVR only, on all else the
///         example has to be `own_driver`.
std::optional<EmitRefusal> cannot_emit(const Layout& layout,
                                       const BuiltImage& built,
                                       Example example);

/// The example that fits when none is asked for.
Example usual_example(const Mcu& mcu);

/// The part of an example that reads the touch sheet: the function read_finger(), which tells `screen` what it
/// found. Needs wiring.hpp and layout.hpp.
std::string finger_reading();

/// @pre cannot_emit() has nothing to say.
Emission emit(const Layout& layout, const BuiltImage& built, Example example);

}  // namespace dialplate
