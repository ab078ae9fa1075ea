#include "fonts/code_plain.hpp"

#include "fonts/ink_box.hpp"

namespace dialplate::fonts {

void write_plain(BitWriter& to, const Bitmap& bitmap) {
    for (const std::uint8_t pixel : bitmap.pixels)
        to.put(pixel != 0);
}

std::optional<Bitmap> read_plain(BitReader& from, int width, int height) {
    Bitmap bitmap = blank(width, height);
    for (std::uint8_t& pixel : bitmap.pixels) {
        pixel = from.get() ? 1 : 0;
        if (from.exhausted()) return std::nullopt;
    }
    return bitmap;
}

}  // namespace dialplate::fonts
