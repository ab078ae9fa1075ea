// Bytes of the image while it is written: little-endian numbers, packed places, and references to texts
// and places that get their offsets at the end.
#pragma once

#include "sim/layout/layout.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace dialplate {

class ByteBlock {
public:
    /// A u16 that will hold an offset, once the target's place is known.
    struct Reference {
        std::size_t at;     ///< In this block.
        int text;           ///< Number of a text, or -1: a place in this block.
        std::size_t local;  ///< That place.
    };

    void u8(int value) { bytes_.push_back(static_cast<std::uint8_t>(value)); }
    void u16(int value) {
        u8(value & 0xFF);
        u8(value >> 8 & 0xFF);
    }
    void i32(std::int32_t value) {
        u16(value & 0xFFFF);
        u16(value >> 16 & 0xFFFF);
    }
    /// ui/image.md, "rect".
    void rect(const Box& b) {
        for (const int low : {b.x, b.y, b.width, b.height})
            u8(low & 0xFF);
        u8((b.x >> 8 & 3) | (b.y >> 8 & 3) << 2 | (b.width >> 8 & 3) << 4 |
           (b.height >> 8 & 3) << 6);
    }
    /// ui/image.md, "point".
    void point(int x, int y) {
        u8(x & 0xFF);
        u8(y & 0xFF);
        u8((x >> 8 & 3) | (y >> 8 & 3) << 2);
    }
    void text(int number) {
        references_.push_back({bytes_.size(), number, 0});
        u16(0);
    }
    /// Leaves room for a number that `patch` fills in.
    std::size_t hole16() {
        u16(0);
        return bytes_.size() - 2;
    }
    void patch8(std::size_t at, int value) { bytes_[at] = static_cast<std::uint8_t>(value); }
    void patch16(std::size_t at, int value) {
        patch8(at, value & 0xFF);
        patch8(at + 1, value >> 8 & 0xFF);
    }
    /// The u16 at `at` is to hold the offset of the present end of this block.
    void refer_here(std::size_t at) { references_.push_back({at, -1, bytes_.size()}); }
    void append(const ByteBlock& other) {
        for (Reference r : other.references_) {
            r.at += bytes_.size();
            r.local += bytes_.size();
            references_.push_back(r);
        }
        bytes_.insert(bytes_.end(), other.bytes_.begin(), other.bytes_.end());
    }

    [[nodiscard]] std::size_t size() const { return bytes_.size(); }
    [[nodiscard]] const std::vector<std::uint8_t>& bytes() const { return bytes_; }
    [[nodiscard]] const std::vector<Reference>& references() const { return references_; }

private:
    std::vector<std::uint8_t> bytes_;
    std::vector<Reference> references_;
};

}  // namespace dialplate
