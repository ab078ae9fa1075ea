// Reading a row in `runs` on an AVR with flash apart: what RunsCore of ui/edges.hpp does, in assembly. About 50
// cycles a run; the compiler's needs some 130.
#pragma once

#include "ui/edges.hpp"

#include <stdint.h>

namespace dialplate {

#if defined(__AVR__) && __AVR_ARCH__ != 103

struct FastRunsCore {
    /// See RunsCore::read.
    template <class Image>
    __attribute__((noinline)) static uint8_t read(const Image&,
                                                  BitPlace& place,
                                                  uint8_t parameters,
                                                  uint8_t width,
                                                  uint8_t* edges,
                                                  uint8_t room) {
        const uint8_t* next = Image::address(place.at);
        uint8_t rest = place.rest;
        uint8_t k = parameters & 15u;
        const uint8_t turn = static_cast<uint8_t>(k ^ (parameters >> 4));
        const uint8_t all = room;
        uint8_t run, column, bits;
        asm volatile(
            "clr %[column]               \n"
            "1:                          \n\t"
            "clr %[run]                  \n"
            "2:                          \n\t"
            "lsl %[rest]                 \n\t"
            "brne 3f                     \n\t"
            "lpm %[rest], Z+             \n\t"
            "rol %[rest]                 \n"  // the one that marked the end is in the carry
            "3:                          \n\t"
            "brcc 4f                     \n\t"
            "inc %[run]                  \n\t"
            "cp %[run], %[width]         \n\t"
            "brlo 2b                     \n"
            "4:                          \n\t"
            "mov %[bits], %[k]           \n\t"
            "tst %[bits]                 \n\t"
            "breq 7f                     \n"
            "5:                          \n\t"
            "lsl %[rest]                 \n\t"
            "brne 6f                     \n\t"
            "lpm %[rest], Z+             \n\t"
            "rol %[rest]                 \n"
            "6:                          \n\t"
            "rol %[run]                  \n\t"
            "dec %[bits]                 \n\t"
            "brne 5b                     \n"
            "7:                          \n\t"
            "eor %[k], %[turn]           \n\t"
            "add %[column], %[run]       \n\t"
            "brcs 8f                     \n\t"
            "cp %[column], %[width]      \n\t"
            "brsh 8f                     \n\t"
            "st %a[edges]+, %[column]       \n\t"
            "dec %[room]                 \n\t"
            "brne 1b                     \n"
            "8:                          \n\t"
            : [next] "+z"(next),
              [rest] "+r"(rest),
              [edges] "+x"(edges),
              [k] "+r"(k),
              [room] "+r"(room),
              [run] "=&r"(run),
              [column] "=&r"(column),
              [bits] "=&r"(bits)
            : [turn] "r"(turn), [width] "r"(width)
            : "memory");
        place.at = static_cast<uint16_t>(next - Image::address(0));
        place.rest = rest;
        return static_cast<uint8_t>(all - room);
    }
};

#else

using FastRunsCore = RunsCore;

#endif

}  // namespace dialplate
