// Link over the hardware SPI that does not ask but counts: a byte every 18 cycles, exactly.
//
// The SPI has no transmit buffer: a write while a byte shifts is lost. A byte takes 16 cycles at half
// the clock; a hardware measurement published in 2025 for an AVR emulator found the next write good at
// 18 and lost at 17, which no second source confirms, so 18 is taken (standards BUS-15).
// UNVERIFIED: 17; a capture of the lost byte on a real chip settles it.
//
// An interrupt only lengthens a gap, so runs may be interrupted, by anything that leaves the SPI alone.
#pragma once

#include "ui/mcu/lines.hpp"
#include "ui/mcu/sent_contexts.hpp"
#include "ui/mcu/spi_polled.hpp"
#include "ui/mcu/spi_timed_rows.hpp"

#include <avr/io.h>

#include <stdint.h>

namespace dialplate {

/// @tparam DataOrCommand, Select, Reset  Pin or NoPin.
template <class DataOrCommand, class Select, class Reset = NoPin>
struct SpiTimed : SpiPolled<DataOrCommand, Select, Reset, 2> {
    using Wiring = ControlLines<DataOrCommand, Select, Reset>;
    using Contexts = SentContexts<SpiDataRegister>;
    using Rows = SpiTimedRows;

    /// Nothing here asks for the flag, and pixels may follow at once.
    __attribute__((always_inline)) static void window(MemoryRange columns, MemoryRange pages) {
        shift_command(display_command::set_column_address);
        shift_range(columns);
        shift_command(display_command::set_page_address);
        shift_range(pages);
        shift_command(display_command::write_memory_start);
    }

    /// `count` pixels of two bytes, count at least 1: 36 cycles each.
    __attribute__((always_inline)) static void run(uint8_t first, uint8_t second, uint16_t count) {
        // LPM is the cheapest wait: 3 cycles in one word, it spoils r0 only, which is free here.
        // The end: 17 cycles after the last OUT.
        asm volatile(
            "1: out %[data], %[first]  \n\t"
            "lpm\n\tlpm\n\tlpm\n\tlpm\n\tlpm\n\t"
            "rjmp .+0                  \n\t"
            "out %[data], %[second]    \n\t"
            "lpm\n\tlpm\n\tlpm         \n\t"
            "rjmp .+0\n\trjmp .+0      \n\t"
            "sbiw %[count], 1          \n\t"
            "brne 1b                   \n\t"
            : [count] "+w"(count)
            : [first] "r"(first), [second] "r"(second), [data] "I"(_SFR_IO_ADDR(SPDR)));
    }

    /// `count` pixels of three bytes, count at least 1: 54 cycles each.
    __attribute__((always_inline)) static void run(uint8_t first,
                                                   uint8_t second,
                                                   uint8_t third,
                                                   uint16_t count) {
        asm volatile(
            "1: out %[data], %[first]  \n\t"
            "lpm\n\tlpm\n\tlpm\n\tlpm\n\tlpm\n\t"
            "rjmp .+0                  \n\t"
            "out %[data], %[second]    \n\t"
            "lpm\n\tlpm\n\tlpm\n\tlpm\n\tlpm\n\t"
            "rjmp .+0                  \n\t"
            "out %[data], %[third]     \n\t"
            "lpm\n\tlpm\n\tlpm         \n\t"
            "rjmp .+0\n\trjmp .+0      \n\t"
            "sbiw %[count], 1          \n\t"
            "brne 1b                   \n\t"
            : [count] "+w"(count)
            : [first] "r"(first),
              [second] "r"(second),
              [third] "r"(third),
              [data] "I"(_SFR_IO_ADDR(SPDR)));
    }

    /// The last byte has left; whoever uses the SPI next finds no flag of ours.
    static void finish() { clear_flag(); }

private:
    __attribute__((always_inline)) static void shift_command(uint8_t byte) {
        Wiring::expect_command();
        shift(byte);
        Wiring::expect_data();
    }
    __attribute__((always_inline)) static void shift_range(MemoryRange range) {
        shift(static_cast<uint8_t>(range.first >> 8));
        shift(static_cast<uint8_t>(range.first));
        shift(static_cast<uint8_t>(range.last >> 8));
        shift(static_cast<uint8_t>(range.last));
    }
    // Sends a byte and lets 17 cycles pass after it: another may follow, or an edge of a line.
    __attribute__((always_inline)) static void shift(uint8_t byte) {
        uint8_t wait;
        asm volatile(
            "out %[data], %[byte]      \n\t"
            "ldi %[wait], 5            \n"
            "1: dec %[wait]            \n\t"
            "brne 1b                   \n\t"
            "rjmp .+0                  \n\t"
            : [wait] "=&d"(wait)
            : [byte] "r"(byte), [data] "I"(_SFR_IO_ADDR(SPDR)));
    }
    // After 17 cycles: two more make the flag of the last byte certain. It has been standing since the first byte,
    // and left alone it would let the next polled byte through at once. Reading status and data clears it.
    __attribute__((always_inline)) static void clear_flag() {
        asm volatile(
            "rjmp .+0                  \n\t"
            "in r0, %[status]          \n\t"
            "in r0, %[data]            \n\t" ::[data] "I"(_SFR_IO_ADDR(SPDR)),
            [status] "I"(_SFR_IO_ADDR(SPSR)));
    }
};

}  // namespace dialplate
