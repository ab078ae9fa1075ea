// The decisions of the packing `context` on an AVR with multiplier: what ContextCore of ui/context.hpp does, with
// the row in assembly. About 31 cycles a pixel; the compiler's needs some 100.
#pragma once

#include "ui/context.hpp"
#include "ui/mcu/flash_load.hpp"

#include <stdint.h>

namespace dialplate {

#if defined(__AVR__) && defined(__AVR_HAVE_MUL__)

struct FastContextCore : ContextCore {
    /// See FaceMetrics::of_context.
    template <class Image>
    __attribute__((noinline)) static GlyphMetrics metrics(const Image&,
                                                          uint16_t face_at,
                                                          uint8_t number) {
        const uint8_t* at = Image::address(word(face_at + face::advance));
        uint8_t columns, lengths, widths, next;
        static_assert(face::lengths == face::advance + 1 && face::widths == face::advance + 2 &&
                          face::metrics == face::advance + 3,
                      "they are read one after the other");
        // clang-format off
        asm(DIALPLATE_LOAD_FLASH "%[columns], Z+ \n\t"
            DIALPLATE_LOAD_FLASH "%[lengths], Z+ \n\t"
            DIALPLATE_LOAD_FLASH "%[widths], Z+  \n"
            "1:                          \n\t"
            DIALPLATE_LOAD_FLASH "%[next], Z+ \n\t"
            "cpi %[next], %[change]      \n\t"
            "brsh 2f                     \n\t"
            "mul %[next], %[lengths]     \n\t"
            "mov %[next], r1             \n\t"
            "clr r1                      \n\t"
            "subi %[number], 1           \n\t"
            "brcs 3f                     \n\t"
            "add r30, %[next]            \n\t"
            "adc r31, r1                 \n\t"
            "rjmp 1b                     \n"
            "2:                          \n\t"
            "subi %[next], %[same]       \n\t"
            "add %[columns], %[next]     \n\t"
            "rjmp 1b                     \n"
            "3:                          \n\t"
            "mul r0, %[widths]           \n\t"
            "add %[columns], r1          \n\t"
            "clr r1                      \n\t"
            : [at] "+z"(at),
              [columns] "=&r"(columns),
              [lengths] "=&r"(lengths),
              [widths] "=&r"(widths),
              [next] "=&d"(next),
              [number] "+d"(number)
            : [change] "M"(int{face::columns}),
              [same] "M"(int{face::same_columns}));
        // clang-format on
        return GlyphMetrics{columns, static_cast<uint16_t>(at - Image::address(0))};
    }

    /// See ContextCore::row. @pre Every chance is 2 to 254.
    template <class Image>
    __attribute__((noinline)) static uint8_t row(
        const Image&, ContextStream& stream, uint16_t chances, uint8_t* history, uint8_t columns) {
        const uint8_t* next = Image::address(stream.at);
        uint8_t value = stream.value, range = stream.range, rest = stream.rest;
        uint8_t context, before, here, after, any;
        asm volatile(
            // The compiler may have its frame at Y, and would not restore it.
            "push r28                    \n\t"
            "push r29                    \n\t"
            "movw r28, %[history]        \n\t"
            "ld %[here], Y               \n\t"
            "ldd %[after], Y+1           \n\t"
            "ldi %[before], %[above]     \n\t"
            "mov %[context], %[here]     \n\t"
            "lsr %[context]              \n\t"
            "or %[context], %[after]     \n\t"
            "ori %[context], %[edge]     \n\t"
            "clr %[any]                  \n"
            "1:                          \n\t"
            "movw r30, %[table]          \n\t"
            "add r30, %[context]         \n\t"
            "adc r31, r1                 \n\t" DIALPLATE_LOAD_FLASH
            "r0, Z  \n\t"
            "mul r0, %[range]            \n\t"
            // r1: the part of the range that is ground. `before` becomes what is kept of this column.
            "cp %[value], r1             \n\t"
            "brlo 2f                     \n\t"
            "sub %[value], r1            \n\t"
            "sub %[range], r1            \n\t"
            "ori %[before], %[ink]       \n\t"
            "ori %[context], 0x80        \n\t"
            "or %[any], %[before]        \n\t"
            "rjmp 3f                     \n"
            "2:                          \n\t"
            "mov %[range], r1            \n\t"
            "andi %[before], ~%[ink]     \n"
            "3:                          \n\t"
            "clr r1                      \n\t"
            "swap %[before]              \n\t"
            "st Y+, %[before]            \n\t"
            "mov %[before], %[here]      \n\t"
            "mov %[here], %[after]       \n\t"
            "ldd %[after], Y+1           \n\t"
            "lsr %[context]              \n\t"
            "andi %[context], %[moved]   \n\t"
            "or %[context], %[after]     \n\t"
            "sbrs %[range], 7            \n\t"
            "rjmp 5f                     \n"
            "4:                          \n\t"
            "dec %[left]                 \n\t"
            "brne 1b                     \n\t"
            "rjmp 7f                     \n"
            // The range is less than half: the next bit of the stream comes in.
            "5:                          \n\t"
            "lsl %[rest]                 \n\t"
            "brne 6f                     \n\t"
            "movw r30, %[next]           \n\t" DIALPLATE_LOAD_FLASH
            "%[rest], Z+ \n\t"
            "movw %[next], r30           \n\t"
            // The one that marked the end is in the carry, and marks it again.
            "rol %[rest]                 \n"
            "6:                          \n\t"
            "rol %[value]                \n\t"
            "lsl %[range]                \n\t"
            "brpl 5b                     \n\t"
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
              [before] "=&d"(before),
              [here] "=&r"(here),
              [after] "=&r"(after),
              [any] "=&r"(any)
            : [history] "r"(history),
              [table] "r"(Image::address(chances)),
              [edge] "M"(context_model::left_edge),
              [above] "M"(context_model::above),
              [ink] "M"(context_model::above_that),
              [moved] "M"(context_model::left | context_model::moved_on)
            : "r28", "r29", "r30", "r31", "memory");
        stream.at = static_cast<uint16_t>(next - Image::address(0));
        stream.value = value;
        stream.range = range;
        stream.rest = rest;
        return any;
    }
};

#else

using FastContextCore = ContextCore;

#endif

}  // namespace dialplate
