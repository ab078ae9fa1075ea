// Runs of two-byte pixels through the USART as SPI master in plain C++: asks UDRE before each byte, waits
// for the end of the last. The lengths come from the bench; 0 ends.
#include "tests/firmware/bench/bench.hpp"

__attribute__((noinline)) static void run(uint8_t first, uint8_t second, uint16_t count) {
    UCSR0A = _BV(TXC0);
    do {
        while (!(UCSR0A & _BV(UDRE0))) {
        }
        UDR0 = first;
        while (!(UCSR0A & _BV(UDRE0))) {
        }
        UDR0 = second;
    } while (--count != 0);
    while (!(UCSR0A & _BV(TXC0))) {
    }
}

int main() {
    PORTB |= _BV(1);
    DDRB |= _BV(1) | _BV(0);
    UBRR0 = 0;
    DDRD |= _BV(4);
    UCSR0C = _BV(UMSEL01) | _BV(UMSEL00);
    UCSR0B = _BV(TXEN0);
    UBRR0 = 0;
    for (;;) {
        const uint16_t count = next_word();
        if (count == 0) {
            break;
        }
        mark(1);
        run(0x12, 0x34, count);
        mark(2);
    }
    mark(3);
    for (;;) {
    }
}
