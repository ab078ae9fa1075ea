// Bits in the order of the image: the first in bit 7 of a byte (ui/image.md, "Face").
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace dialplate::fonts {

/// Collects bits into whole bytes; the last byte is filled up with zeros.
class BitWriter {
public:
    void put(bool bit) {
        if (used_ % 8 == 0) bytes_.push_back(0);
        if (bit) bytes_.back() = static_cast<std::uint8_t>(bytes_.back() | (0x80 >> (used_ % 8)));
        ++used_;
    }

    /// The low `count` bits of `value`, highest first.
    void put_bits(unsigned value, int count) {
        for (int bit = count - 1; bit >= 0; --bit)
            put(((value >> bit) & 1u) != 0);
    }

    /// `n` in the Rice code of parameter `k`: (n >> k) ones, a zero, the low k bits of n.
    void put_rice(unsigned n, int k) {
        for (unsigned ones = n >> k; ones > 0; --ones)
            put(true);
        put(false);
        put_bits(n, k);
    }

    [[nodiscard]] const std::vector<std::uint8_t>& bytes() const { return bytes_; }

private:
    std::vector<std::uint8_t> bytes_;
    std::size_t used_ = 0;  // bits
};

/// Reads what BitWriter wrote. Never reads outside its bytes: past the end it yields zeros and
/// exhausted() is true from then on.
class BitReader {
public:
    explicit BitReader(std::span<const std::uint8_t> bytes) : bytes_(bytes) {}

    bool get() {
        if (used_ / 8 >= bytes_.size()) {
            exhausted_ = true;
            return false;
        }
        const bool bit = (bytes_[used_ / 8] & (0x80 >> (used_ % 8))) != 0;
        ++used_;
        return bit;
    }

    unsigned get_bits(int count) {
        unsigned value = 0;
        for (int i = 0; i < count; ++i)
            value = value * 2 + (get() ? 1u : 0u);
        return value;
    }

    /// The ones end at the latest where the bytes end, so the result stays below
    /// (8 x bytes + 1) << k.
    unsigned get_rice(int k) {
        unsigned high = 0;
        while (get())
            ++high;
        return (high << k) + get_bits(k);
    }

    [[nodiscard]] bool exhausted() const { return exhausted_; }

private:
    std::span<const std::uint8_t> bytes_;
    std::size_t used_ = 0;  // bits
    bool exhausted_ = false;
};

}  // namespace dialplate::fonts
