// The emitted code under a play, on whatever machine this is compiled for: every byte that the display would be
// sent goes into a checksum. Stands beside layout.hpp, image.cpp and wiring.hpp of an emission, and orders.cpp,
// which the test writes. Prints
//
//     bus CRC BYTES events CRC BYTES stack BYTES
#include "tests/firmware/portable/checksum_text.hpp"
#include "tests/firmware/portable/crc32.hpp"
#include "tests/firmware/portable/outside.hpp"
#include "tests/firmware/portable/play.hpp"

#include "layout.hpp"
#include "wiring.hpp"
#include <stdint.h>

extern const uint8_t orders[];

namespace {

Crc32 sent;
Crc32 happened;

void send_word(unsigned word) {
    sent.add(static_cast<uint8_t>(word >> 8));
    sent.add(static_cast<uint8_t>(word));
}

// The bytes of MIPI DCS that a driver in ui/mcu sends, written anew: a third opinion beside those drivers and
// the simulator's sim/display/wire.cpp.
struct ChecksumBus {
    using Panel = wiring::Panel;

    static void start() {
        sent.add(0x01);  // soft reset
        sent.add(0x11);  // out of sleep
        sent.add(0x3A);  // pixel format
        sent.add(Panel::bytes_per_pixel == 3 ? 0x66 : 0x55);
        sent.add(0x36);  // address mode
        sent.add(Panel::address_mode);
        if (Panel::inverted) {
            sent.add(0x21);
        }
        sent.add(0x29);  // display on
    }
    void window(uint16_t x, uint16_t y, uint16_t width, uint16_t height) {
        const unsigned left = unsigned{x} + Panel::column_offset;
        const unsigned top = unsigned{y} + Panel::page_offset;
        sent.add(0x2A);
        send_word(left);
        send_word(left + width - 1);
        sent.add(0x2B);
        send_word(top);
        send_word(top + height - 1);
        sent.add(0x2C);
    }
    void push(uint16_t colour, uint16_t count) {
        for (; count != 0; --count) {
            if (Panel::bytes_per_pixel == 2) {
                send_word(colour);
                continue;
            }
            // Each widened to eight bits by repeating its top ones.
            const unsigned red = colour >> 11, green = colour >> 5 & 0x3Fu, blue = colour & 0x1Fu;
            sent.add(static_cast<uint8_t>(red << 3 | red >> 2));
            sent.add(static_cast<uint8_t>(green << 2 | green >> 4));
            sent.add(static_cast<uint8_t>(blue << 3 | blue >> 2));
        }
    }
};

struct EventsToChecksum {
    void operator()(const dialplate::Event& event) const {
        happened.add(static_cast<uint8_t>(event.what));
        happened.add(event.held);
        happened.add(static_cast<uint8_t>(event.key));
        happened.add(static_cast<uint8_t>(event.key >> 8));
    }
};

uint8_t memory[layout::memory_bytes];

}  // namespace

int main() {
    ChecksumBus::start();
    layout::Screen<ChecksumBus> screen(ChecksumBus{}, layout::image(), memory);
    EventsToChecksum heard;
    const uint8_t* at = orders;
    play::perform<layout::Screen<ChecksumBus>, dialplate::Point, dialplate::Event>(
        screen, [&at] { return *at++; }, heard);
    say_checksum("bus ", sent);
    say_checksum(" events ", happened);
    say(" stack ");
    say_number(stack_used(), 10);
    say("\n");
    return 0;
}
