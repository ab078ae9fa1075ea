// The firmware's end of the bench (sim/prove/board.hpp): marks, bytes from outside, bytes to outside.
#pragma once

#include <avr/io.h>

#include <stdint.h>

/// One OUT, so that the distance of two marks is exact.
__attribute__((always_inline)) inline void mark(uint8_t value) {
    asm volatile("out %0, %1" : : "I"(_SFR_IO_ADDR(GPIOR0)), "r"(value) : "memory");
}
inline uint8_t next_byte() {
    return GPIOR1;
}
inline uint16_t next_word() {
    const uint8_t low = next_byte();
    return static_cast<uint16_t>(low | (next_byte() << 8));
}
inline void tell(uint8_t byte) {
    GPIOR2 = byte;
}
