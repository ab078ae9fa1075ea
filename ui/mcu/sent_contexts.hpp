// A bitmap in `context` decided and sent in one, with two bytes a pixel: while a pixel's bytes shift the next pixel
// is decided. Over the hardware SPI, timed as in spi_timed.hpp, 36 cycles a pixel of ground and 37 of ink; over the
// USART, whose register takes a cycle more to write, 38 and 39; and nine more where a bit of the stream comes in.
//
// Between two writes lie 18 cycles or more on every path: the counts beside the code are those of the shortest, a
// pixel that brings in no bit, over the SPI. The low byte of a pixel leaves at the end of its turn, the high one of
// the next in the middle of the next turn, as soon as it is decided.
#pragma once

#include "ui/mcu/context_core.hpp"
#include "ui/row.hpp"

#include <avr/io.h>

#include <stdint.h>

namespace dialplate {

/// Where bytes are written to be shifted out; a buffer or none, one is taken every 18 cycles. The SPI's lies within
/// the reach of OUT, which is below 64, and its status register just before it (ATmega328P data sheet, register
/// summary); the USART's lies beyond.
struct SpiDataRegister {
    static constexpr uint16_t at = _SFR_IO_ADDR(SPDR);
};
struct UsartDataRegister {
    static constexpr uint16_t at = _SFR_MEM_ADDR(UDR0);
};

/// Writes a register of the processor there.
// clang-format off
#define DIALPLATE_SHIFT_OUT(byte) \
    ".if %[data] < 64             \n\t" \
    "out %[data], " byte "        \n\t" \
    ".else                        \n\t" \
    "sts %[data], " byte "        \n\t" \
    ".endif                       \n\t"
// clang-format on

/// @tparam Data  SpiDataRegister or UsartDataRegister.
template <class Data>
struct SentContexts : FastContextCore {
    static constexpr bool sends = true;

