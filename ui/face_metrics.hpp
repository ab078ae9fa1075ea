// Where the glyphs of a raster face are, and how wide. Format: image.md, "Face".
#pragma once

#include "ui/image_format.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

struct GlyphMetrics {
    uint8_t advance;  ///< Not enlarged.
    uint16_t at;      ///< Of the glyph's bits, or of what `plain` has before them.
};

template <class Image>
struct FaceMetrics {
    const Image& rom;
    uint16_t face_at;

    /// Packings `plain` and `runs`: the place stands in the face, the advance before the bits.
    GlyphMetrics of_others(uint8_t number) const {
        const uint16_t at = word(face_at + rom.u16(word(face_at + face::places + 2u * number)));
        return GlyphMetrics{rom.u8(at), word(at + 1u)};
    }

    /// Packing `context`: the streams follow each other behind the metrics of all glyphs.
    GlyphMetrics of_context(uint8_t number) const {
        const uint8_t each = field(face::parameters) == face::wide ? 2 : 1;
        const uint8_t least = field(face::least_length);
        uint16_t metric = word(face_at + face::metrics);
        uint16_t at = word(metric + static_cast<unsigned>(each) * field(face::glyphs));
        for (;; --number) {
            uint8_t columns = rom.u8(metric);
            uint8_t length = rom.u8(word(metric + 1u));
            if (each == 1) {
                length = byte(columns >> 4);
                columns = byte(columns & 15u);
            }
            if (number == 0) {
                return GlyphMetrics{
                    byte(static_cast<unsigned>(columns) + field(face::least_advance)), at};
            }
            at = word(static_cast<unsigned>(at) + length + least);
            metric = word(static_cast<unsigned>(metric) + each);
        }
    }

private:
    uint8_t field(uint8_t which) const { return rom.u8(word(face_at + which)); }
};

}  // namespace dialplate
