#include "sim/emit/pins.hpp"

namespace dialplate {
namespace {

// ATmega328P as on an Arduino Uno or Nano. Pins 2 and 3, which interrupt, are left to the tuning knob, and
// A4 and A5 to the synthesiser (I2C). The parallel lines are those of the usual shield (from memory).
constexpr AvrPin uno_serial_clock{'B', 5, "13"}, uno_serial_data{'B', 3, "11"};
constexpr AvrPin uno_usart_clock{'D', 4, "4"}, uno_usart_data{'D', 1, "1, TX"};

constexpr DisplayPins uno_serial{
    .data_or_command = {'B', 1, "9"},
    .select = {'B', 2, "10"},
    .reset = {'B', 0, "8"},
    .clock = uno_serial_clock,
    .data = uno_serial_data,
    .write = {},
    .read = {},
    .lines = {},
};
constexpr TouchPins uno_serial_touch{
    .clock = {'D', 6, "6"},
    .in = {'D', 7, "7"},
    .out = {'C', 0, "A0"},
    .select = {'D', 5, "5"},
    .pen = {'C', 1, "A1"},
};
constexpr DisplayPins uno_parallel{
    .data_or_command = {'C', 2, "A2"},
    .select = {'C', 3, "A3"},
    .reset = {'C', 4, "A4"},
    .clock = {},
    .data = {},
    .write = {'C', 1, "A1"},
    .read = {'C', 0, "A0"},
    .lines = {.low = 'B', .high = 'D', .low_mask = 0x03, .arduino = "8, 9, 2 to 7"},
};
constexpr TouchPins uno_parallel_touch{
    .clock = {'B', 5, "13"},
    .in = {'B', 3, "11"},
    .out = {'B', 4, "12"},
    .select = {'B', 2, "10"},
    .pen = {'C', 5, "A5"},
};

// ATmega2560 as on an Arduino Mega. All on ports that one instruction reaches.
constexpr DisplayPins mega_serial{
    .data_or_command = {'B', 5, "11"},
    .select = {'B', 4, "10"},
    .reset = {'B', 6, "12"},
    .clock = {'B', 1, "52"},
    .data = {'B', 2, "51"},
    .write = {},
    .read = {},
    .lines = {},
};
constexpr TouchPins mega_serial_touch{
    .clock = {'A', 1, "23"},
    .in = {'A', 2, "24"},
    .out = {'A', 3, "25"},
    .select = {'A', 0, "22"},
    .pen = {'A', 4, "26"},
};
constexpr AvrPin mega_usart_clock{'E', 2, "not brought out"}, mega_usart_data{'E', 1, "1, TX"};
constexpr DisplayPins mega_parallel{
    .data_or_command = {'C', 2, "35"},
    .select = {'C', 3, "34"},
    .reset = {'C', 4, "33"},
    .clock = {},
    .data = {},
    .write = {'C', 0, "37"},
    .read = {'C', 1, "36"},
    .lines = {.low = 'A', .high = 'A', .low_mask = 0xFF, .arduino = "22 to 29"},
};
constexpr TouchPins mega_parallel_touch{
    .clock = {'B', 5, "11"},
    .in = {'B', 6, "12"},
    .out = {'G', 5, "4"},
    .select = {'B', 4, "10"},
    .pen = {'E', 3, "5"},
};

}  // namespace

std::optional<Pins> usual_pins(const Mcu& mcu, BusKind bus) {
    if (mcu.family != "avr") return std::nullopt;
    const bool mega = mcu.name == "ATmega2560";
    const bool known = mega || mcu.name == "ATmega328P";
    if (bus == BusKind::parallel8) {
        return mega ? Pins{mega_parallel, mega_parallel_touch}
                    : Pins{uno_parallel, uno_parallel_touch, known};
    }
    Pins pins =
        mega ? Pins{mega_serial, mega_serial_touch} : Pins{uno_serial, uno_serial_touch, known};
    if (bus == BusKind::usart_spi) {
        pins.display.clock = mega ? mega_usart_clock : uno_usart_clock;
        pins.display.data = mega ? mega_usart_data : uno_usart_data;
    }
    return pins;
}

}  // namespace dialplate
