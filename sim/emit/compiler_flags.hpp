// The flags of avr-g++ that the sizes and times of the ledger are measured with. The README of the emitted code
// names them, every proof compiles with them, and tests/firmware/compile.sh reads them from here: the text
// between the quotes, one line.
#pragma once

namespace dialplate {

/// Prologues as calls: with many large functions they save more flash than the calls cost (950 of 17,400 bytes).
inline constexpr const char* compiler_flags =
    // clang-format off
    "-std=c++14 -Os -ffunction-sections -fdata-sections -fno-exceptions -fno-rtti -fno-threadsafe-statics -Wl,--gc-sections -mrelax -flto -mcall-prologues";
// clang-format on

}  // namespace dialplate
