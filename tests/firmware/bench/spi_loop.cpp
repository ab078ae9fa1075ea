// 64 bytes through the hardware SPI, in assembler so that no compiler decides what is measured: POLLED
// asks the flag after each, otherwise a write every SPACING cycles.
#include "tests/firmware/bench/bench.hpp"

int main() {
    PORTB |= _BV(2) | _BV(1);
    DDRB |= _BV(5) | _BV(3) | _BV(2) | _BV(1) | _BV(0);
    SPCR = _BV(SPE) | _BV(MSTR);
    SPSR = DIVIDER == 2 ? _BV(SPI2X) : 0;
    uint8_t count = 64;
    uint8_t spoilt;
    mark(1);
#if defined(POLLED)
    asm volatile(
        "1: out %[data], %[count]  \n\t"
        "2: in %[spoilt], %[status]\n\t"
        "sbrs %[spoilt], 7         \n\t"
        "rjmp 2b                   \n\t"
        "dec %[count]              \n\t"
        "brne 1b                   \n\t"
        : [count] "+r"(count), [spoilt] "=&r"(spoilt)
        : [data] "I"(_SFR_IO_ADDR(SPDR)), [status] "I"(_SFR_IO_ADDR(SPSR)));
#else
    asm volatile(
        "1: out %[data], %[count]  \n\t"
        ".rept %[wait]             \n\t"
        "nop                       \n\t"
        ".endr                     \n\t"
        "dec %[count]              \n\t"
        "brne 1b                   \n\t"
        : [count] "+r"(count), [spoilt] "=r"(spoilt)
        : [data] "I"(_SFR_IO_ADDR(SPDR)), [wait] "n"(SPACING - 4));
#endif
    mark(2);
    for (uint8_t i = 0; i < 200; ++i) {
        asm volatile("nop");
    }
    mark(3);
    for (;;) {
    }
}
