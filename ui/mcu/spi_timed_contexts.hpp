// The packing `context` decided and sent in one, over the hardware SPI timed as in spi_timed.hpp, with two
// bytes a pixel: while a pixel's bytes shift the next pixel is decided. 38 cycles a pixel or more, against 31
// and 36 one after the other; a row that repeats takes 36.
//
// Between two writes of SPDR lie 18 cycles or more on every path: the counts beside the code are those of the
// shortest, a pixel of ground that brings in no bit.
#pragma once

#include "ui/mcu/context_core.hpp"
#include "ui/row.hpp"

#include <avr/io.h>

#include <stdint.h>

namespace dialplate {

struct SpiTimedContexts : FastContextCore {
    static constexpr bool sends = true;

    /// Decides a row, see ContextCore::row, and sends it. @pre A window is open.
    template <class Image>
    __attribute__((noinline)) static uint8_t send_row(const Image&,
                                                      ContextStream& stream,
                                                      uint8_t* history,
                                                      uint8_t columns,
                                                      const Colours& colours) {
        const uint8_t* next = Image::address(stream.at);
        uint8_t value = stream.value, range = stream.range, rest = stream.rest;
        uint8_t context, here, after, any;
        uint16_t pixel;
        asm volatile(
            "push r28                    \n\t"
            "push r29                    \n\t"
            "movw r28, %[history]        \n\t"
            "ld %[here], Y               \n\t"
            "ldd %[after], Y+1           \n\t"
            "clr %[any]                  \n\t"
            "ldi %[context], %[edge]     \n\t"
            "bst %[here], 0              \n\t"
            "bld %[context], 4           \n\t"
            "bst %[here], 1              \n\t"
            "bld %[context], 1           \n\t"
            "bst %[after], 0             \n\t"
            "bld %[context], 3           \n"
            "1:                          \n\t"
            "movw r30, %[table]          \n\t"  // 1
            "add r30, %[context]         \n\t"  // 1
            "adc r31, r1                 \n\t"  // 1
            "lpm r0, Z                   \n\t"  // 3
            "mul r0, %[range]            \n\t"  // 2
            "lsl %[context]              \n\t"  // 1
            "andi %[context], 0x74       \n\t"  // 1
            "lsl %[here]                 \n\t"  // 1
            "cp %[value], r1             \n\t"  // 1
            "brlo 2f                     \n\t"  // 2 if ground
            "sub %[value], r1            \n\t"
            "sub %[range], r1            \n\t"
            "ori %[context], 1           \n\t"
            "ori %[here], 1              \n\t"
            "movw %[pixel], %[ink]       \n\t"
            "rjmp 3f                     \n"
            "2:                          \n\t"
            "mov %[range], r1            \n\t"  // 1
            "movw %[pixel], %[ground]    \n"    // 1
            "3:                          \n\t"
            "clr r1                      \n\t"  // 1, the 17th after the loop's head
            "out %[data], %B[pixel]      \n\t"  // 1
            "st Y+, %[here]              \n\t"  // 2
            "or %[any], %[here]          \n\t"  // 1
            "mov %[here], %[after]       \n\t"  // 1
            "ldd %[after], Y+1           \n\t"  // 2
            "bst %[after], 0             \n\t"  // 1
            "bld %[context], 3           \n\t"  // 1
            "bst %[here], 1              \n\t"  // 1
            "bld %[context], 1           \n\t"  // 1
            "sbrs %[range], 7            \n\t"  // 2 if no bit comes in
            "rjmp 5f                     \n"
            "4:                          \n\t"
            "lpm                         \n\t"  // 3: a wait
            "dec %[left]                 \n\t"  // 1
            "nop                         \n\t"  // 1
            "out %[data], %A[pixel]      \n\t"  // the 18th after the other
            "brne 1b                     \n\t"  // 2, and 17 to the next: 20
            "rjmp 7f                     \n"
            "5:                          \n\t"
            "lsl %[range]                \n\t"
            "lsl %[rest]                 \n\t"
            "brne 6f                     \n\t"
            "movw r30, %[next]           \n\t"
            "lpm %[rest], Z+             \n\t"
            "movw %[next], r30           \n\t"
            "rol %[rest]                 \n"
            "6:                          \n\t"
            "rol %[value]                \n\t"
            "sbrs %[range], 7            \n\t"
            "rjmp 5b                     \n\t"
            "rjmp 4b                     \n"
            // The last byte leaves; then its flag is cleared, see spi_timed.hpp.
            "7:                          \n\t"
            "pop r29                     \n\t"
            "pop r28                     \n\t"
            "lpm\n\tlpm\n\tlpm\n\tlpm\n\t"
            "in r0, %[status]            \n\t"
            "in r0, %[data]              \n\t"
            : [value] "+r"(value),
              [range] "+r"(range),
              [rest] "+r"(rest),
              [next] "+r"(next),
              [left] "+r"(columns),
              [context] "=&d"(context),
              [here] "=&d"(here),
              [after] "=&r"(after),
              [any] "=&r"(any),
              [pixel] "=&r"(pixel)
            : [history] "r"(history),
              [table] "r"(Image::address(header::bytes)),
              [edge] "M"(context_model::left_edge),
              [ink] "r"(colours.ink),
              [ground] "r"(colours.ground),
              [data] "I"(_SFR_IO_ADDR(SPDR)),
              [status] "I"(_SFR_IO_ADDR(SPSR))
            : "r28", "r29", "r30", "r31", "memory");
        stream.at = static_cast<uint16_t>(next - Image::address(0));
        stream.value = value;
        stream.range = range;
        stream.rest = rest;
        // The other bits of a history are those of the rows above.
        return any & 1;
    }

    /// Sends a row as it was decided before: bit 0 of each column's history.
    __attribute__((noinline)) static void send_again(const uint8_t* history,
                                                     uint8_t columns,
                                                     const Colours& colours) {
        uint16_t pixel;
        asm volatile(
            "1: ld r0, %a[history]+      \n\t"  // 2
            "movw %[pixel], %[ground]    \n\t"  // 1
            "sbrc r0, 0                  \n\t"  // 2 with what follows
            "movw %[pixel], %[ink]       \n\t"
            "out %[data], %B[pixel]      \n\t"
            "lpm\n\tlpm\n\tlpm\n\tlpm\n\tlpm\n\t"
            "rjmp .+0                    \n\t"
            "out %[data], %A[pixel]      \n\t"  // the 18th after the other
            "lpm\n\tlpm\n\tlpm       \n\t"      // 9
            "dec %[left]                 \n\t"  // 1
            "brne 1b                     \n\t"  // 2; with the 5 above the next is the 18th
            "lpm                         \n\t"
            "lpm                         \n\t"
            "in r0, %[status]            \n\t"
            "in r0, %[data]              \n\t"
            : [history] "+x"(history), [left] "+r"(columns), [pixel] "=&r"(pixel)
            : [ink] "r"(colours.ink),
              [ground] "r"(colours.ground),
              [data] "I"(_SFR_IO_ADDR(SPDR)),
              [status] "I"(_SFR_IO_ADDR(SPSR))
            : "memory");
    }
};

}  // namespace dialplate
