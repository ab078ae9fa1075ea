// Pictures as the image holds them: ui/image.md, "Picture".
#include "fonts/code_context.hpp"
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

// A strip is drawn in one go, so it is no longer than a large glyph: 1,024 pixels are 2 ms on a bus of
// 8 MHz. A strip costs two bytes for its place.
constexpr int strip_pixels = 1024;
constexpr int most_strips = 255;

int rows_of_a_strip(const Bitmap& bitmap) {
    const int wanted = std::clamp(strip_pixels / bitmap.width, 1, std::min(bitmap.height, 255));
    const int least = (bitmap.height + most_strips - 1) / most_strips;
    return std::max(wanted, least);
}

}  // namespace

std::vector<Bitmap> strips_of(const Bitmap& bitmap) {
    const int rows = rows_of_a_strip(bitmap);
    std::vector<Bitmap> strips;
    for (int top = 0; top < bitmap.height; top += rows)
        strips.push_back(
            cut(bitmap, InkBox{0, top, bitmap.width, std::min(rows, bitmap.height - top)}));
    return strips;
}

std::vector<std::uint8_t> pack_picture(const Bitmap& bitmap,
                                       Packing chosen,
                                       const ContextTable& table) {
    if (bitmap.width < 1 || bitmap.height < 1 || bitmap.width > greatest_glass ||
        bitmap.height > greatest_glass ||
        (chosen == Packing::runs &&
         (bitmap.tones || most_strokes_in_a_row(bitmap) > most_strokes)) ||
        (chosen == Packing::context && bitmap.width > most_context_columns))
        return {};
    const std::vector<Bitmap> strips = strips_of(bitmap);
    std::vector<const Bitmap*> each;
    for (const Bitmap& strip : strips)
        each.push_back(&strip);

    RunParameters parameters;
    std::vector<std::vector<std::uint8_t>> streams;
    std::uint8_t coding = packing::plain;
    switch (chosen) {
        case Packing::plain:
            for (const Bitmap& strip : strips) {
                BitWriter bits;
                write_plain(bits, strip);
                streams.push_back(bits.bytes());
            }
            break;
        case Packing::runs:
            coding = packing::runs;
            parameters = best_parameters(each);
            for (const Bitmap& strip : strips) {
                BitWriter bits;
                write_runs(bits, strip, parameters);
                streams.push_back(bits.bytes());
            }
            break;
        case Packing::context:
            coding = packing::context;
            streams = write_contexts(each, table);
            break;
    }

    std::vector<std::uint8_t> bytes(picture::places + 2 * strips.size());
    put_u16(bytes, picture::width, static_cast<std::size_t>(bitmap.width));
    put_u16(bytes, picture::height, static_cast<std::size_t>(bitmap.height));
    bytes[picture::packing] =
        static_cast<std::uint8_t>(coding | (bitmap.tones ? packing::tones : 0));
    bytes[picture::parameters] = parameters.byte();
    bytes[picture::strip_rows] = static_cast<std::uint8_t>(strips.front().height);
    bytes[picture::strips] = static_cast<std::uint8_t>(strips.size());
    for (std::size_t i = 0; i < strips.size(); ++i) {
        if (bytes.size() > 0xFFFF) return {};
        put_u16(bytes, picture::places + 2 * i, bytes.size());
        bytes.insert(bytes.end(), streams[i].begin(), streams[i].end());
    }
    return bytes.size() > 0xFFFF ? std::vector<std::uint8_t>{} : bytes;
}

}  // namespace dialplate
