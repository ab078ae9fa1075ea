#include "fonts/code_plain.hpp"

#include "fonts/ink_box.hpp"

namespace dialplate::fonts {

void write_plain(BitWriter& to, const Bitmap& bitmap) {
    for (const std::uint8_t pixel : bitmap.pixels)
        to.put_bits(pixel, bitmap.tones ? 2 : 1);
}

std::optional<Bitmap> read_plain(BitReader& from, int width, int height, bool tones) {
    Bitmap bitmap = blank(width, height, tones);
    for (std::uint8_t& pixel : bitmap.pixels) {
        pixel = static_cast<std::uint8_t>(from.get_bits(tones ? 2 : 1));
        if (from.exhausted()) return std::nullopt;
    }
    return bitmap;
}

}  // namespace dialplate::fonts
