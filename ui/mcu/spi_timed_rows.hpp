// Rows of a digit sent by their edges over the hardware SPI timed as in spi_timed.hpp, with two bytes a pixel: what
// ClippedRows of ui/clipped_rows.hpp does with pushes. A pixel takes 36 cycles, and neither a run nor a row takes more,
// since the next one is found while the last pixel of the one before leaves.
//
// A write of SPDR takes a cycle, and 17 lie between two of them: counted beside the code.
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
            "mov %[column], %[from]               \n"
            // A row of the glass begins; of damaged data also what follows an empty run.
            "3: movw %[colour], %[first_colour]   \n\t"  // 1
            "rjmp .+0\n\trjmp .+0                 \n"    // 4
            "4: ld %[run], Z+                     \n\t"  // 2
            "cp %[run], %[to]                     \n\t"  // 1
            "brlo 5f                              \n\t"  // 2 with the next
            "mov %[run], %[to]                    \n"
            "5: sub %[run], %[column]             \n\t"  // 1
            "add %[column], %[run]                \n\t"  // 1
            "mul %[run], %[times]                 \n\t"  // 2
            "movw %[count], r0                    \n"    // 1
            // A pixel.
            "6: out %[data], %B[colour]           \n\t"
            "sbiw %[count], 1                     \n\t"  // 2
            "breq 7f                              \n\t"  // 1
            "lpm\n\tlpm\n\tlpm\n\tlpm             \n\t"  // 12
            "rjmp .+0                             \n\t"  // 2
            "out %[data], %A[colour]              \n\t"
            "lpm\n\tlpm\n\tlpm\n\tlpm\n\tlpm      \n\t"  // 15
            "rjmp 6b                              \n"    // 2
            // The last of a run, 4 so far; the run to the next edge or the end of the window.
            "7: cp %[column], %[to]               \n\t"  // 1
            "breq 9f                              \n\t"  // 1
            "ld %[run], Z+                        \n\t"  // 2
            "cp %[run], %[to]                     \n\t"  // 1
            "brlo 8f                              \n\t"  // 2 with the next
            "mov %[run], %[to]                    \n"
            "8: sub %[run], %[column]             \n\t"  // 1
            "add %[column], %[run]                \n\t"  // 1
            "mul %[run], %[times]                 \n\t"  // 2
            "movw %[count], r0                    \n\t"  // 1
            "nop                                  \n\t"  // 1
            "out %[data], %A[colour]              \n\t"
            "eor %A[colour], %A[turn]             \n\t"  // 1
            "eor %B[colour], %B[turn]             \n\t"  // 1
            "tst %[run]                           \n\t"  // 1
            "breq 4b                              \n\t"  // 1
            "lpm\n\tlpm\n\tlpm                   \n\t"   // 9
            "rjmp .+0                             \n\t"  // 2
            "rjmp 6b                              \n"    // 2
            // The last of a row, 7 so far.
            "9: movw r30, %[first]                \n\t"  // 1
            "mov %[column], %[from]               \n\t"  // 1
            "subi %A[again], 1                    \n\t"  // 1
            "sbci %B[again], 0                    \n\t"  // 1
            "lpm\n\tlpm                          \n\t"   // 6
            "out %[data], %A[colour]              \n\t"
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
    /// After the last row: 17 cycles after the last byte a line may move.
    static void finish() { asm volatile("lpm\n\tlpm\n\tlpm\n\tlpm\n\tlpm"); }
};

}  // namespace dialplate