    /// Decides a bitmap, see ContextBlock, and sends it. @pre A window is open.
    /// @param columns  1 to most_columns.
    template <uint8_t most_columns, class Image>
    __attribute__((noinline)) static void send(
        const Image&, uint16_t at, uint8_t columns, uint8_t rows, Colours colours) {
        uint8_t history[most_columns + 1];
        const uint8_t* start = Image::address(at);
        const uint8_t* next;
        uint16_t spare;
        uint8_t value, range, rest, left, context, before, here, after, low, chances;
        asm volatile(
            "lpm %[value], Z+            \n\t"
            "movw %[next], r30           \n\t"
            "ldi %[range], 255           \n\t"
            "ldi %[rest], 0x80           \n\t"
            // Y is the frame that history is in: no operand, and restored at the end.
            "push r28                    \n\t"
            "push r29                    \n\t"
            // Ground above the first row, ink above that; ground to the right.
            "movw r28, %[history]        \n\t"
            "mov %[left], %[columns]     \n\t"
            "ldi %[before], %[above_that]\n"
            "1:                          \n\t"
            "st Y+, %[before]            \n\t"
            "dec %[left]                 \n\t"
            "brne 1b                     \n\t"
            "st Y, %[zero]               \n\t"
            "ldi %[chances], %[pixels]   \n"
            // A row begins with the decision whether it repeats: that of a context with bit 7, and without a
            // pixel. T: it does.
            "2:                          \n\t"
            "sub r28, %[columns]         \n\t"
            "sbc r29, %[zero]            \n\t"
            "clt                         \n\t"
            "mov %[context], %[chances]  \n\t"
            "rjmp 4f                     \n"
            // It does; the repeats are counted up to 2.
            "yes%=:                      \n\t"
            "set                         \n\t"
            "sbrs %[chances], 1          \n\t"
            "inc %[chances]              \n\t"
            "rjmp 3f                     \n"
            "no%=:                       \n\t"
            "ldi %[chances], %[pixels]   \n"
            "3:                          \n\t"
            "mov %[left], %[columns]     \n\t"
            "ld %[here], Y               \n\t"
            "ldd %[after], Y+1           \n\t"
            "ldi %[before], %[above]     \n\t"
            "mov %[context], %[here]     \n\t"
            "lsr %[context]              \n\t"
            "or %[context], %[after]     \n\t"
            "ori %[context], %[edge]     \n\t"
            "rjmp 4f                     \n"
            // The range is less than half: the next bit of the stream comes in. The one that marked the end of
            // the last byte is in the carry, and marks it again.
            "bits%=:                     \n\t"
            "lsl %[rest]                 \n\t"
            "brne 1f                     \n\t"
            "movw r30, %[next]           \n\t"
            "lpm %[rest], Z+             \n\t"
            "movw %[next], r30           \n\t"
            "rol %[rest]                 \n"
            "1:                          \n\t"
            "rol %[value]                \n\t"
            "lsl %[range]                \n\t"
            "brpl bits%=                 \n\t"
            "rjmp 5f                     \n"
            // A pixel is decided, its high byte on its way; what is kept of its column, and the next context.
            "turn%=:                     \n\t"
            "swap %[before]              \n\t"  // 1
            "st Y+, %[before]            \n\t"  // 2
            "mov %[before], %[here]      \n\t"  // 1
            "mov %[here], %[after]       \n\t"  // 1
            "ldd %[after], Y+1           \n\t"  // 2
            "lsr %[context]              \n\t"  // 1
            "andi %[context], %[moved]   \n\t"  // 1
            "or %[context], %[after]     \n\t"  // 1
            "dec %[left]                 \n\t"  // 1
            "breq 8f                     \n\t"  // 1
            DIALPLATE_SHIFT_OUT("%[low]")     // the 18th after the high byte, of ink the 19th
            "4:                          \n\t"
            "sbrs %[range], 7            \n\t"  // 2
            "rjmp bits%=                 \n"
            "5:                          \n\t"
            "movw r30, %[table]          \n\t"  // 1
            "add r30, %[context]         \n\t"  // 1
            "adc r31, %[zero]            \n\t"  // 1
            "lpm r0, Z                   \n\t"  // 3
            "mul r0, %[range]            \n\t"  // 2
            "brts 6f                     \n\t"  // 1
            "cp %[value], r1             \n\t"  // 1
            "brlo 7f                     \n\t"  // 1, 2 if ground
            "sub %[value], r1            \n\t"  // 1
            "sub %[range], r1            \n\t"  // 1
            "sbrc %[context], 7          \n\t"  // 2
            "rjmp yes%=                  \n"
            "ink%=:                      \n\t"
            DIALPLATE_SHIFT_OUT("%B[ink]")  // the 18th after the low byte
            "ori %[chances], %[bank]     \n\t"  // 1
            "ori %[before], %[above_that]\n\t"  // 1
            "ori %[context], 0x80        \n\t"  // 1
            "mov %[low], %A[ink]         \n\t"  // 1
            "rjmp turn%=                 \n"    // 2
            // In a row that repeats: as the pixel above. 12 cycles so far, and brts takes one more.
            "6:                          \n\t"
            "rjmp .+0                    \n\t"  // 2
            "sbrc %[here], 5             \n\t"  // 2 if ground
            "rjmp ink%=                  \n\t"  // 1 + 2
            "rjmp ground%=               \n"    // 2
            "7:                          \n\t"
            "mov %[range], r1            \n\t"  // 1
            "sbrc %[context], 7          \n\t"  // 2
            "rjmp no%=                   \n"
            "ground%=:                   \n\t"
            DIALPLATE_SHIFT_OUT("%B[ground]")    // the 18th after the low byte
            "andi %[before], ~%[above_that]\n\t"  // 1
            "mov %[low], %A[ground]      \n\t"    // 1
            "nop                         \n\t"    // 1
            "rjmp turn%=                 \n"      // 2
            // A row ends.
            "8:                          \n\t"
            DIALPLATE_SHIFT_OUT("%[low]")
            "dec %[rows]                 \n\t"
            "breq 9f                     \n\t"
            "rjmp 2b                     \n"
            // The last byte leaves. Then the SPI's flag is cleared, see spi_timed.hpp; the USART's stands, as it
            // should: it says that nothing is on its way.
            "9:                          \n\t"
            "pop r29                     \n\t"
            "pop r28                     \n\t"
            "clr r1                      \n\t"
            "lpm\n\tlpm\n\tlpm\n\tlpm    \n\t"
            ".if %[data] < 64            \n\t"
            "in r0, %[data]-1            \n\t"
            "in r0, %[data]              \n\t"
            ".else                       \n\t"
            "lpm\n\tlpm                  \n\t"
            ".endif                      \n\t"
            : [start] "+z"(start),
              [next] "=&r"(next),
              [value] "=&r"(value),
              [range] "=&d"(range),
              [rest] "=&d"(rest),
              [rows] "+r"(rows),
              [left] "=&r"(left),
              [context] "=&d"(context),
              [before] "=&d"(before),
              [here] "=&r"(here),
              [after] "=&r"(after),
              [low] "=&r"(low),
              [chances] "=&d"(chances),
              // With every register in use the compiler saves them by a call.
              [spare] "=&r"(spare)
            : [history] "r"(history),
              [columns] "r"(columns),
              [table] "r"(Image::address(header::bytes)),
              [zero] "r"(uint8_t{0}),
              [ink] "r"(colours.ink),
              [ground] "r"(colours.ground),
              [pixels] "M"(int{context_model::pixels}),
              [bank] "M"(context_model::bank),
              [above] "M"(context_model::above),
              [above_that] "M"(context_model::above_that),
              [edge] "M"(context_model::left_edge),
              [moved] "M"(context_model::left | context_model::moved_on),
              [data] "n"(Data::at)
            : "memory");
    }
};

#undef DIALPLATE_SHIFT_OUT

}  // namespace dialplate
