// Draws what the bench says: 1 window, x y width height; 2 push, colour count; 3 wait for the last byte;
// 4 the end. Words low byte first. Every push stands between mark 2 and mark 3, every window between
// mark 4 and mark 5.
#include "tests/firmware/bench/bench.hpp"
#include "tests/firmware/bench/display.hpp"

int main() {
    Bus::start();
    mark(1);
    for (;;) {
        const uint8_t order = next_byte();
        if (order == 1) {
            const uint16_t x = next_word();
            const uint16_t y = next_word();
            const uint16_t width = next_word();
            const uint16_t height = next_word();
            mark(4);
            Bus::window(x, y, width, height);
            mark(5);
        } else if (order == 2) {
            const uint16_t colour = next_word();
            const uint16_t count = next_word();
            mark(2);
            Bus::push(colour, count);
            mark(3);
        } else if (order == 3) {
            Bus::finish();
        } else if (order == 4) {
            break;
        }
    }
    Bus::finish();
    mark(9);
    for (;;) {
    }
}
