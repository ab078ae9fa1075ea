// The values that the receiver tells the display, packed into bytes that the sketch provides.
#pragma once

#include "ui/geometry.hpp"
#include "ui/image_format.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

template <class Image>
class Values {
public:
    Values(const Image& rom, uint8_t* memory) : rom_(rom), memory_(memory) {}

    /// Bytes that all values take: 4 for a number, 2 for a level, 1 for a choice or a flag.
    uint16_t bytes() const {
        const uint8_t count = rom_.u8(header::values);
        if (count == 0) {
            return 0;
        }
        const uint16_t last = entry(byte(count - 1u));
        return word((last & value_place) + width(last));
    }

    __attribute__((noinline)) int32_t get(uint8_t value) const {
        const uint16_t e = entry(value);
        const uint8_t* at = memory_ + (e & value_place);
        if (is_wide(e)) {
            return load_number(at);
        }
        return width(e) == 2 ? static_cast<int16_t>(load_word(at)) : static_cast<int16_t>(at[0]);
    }

    /// Returns whether that changed it.
    bool set(uint8_t value, int32_t to) {
        if (get(value) == to) {
            return false;
        }
        const uint16_t e = entry(value);
        uint8_t* at = memory_ + (e & value_place);
        at[0] = static_cast<uint8_t>(to);
        if (width(e) != 1) {
            at[1] = static_cast<uint8_t>(to >> 8);
        }
        if (is_wide(e)) {
            store_number(at, to);
        }
        return true;
    }

    /// How many bytes a number that stands for a state of this value takes in the image: 1 or 4.
    uint8_t state_bytes(uint8_t value) const { return width(entry(value)) == 1 ? 1 : 4; }

    __attribute__((noinline)) static int32_t load_number(const uint8_t* at) {
        return static_cast<int32_t>(load_word(at) | static_cast<uint32_t>(load_word(at + 2)) << 16);
    }
    __attribute__((noinline)) static void store_number(uint8_t* at, int32_t number) {
        store_word(at, static_cast<uint16_t>(number));
        store_word(at + 2, static_cast<uint16_t>(number >> 16));
    }
    static uint16_t load_word(const uint8_t* at) {
        return word(at[0] | static_cast<unsigned>(at[1]) << 8);
    }
    static void store_word(uint8_t* at, uint16_t number) {
        at[0] = static_cast<uint8_t>(number);
        at[1] = static_cast<uint8_t>(number >> 8);
    }

private:
    static uint8_t type(uint16_t entry) { return static_cast<uint8_t>(entry >> value_type_shift); }
    static bool is_wide(uint16_t entry) { return type(entry) == value_type::number; }
    static uint8_t width(uint16_t entry) {
        return is_wide(entry) ? 4 : type(entry) == value_type::level ? 2 : 1;
    }
    uint16_t entry(uint8_t value) const {
        return rom_.u16(word(rom_.u16(header::at_values) + 2u * value));
    }

    const Image rom_;
    uint8_t* memory_;
};

}  // namespace dialplate
