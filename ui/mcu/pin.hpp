// Pins and ports of an AVR as types, so that a wiring is a compile-time matter and a pin costs one
// instruction.
//
// A port is named by the data-space address of its PORTx register; PINx lies two and DDRx one below it
// on the ATmega328P and the ATmega2560 (data sheets, register summary; from memory, and every pin of
// the drivers is moved in the simulated controller). Ports H to L of the ATmega2560 lie beyond the
// reach of SBI and CBI: there a change of one pin is three instructions and not safe against an
// interrupt that changes another pin of the same port.
#pragma once

#include <stdint.h>

namespace dialplate {

namespace port {
constexpr uint16_t a = 0x22, b = 0x25, c = 0x28, d = 0x2B, e = 0x2E, f = 0x31, g = 0x34, h = 0x102,
                   j = 0x105, k = 0x108, l = 0x10B;
}  // namespace port

/// Bit `bit` (0..7) of the port at `address`.
template <uint16_t address, uint8_t bit>
struct Pin {
    static constexpr uint8_t mask = static_cast<uint8_t>(1u << bit);
    static constexpr bool wired = true;

    __attribute__((always_inline)) static void output() { *at(address - 1) |= mask; }
    __attribute__((always_inline)) static void input() {
        *at(address - 1) &= static_cast<uint8_t>(~mask);
    }
    __attribute__((always_inline)) static void high() { *at(address) |= mask; }
    __attribute__((always_inline)) static void low() {
        *at(address) &= static_cast<uint8_t>(~mask);
    }
    /// Turns the level over: one OUT, and no other pin of the port can be disturbed.
    __attribute__((always_inline)) static void toggle() { *at(address - 2) = mask; }
    __attribute__((always_inline)) static bool read() { return (*at(address - 2) & mask) != 0; }

    __attribute__((always_inline)) static bool is_output() {
        return (*at(address - 1) & mask) != 0;
    }
    __attribute__((always_inline)) static bool is_high() { return (*at(address) & mask) != 0; }

    __attribute__((always_inline)) static volatile uint8_t* at(uint16_t register_address) {
        return reinterpret_cast<volatile uint8_t*>(register_address);
    }
};

/// Stands for a line that is wired to a fixed level: chip select at ground, no reset line.
struct NoPin {
    static constexpr bool wired = false;
    __attribute__((always_inline)) static void output() {}
    __attribute__((always_inline)) static void high() {}
    __attribute__((always_inline)) static void low() {}
};

/// A port whose eight pins carry a byte, bit for bit.
template <uint16_t address>
struct WholePort {
    __attribute__((always_inline)) static void output() {
        *reinterpret_cast<volatile uint8_t*>(address - 1) = 0xFF;
    }
    __attribute__((always_inline)) static void put(uint8_t byte) {
        *reinterpret_cast<volatile uint8_t*>(address) = byte;
    }
};

/// A byte over two ports, each bit at its own place: those of `mask` at the port `first`, the others at
/// the port `second`. With mask 0x03, first b, second d: data 0 and 1 on PB0 and PB1, data 2 to 7 on
/// PD2 to PD7, so that the serial console keeps PD0 and PD1.
template <uint16_t first, uint16_t second, uint8_t mask>
struct SplitPorts {
    static constexpr uint8_t rest = static_cast<uint8_t>(~mask);

    __attribute__((always_inline)) static void output() {
        *at(first - 1) |= mask;
        *at(second - 1) |= rest;
    }
    __attribute__((always_inline)) static void put(uint8_t byte) {
        *at(first) = static_cast<uint8_t>((*at(first) & rest) | (byte & mask));
        *at(second) = static_cast<uint8_t>((*at(second) & mask) | (byte & rest));
    }

private:
    __attribute__((always_inline)) static volatile uint8_t* at(uint16_t register_address) {
        return reinterpret_cast<volatile uint8_t*>(register_address);
    }
};

}  // namespace dialplate
