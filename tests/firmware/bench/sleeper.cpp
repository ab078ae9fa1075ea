// Sleeps through 61 overflows of a timer: 16 MHz / 1024 / 256.
#include "tests/firmware/bench/bench.hpp"

#include <avr/interrupt.h>
#include <avr/sleep.h>

EMPTY_INTERRUPT(TIMER0_OVF_vect)

int main() {
    TIMSK0 = _BV(TOIE0);
    TCCR0B = _BV(CS02) | _BV(CS00);
    sei();
    sleep_enable();
    sleep_cpu();
    mark(1);
    for (uint8_t i = 0; i < 61; ++i) {
        sleep_cpu();
    }
    mark(2);
    for (;;) {
    }
}
