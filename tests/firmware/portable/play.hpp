// The orders of a play, as a test on the PC writes them and the firmware reads them: a byte that says what to
// do, then its parameters, numbers low byte first.
#pragma once

#include <stdint.h>

namespace play {

constexpr uint8_t end = 0;
constexpr uint8_t set = 1;      ///< value, 4 bytes: what it becomes.
constexpr uint8_t page = 2;     ///< page
constexpr uint8_t palette = 3;  ///< palette
constexpr uint8_t pass = 4;     ///< 2 bytes: milliseconds that go by.
constexpr uint8_t serve = 5;    ///< 1 byte: pieces drawn at most; 0: until nothing is left.
constexpr uint8_t touch = 6;    ///< 2 bytes x, 2 bytes y
constexpr uint8_t lift = 7;

/// Does what is ordered, with any screen, and hands each event of a key to `heard`.
/// @param next  Gives the next byte of the orders, of which the last is `end`.
template <class Screen, class Point, class Event, class Next, class Heard>
void perform(Screen& screen, Next next, Heard& heard) {
    const auto word = [&next]() -> uint16_t {
        const uint16_t low = next();
        return static_cast<uint16_t>(low | next() << 8);
    };
    uint16_t now = 0;
    for (;;) {
        switch (next()) {
            case set: {
                const uint8_t value = next();
                const uint32_t low = word();
                screen.set(value, static_cast<int32_t>(low | uint32_t{word()} << 16));
                break;
            }
            case page:
                screen.show_page(next());
                break;
            case palette:
                screen.use_palette(next());
                break;
            case pass:
                now = static_cast<uint16_t>(now + word());
                break;
            case serve: {
                uint8_t left = next();
                while (screen.service(now) && left != 1) {
                    left = left == 0 ? uint8_t{0} : static_cast<uint8_t>(left - 1);
                }
                break;
            }
            case touch: {
                const uint16_t x = word();
                screen.touch(Point{x, word()});
                break;
            }
            case lift:
                screen.lift();
                break;
            default:
                return;
        }
        Event event{};
        while (screen.next_event(event)) {
            heard(event);
        }
    }
}

}  // namespace play
