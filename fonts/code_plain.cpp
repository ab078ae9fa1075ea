#include "fonts/code_plain.hpp"

#include "fonts/ink_box.hpp"
#include "fonts/tones.hpp"

namespace dialplate::fonts {

void write_plain(BitWriter& to, const Bitmap& bitmap) {
    for (const std::uint8_t pixel : bitmap.pixels) {
        to.put(bitmap.tones ? nearer_to_ink(pixel) : pixel != 0);
        if (bitmap.tones) to.put(between(pixel));
    }
}

std::optional<Bitmap> read_plain(BitReader& from, int width, int height, bool tones) {
    Bitmap bitmap = blank(width, height, tones);
    for (std::uint8_t& pixel : bitmap.pixels) {
        const bool first = from.get();
        pixel = tones ? tone_of(first, from.get()) : first ? 1 : 0;
        if (from.exhausted()) return std::nullopt;
    }
    return bitmap;
}

}  // namespace dialplate::fonts
