// Reading the image where it lies: in the flash of a microcontroller, or in memory on the PC.
//
// Where it lies is a type with one function, `uint8_t u8(uint16_t at) const`; ui/mcu has the one for AVR
// flash. It hands out no pointer: on AVR flash is another address space, and a plain load would silently
// read RAM.
#pragma once

#include <stdint.h>

namespace dialplate {

// Arithmetic on small numbers happens in int or unsigned; these say that a result is known to fit.
constexpr uint16_t word(unsigned value) {
    return static_cast<uint16_t>(value);
}
constexpr uint8_t byte(unsigned value) {
    return static_cast<uint8_t>(value);
}
constexpr uint16_t smaller(uint16_t a, uint16_t b) {
    return a < b ? a : b;
}
constexpr uint16_t greater(uint16_t a, uint16_t b) {
    return a < b ? b : a;
}

/// Takes the last decimal digit off a number, by long division with bytes for digits. A remainder of r makes
/// 256 r = 10 (25 r) + 6 r of the next byte; what 6 r and that byte make is divided by 2, then by 5 as
/// 205/1024, exact up to 1,023.
__attribute__((noinline)) inline uint8_t take_digit(uint32_t& number) {
    uint32_t rest = number;
    uint8_t left = 0;
    for (uint8_t i = 4; i != 0; --i) {
        const uint8_t next = static_cast<uint8_t>(rest >> 24);
        rest <<= 8;
        if ((left | next) != 0) {
            const uint16_t part = word(next + left * 6u);
            const uint8_t tenth = byte(byte(part >> 1) * 205u >> 10);
            rest |= byte(left * 25u + tenth);
            left = byte(part - tenth * 10u);
        }
    }
    number = rest;
    return left;
}

/// An image in memory that plain loads can reach. Reads past the end give 0.
class MemoryBytes {
public:
    constexpr MemoryBytes(const uint8_t* bytes, uint16_t size) : bytes_(bytes), size_(size) {}
    uint8_t u8(uint16_t at) const { return at < size_ ? bytes_[at] : uint8_t{0}; }

private:
    const uint8_t* bytes_;
    uint16_t size_;
};

/// Little-endian numbers of an image.
template <class Bytes>
class Rom : public Bytes {
public:
    constexpr explicit Rom(const Bytes& bytes) : Bytes(bytes) {}
    using Bytes::u8;
    __attribute__((noinline)) uint16_t u16(uint16_t at) const {
        return word(u8(at) | static_cast<unsigned>(u8(word(at + 1u))) << 8);
    }
    __attribute__((noinline)) int32_t i32(uint16_t at) const {
        return static_cast<int32_t>(static_cast<uint32_t>(u16(at)) |
                                    static_cast<uint32_t>(u16(word(at + 2u))) << 16);
    }
};

}  // namespace dialplate
