// Link over an 8-bit parallel bus by port writes. The controller takes a byte at the rising edge of the
// write line; the line is turned over by writing PINx, one cycle an edge, and disturbs no other pin.
//
// A write takes three cycles and more, 187 ns at 16 MHz, twice one cycle of them with the data standing;
// the fastest, strobes alone, 125 ns. Both are above the 66 ns of the controllers (standards BUS-11).
#pragma once

#include "ui/mcu/context_core.hpp"
#include "ui/mcu/lines.hpp"
#include "ui/mcu/pin.hpp"
#include "ui/mcu/window_commands.hpp"

#include <stdint.h>

namespace dialplate {

/// @tparam Data                   WholePort or SplitPorts.
/// @tparam Write                  Pin, active low.
/// @tparam Read                   Pin or NoPin, active low: kept high.
/// @tparam DataOrCommand, Select, Reset  Pin or NoPin.
template <class Data,
          class Write,
          class Read,
          class DataOrCommand,
          class Select,
          class Reset = NoPin>
struct Parallel8 {
    using Contexts = FastContextCore;
    using Rows = void;
    using Wiring = ControlLines<DataOrCommand, Select, Reset>;

    static void begin() {
        Write::high();
        Write::output();
        Read::high();
        Read::output();
        Wiring::prepare();
        Data::output();
    }

    static void reset() { Wiring::reset(); }
    static void select() { Wiring::select(); }
    static void release() { Wiring::release(); }

    __attribute__((noinline)) static void command(uint8_t byte) {
        Wiring::expect_command();
        send(byte);
        Wiring::expect_data();
    }

    __attribute__((noinline)) static void parameter(uint8_t byte) { send(byte); }
    static void window(MemoryRange columns, MemoryRange pages) {
        window_by_parameters<Parallel8>(columns, pages);
    }

    /// `count` pixels of two bytes, count at least 1. Equal bytes stay on the lines, only the write
    /// line moves.
    __attribute__((always_inline)) static void run(uint8_t first, uint8_t second, uint16_t count) {
        if (first == second) {
            Data::put(first);
            do {
                strobe();
                strobe();
            } while (--count != 0);
        } else {
            do {
                send(first);
                send(second);
            } while (--count != 0);
        }
    }

    /// `count` pixels of three bytes, count at least 1.
    __attribute__((always_inline)) static void run(uint8_t first,
                                                   uint8_t second,
                                                   uint8_t third,
                                                   uint16_t count) {
        do {
            send(first);
            send(second);
            send(third);
        } while (--count != 0);
    }

    static void finish() {}

private:
    __attribute__((always_inline)) static void send(uint8_t byte) {
        Data::put(byte);
        strobe();
    }

    __attribute__((always_inline)) static void strobe() {
        Write::toggle();
        Write::toggle();
    }
};

}  // namespace dialplate
