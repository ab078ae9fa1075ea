// Pictures as the image holds them: ui/image.md, "Picture".
#include "fonts/code_plain.hpp"
#include "fonts/code_runs.hpp"
#include "fonts/face.hpp"
#include "fonts/ink_box.hpp"
#include "fonts/little_endian.hpp"
#include "ui/image_format.hpp"

#include <algorithm>

namespace dialplate {

using namespace fonts;

namespace {

constexpr int greatest_glass = 1023;  // px; ui/image.md, "Drawbacks"

// A strip is drawn in one go, so it is no longer than a large glyph: 1,024 pixels are 2 ms on a bus of
// 8 MHz. A strip costs two bytes for its place.
constexpr int strip_pixels = 1024;
constexpr int most_strips = 255;

int rows_of_a_strip(const Bitmap& bitmap) {
    const int wanted = std::clamp(strip_pixels / bitmap.width, 1, std::min(bitmap.height, 255));
    const int least = (bitmap.height + most_strips - 1) / most_strips;
    return std::max(wanted, least);
}

std::vector<Bitmap> strips_of(const Bitmap& bitmap, int rows) {
    std::vector<Bitmap> strips;
    for (int top = 0; top < bitmap.height; top += rows)
        strips.push_back(
            cut(bitmap, InkBox{0, top, bitmap.width, std::min(rows, bitmap.height - top)}));
    return strips;
}

}  // namespace

std::vector<std::uint8_t> pack_picture(const Bitmap& bitmap, Packing chosen) {
    if (bitmap.width < 1 || bitmap.height < 1 || bitmap.width > greatest_glass ||
        bitmap.height > greatest_glass ||
        (chosen == Packing::runs && most_strokes_in_a_row(bitmap) > most_strokes))
        return {};
    const int rows = rows_of_a_strip(bitmap);
    const std::vector<Bitmap> strips = strips_of(bitmap, rows);

    RunParameters parameters;
    if (chosen == Packing::runs) {
        std::vector<const Bitmap*> each;
        for (const Bitmap& strip : strips)
            each.push_back(&strip);
        parameters = best_parameters(each);
    }

    std::vector<std::uint8_t> bytes(picture::places + 2 * strips.size());
    put_u16(bytes, picture::width, static_cast<std::size_t>(bitmap.width));
    put_u16(bytes, picture::height, static_cast<std::size_t>(bitmap.height));
    bytes[picture::packing] = chosen == Packing::runs ? packing::runs : packing::plain;
    bytes[picture::parameters] = parameters.byte();
    bytes[picture::strip_rows] = static_cast<std::uint8_t>(rows);
    bytes[picture::strips] = static_cast<std::uint8_t>(strips.size());
    for (std::size_t i = 0; i < strips.size(); ++i) {
        if (bytes.size() > 0xFFFF) return {};
        put_u16(bytes, picture::places + 2 * i, bytes.size());
        BitWriter bits;
        if (chosen == Packing::runs)
            write_runs(bits, strips[i], parameters);
        else
            write_plain(bits, strips[i]);
        bytes.insert(bytes.end(), bits.bytes().begin(), bits.bytes().end());
    }
    return bytes.size() > 0xFFFF ? std::vector<std::uint8_t>{} : bytes;
}

}  // namespace dialplate
