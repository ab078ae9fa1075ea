// Rows of a digit sent by their edges over the hardware SPI timed as in spi_timed.hpp, with two bytes a pixel: what
// ClippedRows of ui/clipped_rows.hpp does with pushes. A pixel takes 36 cycles and a run nothing besides, since the next
// one is found while the last byte of the one before shifts; a row of the glass takes 6 more.
//
// The counts beside the code are cycles from a write of SPDR to the next, 18 or more.
#pragma once

#include "ui/edges.hpp"
#include "ui/row.hpp"

#include <avr/io.h>

#include <stdint.h>

namespace dialplate {

struct SpiTimedRows {
    /// Sends the columns `window` of a row so many times, each pixel `times` pixels wide. @pre A window is open.
    __attribute__((always_inline)) static void send(
        const Edges& row, Columns window, uint8_t times, uint16_t again, const Colours& colours) {
        const uint8_t* edge = row.at;
        const uint8_t* first;
        uint16_t colour = colours.ground, first_colour, count;
        uint8_t column, run;
        asm volatile(
            // The first edge inside the window, and the colour before it.
            "1: ld %[run], Z+                     \n\t"
            "cp %[from], %[run]                   \n\t"
            "brlo 2f                              \n\t"
            "eor %A[colour], %A[turn]             \n\t"
            "eor %B[colour], %B[turn]             \n\t"
            "rjmp 1b                              \n"
            "2: sbiw r30, 1                       \n\t"
            "movw %[first], r30                   \n\t"
            "movw %[first_colour], %[colour]      \n"
            "3: movw r30, %[first]                \n\t"  // 11, 1
            "movw %[colour], %[first_colour]      \n\t"  // 1
            "mov %[column], %[from]               \n"    // 1
            // A run to the next edge or the end of the window.
            "4: ld %[run], Z+                     \n\t"  // 8, 2
            "cp %[run], %[to]                     \n\t"  // 1
            "brlo 5f                              \n\t"  // 2 with the next
            "mov %[run], %[to]                    \n"
            "5: sub %[run], %[column]             \n\t"  // 1
            "breq 7f                              \n\t"  // 1; of damaged data the run may be empty
            "add %[column], %[run]                \n\t"  // 1
            "mul %[run], %[times]                 \n\t"  // 2
            "movw %[count], r0                    \n"    // 1
            "6: out %[data], %B[colour]           \n\t"  // the 18th after the byte before, at a row's beginning the 24th
            "sbiw %[count], 1                     \n\t"  // 2
            "lpm\n\tlpm\n\tlpm\n\tlpm\n\tlpm      \n\t"  // 15
            "out %[data], %A[colour]              \n\t"  // the 18th
            "breq 7f                              \n\t"  // 1, 2 at the end of the run
            "lpm\n\tlpm\n\tlpm\n\tlpm             \n\t"  // 12
            "rjmp .+0                             \n\t"  // 2
            "rjmp 6b                              \n"    // 2
            "7: eor %A[colour], %A[turn]          \n\t"  // 1
            "eor %B[colour], %B[turn]             \n\t"  // 1
            "cp %[column], %[to]                  \n\t"  // 1
            "brne 4b                              \n\t"  // 2, 1 at the end of the row
            "subi %A[again], 1                    \n\t"  // 1
            "sbci %B[again], 0                    \n\t"  // 1
            "brne 3b                              \n\t"  // 2
            "clr r1                               \n\t"
            : [edge] "+z"(edge),
              [first] "=&r"(first),
              [colour] "+r"(colour),
              [first_colour] "=&r"(first_colour),
              [count] "=&w"(count),
              [again] "+d"(again),
              [column] "=&r"(column),
              [run] "=&r"(run)
            : [turn] "r"(static_cast<uint16_t>(colours.ground ^ colours.ink)),
              [from] "r"(window.from),
              [to] "r"(window.to),
              [times] "r"(times),
              [data] "I"(_SFR_IO_ADDR(SPDR))
            : "r0", "memory");
    }
    /// After the last row: the 17 cycles after which a line may move, of which nine have passed.
    static void finish() { asm volatile("lpm\n\tlpm\n\trjmp .+0"); }
};

}  // namespace dialplate
