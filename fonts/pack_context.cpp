// Faces in the packing `context` as the image holds them: ui/image.md, "Face".
#include "fonts/code_context.hpp"
#include "fonts/face.hpp"
#include "fonts/ink_box.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <utility>

namespace dialplate {

using namespace fonts;

namespace {

// The least of some numbers, and how far the greatest is from it.
struct Spread {
    std::size_t least = 0, over = 0;
};
template <class Items, class Number>
Spread spread_of(const Items& items, Number number) {
    if (items.empty()) return {};
    std::size_t least = number(items.front()), most = least;
    for (const auto& item : items) {
        least = std::min(least, number(item));
        most = std::max(most, number(item));
    }
    return {least, most - least};
}

}  // namespace

void order_for_contexts(RasterFace& raster, bool digits_first, const ContextTable& table) {
    const auto is_digit = [](const Glyph& glyph) {
        return glyph.code >= U'0' && glyph.code <= U'9';
    };
    std::sort(raster.glyphs.begin(), raster.glyphs.end(), [&](const Glyph& a, const Glyph& b) {
        const bool later_a = !(digits_first && is_digit(a)),
                   later_b = !(digits_first && is_digit(b));
        return std::pair{later_a, a.code} < std::pair{later_b, b.code};
    });
    std::size_t fixed = 0;
    std::vector<const Bitmap*> cells;
    for (const Glyph& glyph : raster.glyphs) {
        cells.push_back(&glyph.cell);
        if (digits_first && is_digit(glyph)) ++fixed;
    }
    std::vector<Glyph> ordered;
    for (const std::size_t i : short_order(cells, fixed, table))
        ordered.push_back(std::move(raster.glyphs[i]));
    raster.glyphs = std::move(ordered);
}

PackedFace pack_context(const RasterFace& raster, const ContextTable& table, int enlarged) {
    PackedFace packed{Packing::context, {}};
    if (!storable(raster, Packing::context, enlarged)) return packed;
    std::vector<const Bitmap*> cells;
    for (const Glyph& glyph : raster.glyphs)
        cells.push_back(&glyph.cell);
    const std::vector<std::vector<std::uint8_t>> streams = write_contexts(cells, table);

    const Spread advance =
        spread_of(cells, [](const Bitmap* cell) { return static_cast<std::size_t>(cell->width); });
    const Spread length =
        spread_of(streams, [](const std::vector<std::uint8_t>& stream) { return stream.size(); });
    if (length.least > 255 || length.over > 255) return packed;
    const bool wide = advance.over > 15 || length.over > 15;

    std::vector<std::uint8_t> bytes(face::metrics);
    const auto put = [&](std::size_t at, std::size_t number) {
        bytes[at] = static_cast<std::uint8_t>(number);
    };
    put(face::packing, packing::context | (raster.smooth ? packing::tones : 0U));
    put(face::height, static_cast<std::size_t>(raster.height));
    put(face::enlarged, static_cast<std::size_t>(enlarged));
    put(face::glyphs, raster.glyphs.size());
    put(face::parameters, wide ? face::wide : 0U);
    put(face::advance, static_cast<std::size_t>(digit_advance(raster)));
    put(face::least_advance, advance.least);
    put(face::least_length, length.least);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const std::size_t more_columns = static_cast<std::size_t>(cells[i]->width) - advance.least;
        const std::size_t more_bytes = streams[i].size() - length.least;
        bytes.push_back(
            static_cast<std::uint8_t>(wide ? more_columns : more_columns | more_bytes << 4));
        if (wide) bytes.push_back(static_cast<std::uint8_t>(more_bytes));
    }
    for (const std::vector<std::uint8_t>& stream : streams)
        bytes.insert(bytes.end(), stream.begin(), stream.end());
    if (bytes.size() <= 0xFFFF) packed.bytes = std::move(bytes);
    return packed;
}

std::vector<Bitmap> unpack_context(const PackedFace& packed, const ContextTable& table) {
    const std::span<const std::uint8_t> bytes = packed.bytes;
    if (bytes.size() < face::metrics ||
        (bytes[face::packing] & ~packing::tones) != packing::context)
        return {};
    const std::size_t glyphs = bytes[face::glyphs];
    const bool tones = (bytes[face::packing] & packing::tones) != 0;
    const bool wide = bytes[face::parameters] == face::wide;
    std::size_t place = face::metrics + glyphs * (wide ? 2 : 1);
    if (bytes.size() < place) return {};
    std::vector<Bitmap> cells;
    for (std::size_t i = 0; i < glyphs; ++i) {
        const std::size_t at = face::metrics + i * (wide ? 2 : 1);
        const int advance = bytes[face::least_advance] + (wide ? bytes[at] : bytes[at] & 15);
        if (place > bytes.size()) return {};
        cells.push_back(
            read_contexts(bytes.subspan(place), advance, bytes[face::height], tones, table));
        place += bytes[face::least_length] +
                 static_cast<std::size_t>(wide ? bytes[at + 1] : bytes[at] >> 4);
    }
    return place <= bytes.size() ? cells : std::vector<Bitmap>{};
}

}  // namespace dialplate
