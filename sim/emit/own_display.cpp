#include "sim/emit/pieces.hpp"
#include "sim/emit/text.hpp"

namespace dialplate {
namespace {

constexpr std::string_view sketch_text =
    R"(// Stands for a display driver that a sketch has already: it wakes the display, chooses an area, and writes
// pixels of one colour. Slow and plain on purpose; put yours in its place. Written by dialplate, which
// keeps your changes when it emits again.
#pragma once

#include "wiring.hpp"

namespace own_display {

@send@
inline void command(uint8_t code) {
    wiring::DataOrCommand::low();
    send(code);
    wiring::DataOrCommand::high();
}

inline void send_word(uint16_t word) {
    send(static_cast<uint8_t>(word >> 8));
    send(static_cast<uint8_t>(word));
}

inline void begin() {
@begin@    wiring::DataOrCommand::output();
    wiring::Reset::high();
    wiring::Reset::output();
    wiring::Select::low();
    wiring::Select::output();
    command(0x01);  // soft reset
    @wait@(120);
    command(0x11);  // out of sleep
    @wait@(120);
    command(0x3A);  // pixel format: @bits@ bits
    send(@format@);
    command(0x36);  // turn and colour order
    send(wiring::Panel::address_mode);
    if (wiring::Panel::inverted) {
        command(0x21);
    }
    command(0x29);  // on
}

/// The next pixels fill the area row by row; its last column and row belong to it.
inline void choose_area(uint16_t left, uint16_t top, uint16_t right, uint16_t bottom) {
    command(0x2A);
    send_word(static_cast<uint16_t>(left + wiring::Panel::column_offset));
    send_word(static_cast<uint16_t>(right + wiring::Panel::column_offset));
    command(0x2B);
    send_word(static_cast<uint16_t>(top + wiring::Panel::page_offset));
    send_word(static_cast<uint16_t>(bottom + wiring::Panel::page_offset));
    command(0x2C);
}

inline void write(uint16_t colour, uint16_t pixels) {
    for (; pixels != 0; --pixels) {
@pixel@    }
}

}  // namespace own_display
)";

constexpr std::string_view serial_send =
    R"(/// A byte, highest bit first; taken when the clock rises.
inline void send(uint8_t byte) {
    for (uint8_t bit = 0x80; bit != 0; bit = static_cast<uint8_t>(bit >> 1)) {
        if (byte & bit) {
            wiring::Data::high();
        } else {
            wiring::Data::low();
        }
        wiring::Clock::high();
        wiring::Clock::low();
    }
}
)";

constexpr std::string_view parallel_send =
    R"(/// A byte on eight lines; taken when the write line rises.
inline void send(uint8_t byte) {
    wiring::DataLines::put(byte);
    wiring::Write::low();
    wiring::Write::high();
}
)";

}  // namespace

std::string own_display(const Emitting& it) {
    const bool parallel = it.layout.bus.kind == BusKind::parallel8 && it.pins;
    const bool three =
        it.layout.display.bytes_per_pixel == 3 && it.layout.bus.kind != BusKind::parallel8;
    return filled(sketch_text,
                  {{"send", std::string(parallel ? parallel_send : serial_send)},
                   {"begin",
                    parallel ? "    wiring::Write::high();\n    wiring::Write::output();\n"
                               "    wiring::Read::high();\n    wiring::Read::output();\n"
                               "    wiring::DataLines::output();\n"
                             : "    wiring::Clock::low();\n    wiring::Clock::output();\n"
                               "    wiring::Data::output();\n"},
                   {"wait", it.pins ? "dialplate::wait_ms" : "delay"},
                   {"bits", three ? "18" : "16"},
                   {"format", three ? "0x66" : "0x55"},
                   {"pixel",
                    three ? "        // Red, green and blue, each in the upper bits of a byte.\n"
                            "        send(static_cast<uint8_t>(colour >> 8 & 0xF8));\n"
                            "        send(static_cast<uint8_t>(colour >> 3 & 0xFC));\n"
                            "        send(static_cast<uint8_t>(colour << 3));\n"
                          : "        send_word(colour);\n"}});
}

}  // namespace dialplate
