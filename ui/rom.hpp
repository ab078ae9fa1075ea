// Reading the image where it lies: in the flash of a microcontroller, or in memory on the PC.
#pragma once

#include <stdint.h>

#if defined(__AVR__) && !defined(__AVR_XMEGA__)
#include <avr/pgmspace.h>
#endif

namespace dialplate {

/// The image, byte by byte. Private data and no pointer out: on AVR flash is another address space, and
/// a plain load would silently read RAM.
class Rom {
public:
    /// @param bytes  First byte of the image; on AVR an address in flash below 64 KiB.
    /// @param size   Bytes. Reads at or beyond it give 0 on the PC; on AVR they are not checked.
    constexpr Rom(const uint8_t* bytes, uint16_t size) : bytes_(bytes), size_(size) {}

    uint8_t u8(uint16_t at) const {
#if defined(__AVR__) && !defined(__AVR_XMEGA__)
        return pgm_read_byte(bytes_ + at);
#elif defined(__AVR__) || defined(__arm__)
        return bytes_[at];
#else
        return at < size_ ? bytes_[at] : uint8_t{0};
#endif
    }
    uint16_t u16(uint16_t at) const {
        return static_cast<uint16_t>(u8(at) | (u8(static_cast<uint16_t>(at + 1)) << 8));
    }
    int32_t i32(uint16_t at) const {
        return static_cast<int32_t>(
            static_cast<uint32_t>(u16(at)) |
            (static_cast<uint32_t>(u16(static_cast<uint16_t>(at + 2))) << 16));
    }

private:
    const uint8_t* bytes_;
    uint16_t size_;
};

/// A place in the image that moves on as it is read.
class Reader {
public:
    constexpr Reader(Rom rom, uint16_t at) : rom_(rom), at_(at) {}
    uint8_t u8() { return rom_.u8(at_++); }
    uint16_t u16() {
        const uint16_t value = rom_.u16(at_);
        at_ = static_cast<uint16_t>(at_ + 2);
        return value;
    }
    int32_t i32() {
        const int32_t value = rom_.i32(at_);
        at_ = static_cast<uint16_t>(at_ + 4);
        return value;
    }
    /// A number stored in one byte, or in four when `wide`.
    int32_t number(bool wide) { return wide ? i32() : static_cast<int32_t>(u8()); }
    void skip(uint8_t bytes) { at_ = static_cast<uint16_t>(at_ + bytes); }
    uint16_t at() const { return at_; }

private:
    Rom rom_;
    uint16_t at_;
};

}  // namespace dialplate
