// The files of an emission that are made for the layout, one function each.
#pragma once

#include "sim/emit/emission.hpp"
#include "sim/emit/layout_names.hpp"
#include "sim/emit/pins.hpp"
#include "sim/prototype/parts_used.hpp"

#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// What every file is made from.
struct Emitting {
    const Layout& layout;
    const BuiltImage& built;
    Example example;
    PartSet parts;
    LayoutNames names;
    std::optional<Pins> pins;  ///< Present on parts that the drivers know.
    int memory_bytes;

    [[nodiscard]] bool touch() const { return parts.has(Part::touch) && pins.has_value(); }
    [[nodiscard]] bool own_driver() const { return example == Example::own_driver; }
};

std::string layout_header(const Emitting& it);  ///< layout.hpp
std::string image_source(const Emitting& it);   ///< image.cpp
std::string wiring_header(const Emitting& it);  ///< wiring.hpp
std::string own_display(const Emitting& it);    ///< own_display.hpp
std::string sketch(const Emitting& it);         ///< The .ino file.
std::string bare_main(const Emitting& it);      ///< main.cpp
std::string read_me(const Emitting& it);        ///< README.md

/// Headers of the engine that wiring.hpp and layout.hpp include, as named in the tree.
std::vector<std::string> engine_roots(const Emitting& it);

/// Name of a microcontroller as avr-g++ takes it.
std::string gcc_name(const Mcu& mcu);

/// How much faster the processor runs than the serial bus: a power of two from 2 to 128.
int serial_divider(const Layout& layout);

}  // namespace dialplate
