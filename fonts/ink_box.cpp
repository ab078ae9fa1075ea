#include "fonts/ink_box.hpp"

#include "fonts/tones.hpp"

#include <algorithm>

namespace dialplate::fonts {

InkBox ink_box(const Bitmap& bitmap) {
    int left = bitmap.width, right = 0, top = bitmap.height, bottom = 0;
    const std::uint8_t* pixel = bitmap.pixels.data();
    for (int y = 0; y < bitmap.height; ++y) {
        for (int x = 0; x < bitmap.width; ++x) {
            if (*pixel++ == 0) continue;
            left = std::min(left, x);
            right = std::max(right, x + 1);
            top = std::min(top, y);
            bottom = y + 1;
        }
    }
    if (right == 0) return {};
    return {left, top, right - left, bottom - top};
}

int most_strokes_in_a_row(const Bitmap& bitmap) {
    int most = 0;
    for (int y = 0; y < bitmap.height; ++y) {
        int strokes = 0;
        for (int x = 0; x < bitmap.width; ++x)
            strokes += bitmap.ink(x, y) && (x == 0 || !bitmap.ink(x - 1, y)) ? 1 : 0;
        most = std::max(most, strokes);
    }
    return most;
}

Bitmap blank(int width, int height, bool tones) {
    return {width,
            height,
            std::vector<std::uint8_t>(static_cast<std::size_t>(width) *
                                      static_cast<std::size_t>(height)),
            tones};
}

Bitmap solid(Bitmap bitmap) {
    if (!bitmap.tones) return bitmap;
    for (std::uint8_t& pixel : bitmap.pixels)
        pixel = nearer_to_ink(pixel) ? 1 : 0;
    bitmap.tones = false;
    return bitmap;
}

Bitmap cut(const Bitmap& bitmap, const InkBox& box) {
    Bitmap part{box.width, box.height, {}, bitmap.tones};
    part.pixels.reserve(static_cast<std::size_t>(box.width) * static_cast<std::size_t>(box.height));
    for (int y = 0; y < box.height; ++y) {
        const auto row = bitmap.pixels.begin() +
                         (static_cast<std::ptrdiff_t>(box.top + y) * bitmap.width + box.left);
        part.pixels.insert(part.pixels.end(), row, row + box.width);
    }
    return part;
}

void paste(Bitmap& whole, const Bitmap& part, int left, int top) {
    for (int y = 0; y < part.height; ++y) {
        const auto from = part.pixels.begin() + static_cast<std::ptrdiff_t>(y) * part.width;
        std::copy(from,
                  from + part.width,
                  whole.pixels.begin() + static_cast<std::ptrdiff_t>(top + y) * whole.width + left);
    }
}

}  // namespace dialplate::fonts
