// A timer interrupt that marks its entry, two instructions after the vector; none in between.
#include "tests/firmware/bench/bench.hpp"

#include <avr/interrupt.h>

ISR(TIMER1_COMPA_vect, ISR_NAKED) {
    // SREG and registers stay as they are: OUT of r1, which is zero, touches neither.
    asm volatile("out %0, r1\n\treti" : : "I"(_SFR_IO_ADDR(GPIOR0)));
}

int main() {
    OCR1A = 255;
    TCCR1B = _BV(WGM12);
    TIMSK1 = _BV(OCIE1A);
    mark(7);
    TCCR1B = _BV(WGM12) | _BV(CS10);
    sei();
    for (;;) {
        asm volatile("nop");
    }
}
