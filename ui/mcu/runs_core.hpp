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
    __attribute__((always_inline)) static uint8_t read(const Image&,
                                                       RunRows& bitmap,
                                                       uint8_t* edges,
                                                       uint8_t room) {
        return read_from<Image>(bitmap, edges, room);
    }

    /// See RunsCore::difference.
    __attribute__((noinline)) static Spans difference(const Edges& row,
                                                      const Edges& other,
                                                      uint8_t width) {
        const uint8_t *next = row.at, *of_other = other.at;
        Spans spans{0, 0, 0, 0};
        uint8_t here, there, edge, gap = 0;
        asm("ld %[here], X+              \n\t"
            "ld %[there], Z+             \n"
            // They are alike: up to the next edge that only one has.
            "1:                          \n\t"
            "cp %[here], %[there]        \n\t"
            "brlo 2f                     \n\t"
            "brne 3f                     \n\t"
            "cpi %[here], %[end]         \n\t"
            "breq 9f                     \n\t"
            "ld %[here], X+              \n\t"
            "ld %[there], Z+             \n\t"
            "rjmp 1b                     \n"
            "2:                          \n\t"
            "mov %[edge], %[here]        \n\t"
            "ld %[here], X+              \n\t"
            "rjmp 4f                     \n"
            "3:                          \n\t"
            "mov %[edge], %[there]       \n\t"
            "ld %[there], Z+             \n"
            "4:                          \n\t"
            "tst %[to]                   \n\t"
            "brne 5f                     \n\t"
            "mov %[from], %[edge]        \n\t"
            "rjmp 6f                     \n"
            "5:                          \n\t"
            "sub %[edge], %[to]          \n\t"
            "cp %[gap], %[edge]          \n\t"
            "brsh 6f                     \n\t"
            "mov %[gap], %[edge]         \n\t"
            "mov %[gap_from], %[to]      \n\t"
            "mov %[gap_to], %[to]        \n\t"
            "add %[gap_to], %[gap]       \n"
            // They differ: up to the next.
            "6:                          \n\t"
            "cp %[here], %[there]        \n\t"
            "brlo 7f                     \n\t"
            "brne 8f                     \n\t"
            "mov %[to], %[width]         \n\t"
            "cpi %[here], %[end]         \n\t"
            "breq 9f                     \n\t"
            "ld %[here], X+              \n\t"
            "ld %[there], Z+             \n\t"
            "rjmp 6b                     \n"
            "7:                          \n\t"
            "mov %[to], %[here]          \n\t"
            "ld %[here], X+              \n\t"
            "rjmp 1b                     \n"
            "8:                          \n\t"
            "mov %[to], %[there]         \n\t"
            "ld %[there], Z+             \n\t"
            "rjmp 1b                     \n"
            "9:                          \n\t"
            : [next] "+x"(next),
              [of_other] "+z"(of_other),
              [from] "+r"(spans.from),
              [gap_from] "+r"(spans.gap_from),
              [gap_to] "+r"(spans.gap_to),
              [to] "+r"(spans.to),
              [gap] "+r"(gap),
              [here] "=&d"(here),
              [there] "=&r"(there),
              [edge] "=&r"(edge)
            : [width] "r"(width), [end] "M"(int{Edges::end})
            : "memory");
        return spans;
    }

private:
    // The image is in flash: a reference to it would only be carried about.
    template <class Image>
    __attribute__((noinline)) static uint8_t read_from(RunRows& bitmap,
                                                       uint8_t* edges,
                                                       uint8_t room) {
        const uint8_t* next = Image::address(bitmap.place.at);
        uint8_t rest = bitmap.place.rest;
        uint8_t k = bitmap.parameters, left = bitmap.left;
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
            "andi %[bits], 15            \n\t"
            "breq 7f                     \n"
            "5:                          \n\t"
            "lsl %[rest]                 \n\t"
            "breq low%=                  \n"
            "6:                          \n\t"
            "rol %[run]                  \n\t"
            "dec %[bits]                 \n\t"
            "brne 5b                     \n"
            "7:                          \n\t"
            "swap %[k]                   \n\t"
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
            "dec %[left]                 \n\t"
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
              [left] "+r"(left),
              [run] "=&d"(run),
              [column] "=&r"(column),
              [bits] "=&d"(bits)
            : [width] "r"(bitmap.width), [end] "M"(int{Edges::end})
            : "memory");
        bitmap.place.at = static_cast<uint16_t>(next - Image::address(0));
        bitmap.place.rest = rest;
        bitmap.left = left;
        return run;
    }
};

#else

using FastRunsCore = RunsCore;

#endif

}  // namespace dialplate
