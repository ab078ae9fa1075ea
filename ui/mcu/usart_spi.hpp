// Link over USART0 in master-SPI mode: a transmit buffer lets bytes follow back to back, so a plain loop
// reaches the limit of 16 cycles a byte (standards BUS-13). Needs the pins XCK0 and TXD0; the serial
// console is lost.
//
// The end of the last byte is told by TXC, which is set whenever the shift register runs dry and must
// therefore be cleared after the last byte was written, within the time that this byte takes: interrupts
// are held off for those five cycles of every pixel. Cleared before the write, the flag of the byte before
// could still rise in between; cleared late, after an interrupt, the flag of the last byte would be lost and
// the wait endless.
#pragma once

#include "ui/mcu/lines.hpp"
#include "ui/mcu/sent_contexts.hpp"
#include "ui/mcu/spi_pins.hpp"
#include "ui/mcu/window_commands.hpp"

#include <avr/interrupt.h>
#include <avr/io.h>

#include <stdint.h>

namespace dialplate {

/// @tparam DataOrCommand, Select, Reset  Pin or NoPin.
template <class DataOrCommand, class Select, class Reset = NoPin>
struct UsartSpi {
    using Contexts = SentContexts<UsartDataRegister>;
    using Rows = void;
    using Wiring = ControlLines<DataOrCommand, Select, Reset>;

    static void begin() {
        Wiring::prepare();
        // The baud rate must be 0 when the transmitter is enabled, and the clock pin an output before
        // that (data sheet, USART in SPI mode, initialisation; memory).
        UBRR0 = 0;
        UsartClock::output();
        UCSR0C = _BV(UMSEL01) | _BV(UMSEL00);  // Mode 0, highest bit first.
        UCSR0B = _BV(TXEN0);
        UBRR0 = 0;
        // TXC cannot be set but by a byte: a nop goes first, unheard unless chip select is wired.
        Wiring::expect_command();
        UDR0 = 0;
        finish();
        Wiring::expect_data();
    }

    static void reset() { Wiring::reset(); }
    static void select() { Wiring::select(); }
    static void release() {
        finish();
        Wiring::release();
    }

    __attribute__((noinline)) static void command(uint8_t byte) {
        finish();
        Wiring::expect_command();
        send_last(byte);
        finish();
        Wiring::expect_data();
    }

    __attribute__((noinline)) static void parameter(uint8_t byte) { send_last(byte); }
    static void window(MemoryRange columns, MemoryRange pages) {
        window_by_parameters<UsartSpi>(columns, pages);
    }

    /// `count` pixels of two bytes, count at least 1. Returns while the last bytes leave.
    __attribute__((always_inline)) static void run(uint8_t first, uint8_t second, uint16_t count) {
        do {
            send(first);
            send_last(second);
        } while (--count != 0);
    }

    /// `count` pixels of three bytes, count at least 1. Returns while the last bytes leave.
    __attribute__((always_inline)) static void run(uint8_t first,
                                                   uint8_t second,
                                                   uint8_t third,
                                                   uint16_t count) {
        do {
            send(first);
            send(second);
            send_last(third);
        } while (--count != 0);
    }

    static void finish() {
        while (!(UCSR0A & _BV(TXC0))) {
        }
    }

private:
    __attribute__((always_inline)) static void send(uint8_t byte) {
        while (!(UCSR0A & _BV(UDRE0))) {
        }
        UDR0 = byte;
    }

    __attribute__((always_inline)) static void send_last(uint8_t byte) {
        while (!(UCSR0A & _BV(UDRE0))) {
        }
        const uint8_t interrupts = SREG;
        cli();
        UDR0 = byte;
        UCSR0A = _BV(TXC0);
        SREG = interrupts;
    }
};

}  // namespace dialplate
