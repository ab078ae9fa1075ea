// The way back, slow and careful: for tests, and for pictures of a packed face. The engine's decoders
// are in ui/.
#include "fonts/code_context.hpp"
#include "fonts/code_plain.hpp"
#include "fonts/code_runs.hpp"
#include "fonts/face.hpp"
#include "fonts/ink_box.hpp"
#include "fonts/little_endian.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <span>

namespace dialplate {

using namespace fonts;

namespace {

using Bytes = std::span<const std::uint8_t>;

RunParameters parameters_from(std::uint8_t byte) {
    return {byte & 15, byte >> 4};
}

std::optional<Bitmap> plain_glyph(Bytes bytes, int height, bool tones) {
    if (bytes.size() < 5) return std::nullopt;
    const int advance = bytes[0], left = bytes[1], top = bytes[2];
    BitReader bits(bytes.subspan(5));
    const auto ink = read_plain(bits, bytes[3], bytes[4], tones);
    if (!ink || left + ink->width > advance || top + ink->height > height) return std::nullopt;
    Bitmap cell = blank(advance, height, tones);
    paste(cell, *ink, left, top);
    return cell;
}

std::optional<Bitmap> runs_glyph(Bytes bytes, int height, RunParameters parameters) {
    if (bytes.empty()) return std::nullopt;
    BitReader bits(bytes.subspan(1));
    return read_runs(bits, bytes[0], height, parameters);
}

}  // namespace

std::vector<Bitmap> unpack(const PackedFace& packed) {
    const Bytes bytes = packed.bytes;
    if (bytes.size() < face::places) return {};
    const std::size_t glyphs = bytes[face::glyphs];
    const int height = bytes[face::height];
    if (bytes.size() < face::places + 2 * glyphs) return {};
    std::vector<Bitmap> cells;
    for (std::size_t i = 0; i < glyphs; ++i) {
        const std::size_t place = get_u16(bytes, face::places + 2 * i);
        if (place > bytes.size()) return {};
        std::optional<Bitmap> cell;
        const bool tones = bytes[face::packing] == (packing::plain | packing::tones);
        if (tones || bytes[face::packing] == packing::plain)
            cell = plain_glyph(bytes.subspan(place), height, tones);
        else if (bytes[face::packing] == packing::runs)
            cell =
                runs_glyph(bytes.subspan(place), height, parameters_from(bytes[face::parameters]));
        if (!cell) return {};
        cells.push_back(std::move(*cell));
    }
    return cells;
}

std::optional<Bitmap> unpack_picture(const std::vector<std::uint8_t>& packed,
                                     const ContextTable& table) {
    const Bytes bytes = packed;
    if (bytes.size() < picture::places) return std::nullopt;
    const auto width = static_cast<int>(get_u16(bytes, picture::width));
    const auto height = static_cast<int>(get_u16(bytes, picture::height));
    const int rows = bytes[picture::strip_rows];
    const std::size_t strips = bytes[picture::strips];
    if (bytes.size() < picture::places + 2 * strips) return std::nullopt;
    if (width > greatest_glass || height > greatest_glass) return std::nullopt;
    if (rows * static_cast<int>(strips) < height) return std::nullopt;
    const bool tones = (bytes[picture::packing] & packing::tones) != 0;
    const int coding = bytes[picture::packing] & ~packing::tones;
    Bitmap whole = blank(width, 0, tones);
    for (std::size_t i = 0; whole.height < height; ++i) {
        const std::size_t place = get_u16(bytes, picture::places + 2 * i);
        if (place > bytes.size()) return std::nullopt;
        const int strip_height = std::min(rows, height - whole.height);
        BitReader bits(bytes.subspan(place));
        std::optional<Bitmap> strip;
        if (coding == packing::plain)
            strip = read_plain(bits, width, strip_height, tones);
        else if (coding == packing::context && width <= most_context_columns)
            strip = read_contexts(bytes.subspan(place), width, strip_height, tones, table);
        else if (coding == packing::runs && !tones)
            strip =
                read_runs(bits, width, strip_height, parameters_from(bytes[picture::parameters]));
        if (!strip) return std::nullopt;
        whole.pixels.insert(whole.pixels.end(), strip->pixels.begin(), strip->pixels.end());
        whole.height += strip_height;
    }
    return whole;
}

}  // namespace dialplate
