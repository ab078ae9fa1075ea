// The decisions of the packing `context` on an AVR with multiplier and flash apart: what ContextCore of
// ui/context.hpp does, with the row in assembly. About 31 cycles a pixel; the compiler's needs some 100.
#pragma once

#include "ui/context.hpp"

#include <stdint.h>

namespace dialplate {

#if defined(__AVR__) && defined(__AVR_HAVE_MUL__) && __AVR_ARCH__ != 103

struct FastContextCore : ContextCore {
    /// See ContextCore::row. @pre Every chance is 2 to 254.
    template <class Image>
    __attribute__((noinline)) static uint8_t row(
        const Image&, ContextStream& stream, uint16_t chances, uint8_t* history, uint8_t columns) {
        const uint8_t* next = Image::address(stream.at);
        uint8_t value = stream.value, range = stream.range, rest = stream.rest;
        uint8_t context, here, after, any;
        asm volatile(
            // The compiler may have its frame at Y, and would not restore it.
            "push r28                    \n\t"
            "push r29                    \n\t"
            "movw r28, %[history]        \n\t"
            "ld %[here], Y               \n\t"
            "ldd %[after], Y+1           \n\t"
            // Bits 6-3: the row above from two columns to the left to one to the right; 2-1: the row above
            // that, the column to the left and this one; 0: the pixel to the left.
            "clr %[any]                  \n\t"
            "ldi %[context], %[edge]     \n\t"
            "bst %[here], 0              \n\t"
            "bld %[context], 4           \n\t"
            "bst %[here], 1              \n\t"
            "bld %[context], 1           \n\t"
            "bst %[after], 0             \n\t"
            "bld %[context], 3           \n"
            "1:                          \n\t"
            "movw r30, %[table]          \n\t"
            "add r30, %[context]         \n\t"
            "adc r31, r1                 \n\t"
            "lpm r0, Z                   \n\t"
            "mul r0, %[range]            \n\t"
            // r1: the part of the range that is ground.
            "lsl %[context]              \n\t"
            "andi %[context], 0x74       \n\t"
            "lsl %[here]                 \n\t"
            "cp %[value], r1             \n\t"
            "brlo 2f                     \n\t"
            "sub %[value], r1            \n\t"
            "sub %[range], r1            \n\t"
            "ori %[context], 1           \n\t"
            "ori %[here], 1              \n\t"
            "rjmp 3f                     \n"
            "2:                          \n\t"
            "mov %[range], r1            \n"
            "3:                          \n\t"
            "clr r1                      \n\t"
            "st Y+, %[here]              \n\t"
            "or %[any], %[here]          \n\t"
            "mov %[here], %[after]       \n\t"
            "ldd %[after], Y+1           \n\t"
            "bst %[after], 0             \n\t"
            "bld %[context], 3           \n\t"
            "bst %[here], 1              \n\t"
            "bld %[context], 1           \n\t"
            "sbrs %[range], 7            \n\t"
            "rjmp 5f                     \n"
            "4:                          \n\t"
            "dec %[left]                 \n\t"
            "brne 1b                     \n\t"
            "rjmp 7f                     \n"
            // The range is less than half: the next bit of the stream comes in.
            "5:                          \n\t"
            "lsl %[range]                \n\t"
            "lsl %[rest]                 \n\t"
            "brne 6f                     \n\t"
            "movw r30, %[next]           \n\t"
            "lpm %[rest], Z+             \n\t"
            "movw %[next], r30           \n\t"
            // The one that marked the end is in the carry, and marks it again.
            "rol %[rest]                 \n"
            "6:                          \n\t"
            "rol %[value]                \n\t"
            "sbrs %[range], 7            \n\t"
            "rjmp 5b                     \n\t"
            "rjmp 4b                     \n"
            "7:                          \n\t"
            "pop r29                     \n\t"
            "pop r28                     \n\t"
            : [value] "+r"(value),
              [range] "+r"(range),
              [rest] "+r"(rest),
              [next] "+r"(next),
              [left] "+r"(columns),
              [context] "=&d"(context),
              [here] "=&d"(here),
              [after] "=&r"(after),
              [any] "=&r"(any)
            : [history] "r"(history),
              [table] "r"(Image::address(chances)),
              [edge] "M"(context_model::left_edge)
            : "r28", "r29", "r30", "r31", "memory");
        stream.at = static_cast<uint16_t>(next - Image::address(0));
        stream.value = value;
        stream.range = range;
        stream.rest = rest;
        // The other bits of a history are those of the rows above.
        return any & 1;
    }
};

#else

using FastContextCore = ContextCore;

#endif

}  // namespace dialplate
