// The values that the receiver tells the display, packed into bytes that the sketch provides.
#pragma once

#include "ui/geometry.hpp"
#include "ui/image_format.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

class Values {
public:
    Values(Rom rom, uint8_t* memory) : rom_(rom), memory_(memory) {}

    /// Bytes that all values take: 4 for a number, 2 for a level, 1 for a choice or a flag.
    uint16_t bytes() const {
        const uint8_t count = rom_.u8(header::values);
        if (count == 0) {
            return 0;
        }
        const uint16_t last = entry(byte(count - 1u));
        return word(static_cast<uint32_t>(last & value_place) + width(type(last)));
    }

    int32_t get(uint8_t value) const {
        const uint16_t e = entry(value);
        const uint8_t* at = memory_ + (e & value_place);
        switch (type(e)) {
            case value_type::number:
                return load_number(at);
            case value_type::level:
                return static_cast<int16_t>(at[0] | (at[1] << 8));
            default:
                return at[0];
        }
    }

    /// Returns whether that changed it.
    bool set(uint8_t value, int32_t to) {
        if (get(value) == to) {
            return false;
        }
        const uint16_t e = entry(value);
        uint8_t* at = memory_ + (e & value_place);
        for (uint8_t i = 0; i < width(type(e)); ++i) {
            at[i] = static_cast<uint8_t>(static_cast<uint32_t>(to) >> (8 * i));
        }
        return true;
    }

    /// Whether the value is a choice or another type that fits a byte.
    uint8_t type_of(uint8_t value) const { return type(entry(value)); }

    static int32_t load_number(const uint8_t* at) {
        return static_cast<int32_t>(at[0] | (static_cast<uint32_t>(at[1]) << 8) |
                                    (static_cast<uint32_t>(at[2]) << 16) |
                                    (static_cast<uint32_t>(at[3]) << 24));
    }
    static void store_number(uint8_t* at, int32_t number) {
        for (uint8_t i = 0; i < 4; ++i) {
            at[i] = static_cast<uint8_t>(static_cast<uint32_t>(number) >> (8 * i));
        }
    }
    static uint16_t load_word(const uint8_t* at) {
        return word(at[0] | (static_cast<uint32_t>(at[1]) << 8));
    }
    static void store_word(uint8_t* at, uint16_t number) {
        at[0] = byte(number);
        at[1] = byte(static_cast<uint32_t>(number) >> 8);
    }

private:
    static uint8_t type(uint16_t entry) {
        return byte(static_cast<uint32_t>(entry) >> value_type_shift);
    }
    static uint8_t width(uint8_t type) {
        return type == value_type::number ? 4 : type == value_type::level ? 2 : 1;
    }
    uint16_t entry(uint8_t value) const {
        return rom_.u16(word(rom_.u16(header::at_values) + 2u * value));
    }

    Rom rom_;
    uint8_t* memory_;
};

}  // namespace dialplate
