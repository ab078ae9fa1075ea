// Waits for a touch, draws four by four pixels around the place, waits for the finger to lift. What it
// measured goes to the bench: x, y on the glass, words low byte first.
#include "tests/firmware/bench/bench.hpp"
#include "tests/firmware/bench/display.hpp"
#include "ui/mcu/touch_serial.hpp"
#include "ui/touch_calibration.hpp"

using dialplate::GlassPoint;
using dialplate::Pin;
using dialplate::RawTouch;

using Touch = dialplate::TouchSerial<Pin<dialplate::port::d, 2>,
                                     Pin<dialplate::port::d, 3>,
                                     Pin<dialplate::port::d, 5>,
                                     Pin<dialplate::port::d, 6>,
                                     Pin<dialplate::port::d, 7>>;

static void tell_word(int16_t word) {
    tell(static_cast<uint8_t>(word));
    tell(static_cast<uint8_t>(static_cast<uint16_t>(word) >> 8));
}

int main() {
    Touch::begin();
    Bus::start();
    // Three samples from the bench, as a builder would tap three targets.
    dialplate::TouchSample samples[3];
    for (dialplate::TouchSample& sample : samples) {
        sample.raw.x = next_word();
        sample.raw.y = next_word();
        sample.glass.x = static_cast<int16_t>(next_word());
        sample.glass.y = static_cast<int16_t>(next_word());
    }
    dialplate::TouchCalibration calibration{};
    tell(dialplate::calibrate_touch(samples, calibration) ? 1 : 0);
    mark(1);
    for (;;) {
        RawTouch raw;
        if (!Touch::read(raw)) {
            continue;
        }
        mark(2);
        const GlassPoint at = dialplate::map_touch(calibration, raw);
        Bus::window(static_cast<uint16_t>(at.x - 2), static_cast<uint16_t>(at.y - 2), 4, 4);
        Bus::push(0xF800, 16);
        tell_word(at.x);
        tell_word(at.y);
        Bus::finish();
        mark(3);
        while (Touch::touched()) {
        }
        mark(4);
    }
}
