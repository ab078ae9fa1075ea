// Faces as the image holds them: ui/image.md, "Face".
#include "fonts/code_plain.hpp"
#include "fonts/code_runs.hpp"
#include "fonts/face.hpp"
#include "fonts/ink_box.hpp"
#include "fonts/little_endian.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <climits>
#include <map>

namespace dialplate {

namespace fonts {

bool storable(const RasterFace& raster, Packing chosen, int enlarged) {
    const bool row_is_kept = (chosen != Packing::plain || enlarged > 1) && !raster.smooth;
    const int strokes = row_is_kept ? most_strokes : INT_MAX;
    if (raster.smooth && (chosen == Packing::runs || enlarged > 1)) return false;
    return enlarged >= 1 && enlarged <= 4 && raster.height >= 0 && raster.height <= 255 &&
           raster.glyphs.size() <= 255 &&
           std::all_of(raster.glyphs.begin(), raster.glyphs.end(), [&](const Glyph& glyph) {
               return glyph.cell.width <= 255 && glyph.cell.height == raster.height &&
                      most_strokes_in_a_row(glyph.cell) <= strokes;
           });
}

int digit_advance(const RasterFace& raster) {
    int advance = 0;
    for (const Glyph& glyph : raster.glyphs)
        if (glyph.code >= U'0' && glyph.code <= U'9') advance = std::max(advance, glyph.cell.width);
    return advance;
}

}  // namespace fonts

using namespace fonts;

namespace {

std::vector<std::uint8_t> plain_glyph(const Bitmap& cell) {
    const InkBox box = ink_box(cell);
    std::vector<std::uint8_t> bytes;
    for (const int metric : {cell.width, box.left, box.top, box.width, box.height})
        bytes.push_back(static_cast<std::uint8_t>(metric));
    BitWriter bits;
    write_plain(bits, cut(cell, box));
    bytes.insert(bytes.end(), bits.bytes().begin(), bits.bytes().end());
    return bytes;
}

std::vector<std::uint8_t> runs_glyph(const Bitmap& cell, RunParameters parameters) {
    std::vector<std::uint8_t> bytes{static_cast<std::uint8_t>(cell.width)};
    BitWriter bits;
    write_runs(bits, cell, parameters);
    bytes.insert(bytes.end(), bits.bytes().begin(), bits.bytes().end());
    return bytes;
}

// Each different cell once: characters that look the same share their bytes.
RunParameters parameters_for(const RasterFace& raster) {
    std::vector<const Bitmap*> cells;
    for (const Glyph& glyph : raster.glyphs) {
        const auto same = [&](const Bitmap* other) {
            return other->width == glyph.cell.width && other->pixels == glyph.cell.pixels;
        };
        if (std::none_of(cells.begin(), cells.end(), same)) cells.push_back(&glyph.cell);
    }
    return best_parameters(cells);
}

}  // namespace

PackedFace pack(const RasterFace& raster, Packing chosen, int enlarged) {
    PackedFace packed{chosen, {}};
    if (!storable(raster, chosen, enlarged)) return packed;
    const RunParameters parameters =
        chosen == Packing::runs ? parameters_for(raster) : RunParameters{};

    std::vector<std::uint8_t> bytes(face::places + 2 * raster.glyphs.size());
    bytes[face::packing] = chosen == Packing::runs ? packing::runs
                           : raster.smooth         ? packing::plain | packing::tones
                                                   : packing::plain;
    bytes[face::height] = static_cast<std::uint8_t>(raster.height);
    bytes[face::enlarged] = static_cast<std::uint8_t>(enlarged);
    bytes[face::glyphs] = static_cast<std::uint8_t>(raster.glyphs.size());
    bytes[face::parameters] = parameters.byte();
    bytes[face::advance] = static_cast<std::uint8_t>(digit_advance(raster));

    std::map<std::vector<std::uint8_t>, std::size_t> stored;  // glyph bytes -> their place
    for (std::size_t i = 0; i < raster.glyphs.size(); ++i) {
        const Bitmap& cell = raster.glyphs[i].cell;
        std::vector<std::uint8_t> glyph =
            chosen == Packing::runs ? runs_glyph(cell, parameters) : plain_glyph(cell);
        const auto [known, is_new] = stored.emplace(std::move(glyph), bytes.size());
        if (known->second > 0xFFFF) return packed;
        put_u16(bytes, face::places + 2 * i, known->second);
        if (is_new) bytes.insert(bytes.end(), known->first.begin(), known->first.end());
    }
    if (bytes.size() > 0xFFFF) return packed;
    packed.bytes = std::move(bytes);
    return packed;
}

PackedFace pack_smallest(const RasterFace& raster, int enlarged) {
    PackedFace plain = pack(raster, Packing::plain, enlarged);
    PackedFace runs = pack(raster, Packing::runs, enlarged);
    if (plain.bytes.empty()) return runs;
    // Equal size: plain, the simpler decoder.
    return !runs.bytes.empty() && runs.bytes.size() < plain.bytes.size() ? runs : plain;
}

std::size_t cropped_bytes(const RasterFace& raster) {
    constexpr std::size_t metrics = 7;  // place u16, width, height, left, top, advance
    std::size_t bytes = 0;
    for (const Glyph& glyph : raster.glyphs) {
        const InkBox box = ink_box(glyph.cell);
        bytes +=
            (static_cast<std::size_t>(box.width) * static_cast<std::size_t>(box.height) + 7) / 8 +
            metrics;
    }
    return bytes;
}

}  // namespace dialplate
