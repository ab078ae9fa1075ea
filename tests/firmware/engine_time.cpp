// The engine on the bench, drawing what it is told: 1 value, number of four bytes; 2 page; 3 finger, x y;
// 4 no finger; 5 draws until idle, each service between mark 2 and mark 3, then mark 4; 0 the end. Words low byte first.
//
//     PARTS  as in engine_size.cpp      IMAGE  file with the bytes of the image      LINK, PANEL_... as in
//     bench/display.hpp                 ARENA  bytes of memory that the image needs
#include "tests/firmware/bench/bench.hpp"
#include "tests/firmware/bench/display.hpp"
#include "tests/firmware/chosen_parts.hpp"
#include "ui/mcu/flash_bytes.hpp"
#include "ui/screen.hpp"

#include <avr/pgmspace.h>

#include <stdint.h>

using namespace dialplate;

extern const uint8_t image[] PROGMEM;
const uint8_t image[] PROGMEM = {
#include IMAGE
};

using Parts = ChosenParts<PARTS, FlashBytes<image>>;

uint8_t memory[ARENA];
Bus bus;
Screen<Bus, Parts> screen(bus, Rom<FlashBytes<image>>(FlashBytes<image>{}), memory);

int main() {
    Bus::start();
    mark(1);
    for (;;) {
        switch (next_byte()) {
            case 1: {
                const uint8_t value = next_byte();
                const uint16_t low = next_word();
                screen.set(value,
                           static_cast<int32_t>(static_cast<uint32_t>(low) |
                                                static_cast<uint32_t>(next_word()) << 16));
                break;
            }
            case 2:
                screen.show_page(next_byte());
                break;
            case 3: {
                const uint16_t x = next_word();
                screen.touch(Point{x, next_word()});
                break;
            }
            case 4:
                screen.lift();
                break;
            case 5:
                for (bool more = true; more;) {
                    mark(2);
                    more = screen.service(0);
                    mark(3);
                }
                Bus::finish();
                mark(4);
                break;
            default:
                mark(9);
                for (;;) {
                }
        }
        Event event;
        while (screen.next_event(event)) {
        }
    }
}
