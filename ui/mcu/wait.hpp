// Waiting without a timer: busy loops from the clock that F_CPU states.
#pragma once

#include <util/delay.h>

#include <stdint.h>

namespace dialplate {

/// At least `ms` milliseconds; interrupts lengthen it.
__attribute__((noinline)) inline void wait_ms(uint8_t ms) {
    for (; ms != 0; --ms) {
        _delay_ms(1);
    }
}

}  // namespace dialplate
