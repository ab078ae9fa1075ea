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

    /// Packing `context`: glyphs follow each other, each behind a byte that says how long and how wide it is.
    __attribute__((noinline)) GlyphMetrics of_context(uint8_t number) const {
        uint8_t least_columns = field(face::advance);
        uint16_t at = word(face_at + face::metrics);
        for (;;) {
            const uint8_t metrics = rom.u8(at++);
            if (metrics >= face::columns) {
                least_columns =
                    byte(least_columns + static_cast<unsigned>(metrics) - face::same_columns);
                continue;
            }
            const uint16_t length = word(static_cast<unsigned>(metrics) * field(face::lengths));
            if (number-- == 0) {
                const uint16_t width = word((length & 0xFFu) * field(face::widths));
                return GlyphMetrics{byte(least_columns + (width >> 8)), at};
            }
            at = word(at + (length >> 8));
        }
    }

private:
    uint8_t field(uint8_t which) const { return rom.u8(word(face_at + which)); }
};

}  // namespace dialplate
