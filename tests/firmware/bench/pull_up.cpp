// An input with pull-up beside an output that is toggled: tells what the input shows after each toggle.
#include "tests/firmware/bench/bench.hpp"

int main() {
    DDRD = _BV(2);
    PORTD = _BV(7);
    for (uint8_t i = 0; i < 6; ++i) {
        PORTD ^= _BV(2);
        tell(static_cast<uint8_t>(PIND & _BV(7)));
    }
    mark(1);
    for (;;) {
    }
}
