// Reading a row in `runs` on an AVR with flash apart: what RunsCore of ui/edges.hpp does, in assembly. About 30
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
                                                  RunRows& bitmap,
                                                  uint8_t* edges,
                                                  uint8_t room) {
        const uint8_t* next = Image::address(bitmap.place.at);
        uint8_t rest = bitmap.place.rest;
        uint8_t k = bitmap.parameters & 15u;
        const uint8_t turn = static_cast<uint8_t>(k ^ (bitmap.parameters >> 4));
        uint8_t run, column, bits;
        asm volatile(
            "clr %[column]               \n\t"
            "rjmp 1f                     \n"
            // The next byte of the image. The one that marked the end of the last is in the carry, and marks it
            // again.
            "ones%=:                     \n\t"
            "lpm %[rest], Z+             \n\t"
            "rol %[rest]                 \n\t"
            "rjmp 3f                     \n"
            "low%=:                      \n\t"
            "lpm %[rest], Z+             \n\t"
            "rol %[rest]                 \n\t"
            "rjmp 6f                     \n"
            "same%=:                     \n\t"
            "lpm %[rest], Z+             \n\t"
            "rol %[rest]                 \n\t"
            "rjmp more%=                 \n"
            // A run: its ones, then its low bits.
            "1:                          \n\t"
            "clr %[run]                  \n"
            "2:                          \n\t"
            "lsl %[rest]                 \n\t"
            "breq ones%=                 \n"
            "3:                          \n\t"
            "brcc 4f                     \n\t"
            "inc %[run]                  \n\t"
            "brne 2b                     \n"
            "4:                          \n\t"
            "mov %[bits], %[k]           \n\t"
            "tst %[bits]                 \n\t"
            "breq 7f                     \n"
            "5:                          \n\t"
            "lsl %[rest]                 \n\t"
            "breq low%=                  \n"
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
            "st %a[edges]+, %[column]    \n\t"
            "dec %[room]                 \n\t"
            "brne 1b                     \n"
            // The row is complete; how many there are like it.
            "8:                          \n\t"
            "ldi %[run], %[end]          \n\t"
            "st %a[edges], %[run]        \n\t"
            "clr %[run]                  \n"
            "9:                          \n\t"
            "inc %[run]                  \n\t"
            "cp %[run], %[left]          \n\t"
            "breq 10f                    \n\t"
            "lsl %[rest]                 \n\t"
            "breq same%=                 \n"
            "more%=:                     \n\t"
            "brcs 9b                     \n"
            "10:                         \n\t"
            : [next] "+z"(next),
              [rest] "+r"(rest),
              [edges] "+x"(edges),
              [k] "+r"(k),
              [room] "+r"(room),
              [run] "=&d"(run),
              [column] "=&r"(column),
              [bits] "=&r"(bits)
            : [turn] "r"(turn),
              [width] "r"(bitmap.width),
              [left] "r"(bitmap.left),
              [end] "M"(int{Edges::end})
            : "memory");
        bitmap.place.at = static_cast<uint16_t>(next - Image::address(0));
        bitmap.place.rest = rest;
        bitmap.left = static_cast<uint8_t>(bitmap.left - run);
        return run;
    }
};

#else

using FastRunsCore = RunsCore;

#endif

}  // namespace dialplate
