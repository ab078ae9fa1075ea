// The engine through the cross compiler: how much flash, RAM and stack comes out.
#pragma once

#include "sim/ledger/size_terms.hpp"
#include "sim/prototype/parts_used.hpp"

#include <string>

namespace dialplate {

/// What is compiled: see tests/firmware/engine_size.cpp.
struct Build {
    PartSet parts{};
    bool engine = true;  ///< false: the sketch without an engine.
    int driver = 0;      ///< 0: two empty functions in its place.
    int bytes_per_pixel = 2;
    bool touch = false;        ///< The touch sheet is read; with a driver only.
    int context_columns = 64;  ///< Of the widest bitmap in `context`.
    /// "atmega328p", "atmega2560"; "avrxmega3" for a megaAVR 0; "cortex-m0plus", "cortex-m3". The last three
    /// have no driver.
    const char* mcu = "atmega328p";
};

/// What stands for that program.
Build build_of(const DisplayProgram& program);

/// Bytes.
struct Compiled {
    int flash = 0;
    int state = 0;  ///< Static RAM without the arena.
    int stack =
        0;  ///< Longest path of calls from the engine's service function on, itself included; 0 if there is recursion.
};

class Compiler {
public:
    explicit Compiler(std::string tree) : tree_(std::move(tree)) {}

    /// Whether the compiler for that microcontroller and its binutils are there.
    [[nodiscard]] static bool installed(const std::string& mcu = "atmega328p");
    /// "avr-g++ 5.4.0".
    [[nodiscard]] static std::string version(const std::string& mcu = "atmega328p");
    /// @throws std::runtime_error with the compiler's words.
    [[nodiscard]] Compiled compile(const Build& build) const;

private:
    std::string tree_;
};

}  // namespace dialplate
