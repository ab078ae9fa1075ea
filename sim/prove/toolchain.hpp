// The cross-compiler: finding it, and turning sources into a firmware.
#pragma once

#include "sim/layout/units.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// What to build. The flags are pinned: sizes and times are promised for them and for no others.
struct FirmwareSources {
    std::vector<std::filesystem::path> sources;
    std::vector<std::filesystem::path> include_directories;
    std::vector<std::string> definitions;  ///< "NAME" or "NAME=value".
    std::string mcu = "atmega328p";
    Hertz clock{16e6};  ///< Becomes F_CPU.
    std::filesystem::path output;
};

/// A compiler that was found.
struct Toolchain {
    std::filesystem::path compiler;
    std::string version;  ///< First line of its --version.
};

/// avr-g++ on the search path; nothing if it is not installed or the AVR C library is missing.
[[nodiscard]] std::optional<Toolchain> find_toolchain();

/// The flags that every firmware is compiled with, in order.
[[nodiscard]] const std::vector<std::string>& pinned_flags();

/// Compiles and links.
/// @return What the compiler said if it failed; empty text: the firmware stands at `output`.
[[nodiscard]] std::string build_firmware(const Toolchain& toolchain, const FirmwareSources& what);

/// Runs a program found on the search path and waits for it.
/// @return Exit status (127: not found) and everything it wrote, standard output and error together.
struct ProgramResult {
    int status = 0;
    std::string output;
};
[[nodiscard]] ProgramResult run_program(const std::vector<std::string>& command);

}  // namespace dialplate
