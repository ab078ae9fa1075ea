// Reads a four-wire sheet at PC0 to PC3 whenever the bench says 1, and tells: whether touched, x, y.
#include "tests/firmware/bench/bench.hpp"
#include "ui/mcu/pin.hpp"
#include "ui/mcu/touch_four_wire.hpp"

using dialplate::Pin;
using Touch = dialplate::TouchFourWire<Pin<dialplate::port::c, 0>,
                                       Pin<dialplate::port::c, 1>,
                                       Pin<dialplate::port::c, 2>,
                                       Pin<dialplate::port::c, 3>,
                                       1,
                                       2>;

int main() {
    DDRC = 0x0A;
    PORTC = 0x05;
    Touch::begin();
    for (;;) {
        const uint8_t order = next_byte();
        if (order == 2) {
            mark(9);
        }
        if (order != 1) {
            continue;
        }
        dialplate::RawTouch raw{};
        const bool touched = Touch::read(raw);
        tell(touched ? 1 : 0);
        tell(static_cast<uint8_t>(raw.x));
        tell(static_cast<uint8_t>(raw.x >> 8));
        tell(static_cast<uint8_t>(raw.y));
        tell(static_cast<uint8_t>(raw.y >> 8));
        tell(DDRC);
        tell(PORTC);
    }
}
