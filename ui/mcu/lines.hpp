// The lines beside the data: which are common to every way of sending bytes to a display.
#pragma once

#include "ui/mcu/pin.hpp"
#include "ui/mcu/wait.hpp"

namespace dialplate {

/// @tparam DataOrCommand  Pin: high for data.
/// @tparam Select         Pin, low while the display listens, or NoPin: wired to ground.
/// @tparam Reset          Pin, low resets, or NoPin: wired to the microcontroller's own reset.
template <class DataOrCommand, class Select, class Reset>
struct ControlLines {
    /// Not selected, data, not reset.
    static void prepare() {
        Select::high();
        Select::output();
        DataOrCommand::high();
        DataOrCommand::output();
        Reset::high();
        Reset::output();
    }

    /// Pulls the reset line, if there is one: 10 us at least, then 5 ms before the first command
    /// (controllers' data sheets, from memory, the 5 ms as standards BUS-05).
    static void reset() {
        if (Reset::wired) {
            Reset::low();
            wait_ms(1);
            Reset::high();
            wait_ms(5);
        }
    }

    __attribute__((always_inline)) static void expect_command() { DataOrCommand::low(); }
    __attribute__((always_inline)) static void expect_data() { DataOrCommand::high(); }
    static void select() { Select::low(); }
    static void release() { Select::high(); }
};

}  // namespace dialplate
