// A checksum as text, without a library.
#pragma once

#include "tests/firmware/portable/crc32.hpp"
#include "tests/firmware/portable/outside.hpp"

#include <stdint.h>

inline void say_number(uint32_t number, uint32_t base) {
    char text[11];
    char* at = text + sizeof text - 1;
    *at = 0;
    do {
        *--at = "0123456789abcdef"[number % base];
        number /= base;
    } while (number != 0);
    say(at);
}

/// "bus cbf43926 9"
inline void say_checksum(const char* name, const Crc32& crc) {
    say(name);
    say_number(crc.value(), 16);
    say(" ");
    say_number(crc.bytes(), 10);
}
