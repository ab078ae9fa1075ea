// Faces in the packing `context` as the image holds them: ui/image.md, "Face".
#include "fonts/code_context.hpp"
#include "fonts/face.hpp"
#include "fonts/ink_box.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace dialplate {

using namespace fonts;

namespace {

bool is_digit(const Glyph& glyph) {
    return glyph.code >= U'0' && glyph.code <= U'9';
}

std::vector<const Bitmap*> cells_of(const RasterFace& raster) {
    std::vector<const Bitmap*> cells;
    for (const Glyph& glyph : raster.glyphs)
        cells.push_back(&glyph.cell);
    return cells;
}

// How the metrics of a face are written: bytes of a stream and columns of a cell in one byte below face::columns, for
// cells of at least so many columns, until that changes.
class MetricsCode {
public:
    // @param first_columns  The least at first, if the face has to state that; 0: it has not.
    MetricsCode(const std::vector<const Bitmap*>& cells, int first_columns, std::size_t longest) {
        std::set<int> widths;
        for (const Bitmap* cell : cells)
            widths.insert(cell->width);
        const int least = widths.empty() ? 1 : *widths.begin(),
                  most = widths.empty() ? 1 : *widths.rbegin();
        // So that the greatest is below face::columns.
        const auto lengths = static_cast<int>(longest + 1);
        lengths_ = (whole * lengths + face::columns - 1) / face::columns;
        widths_ = std::clamp(whole / lengths_, 1, most - least + 1);
        first_ = first_columns != 0 ? first_columns : least;
        // Groups of widths: from the first up, then from the first down.
        for (const int width : widths)
            if (width >= first_ && (groups_.empty() || width >= groups_.back() + widths_))
                groups_.push_back(groups_.empty() ? first_ : width);
        for (auto width = widths.rbegin(); width != widths.rend(); ++width)
            if (*width < first_ &&
                (groups_.empty() || *width < groups_.back() || groups_.back() >= first_))
                groups_.push_back(std::max(1, *width - widths_ + 1));
    }

    [[nodiscard]] bool fits() const { return lengths_ < whole; }
    [[nodiscard]] int first() const { return first_; }
    [[nodiscard]] int lengths() const { return lengths_; }
    [[nodiscard]] int widths() const { return widths_; }
    // The least columns where such a cell stands.
    [[nodiscard]] int group(int columns) const {
        for (const int least : groups_)
            if (columns >= least && columns < least + widths_) return least;
        return columns;
    }
    [[nodiscard]] std::vector<std::uint8_t> bytes(int before,
                                                  int columns,
                                                  std::size_t length) const {
        constexpr int most_fewer = face::same_columns - face::columns,
                      most_more = 255 - face::same_columns;
        std::vector<std::uint8_t> bytes;
        const int least = group(columns);
        for (int more = least - before; more != 0;) {
            const int step = std::clamp(more, -most_fewer, most_more);
            bytes.push_back(static_cast<std::uint8_t>(face::same_columns + step));
            more -= step;
        }
        // The least number whose product with lengths_ has `length` for its whole part, in 1/256, and the product of
        // what is left with widths_ the columns.
        const int parts = static_cast<int>(length) * widths_ + (columns - least);
        const int all = lengths_ * widths_;
        bytes.push_back(static_cast<std::uint8_t>((whole * parts + all - 1) / all));
        return bytes;
    }
    [[nodiscard]] Between between() const {
        return {[this](const Bitmap& cell) { return group(cell.width); },
                [this](int before, const Bitmap& cell, std::size_t length) {
                    return bytes(before, cell.width, length);
                }};
    }

private:
    static constexpr int whole = 256;
    int lengths_, widths_, first_;
    std::vector<int> groups_;
};

// The advance of digits that follow each other, as those of a readout do; else 0.
int counted_advance(const RasterFace& raster) {
    const auto first = std::find_if(raster.glyphs.begin(), raster.glyphs.end(), is_digit);
    const auto after = std::find_if_not(first, raster.glyphs.end(), is_digit);
    const bool follow = std::none_of(after, raster.glyphs.end(), is_digit) &&
                        std::is_sorted(first, after, [](const Glyph& a, const Glyph& b) {
                            return a.code < b.code;
                        });
    return follow ? digit_advance(raster) : 0;
}

}  // namespace

void order_for_contexts(RasterFace& raster, bool digits_first, const ContextTable& table) {
    std::sort(raster.glyphs.begin(), raster.glyphs.end(), [&](const Glyph& a, const Glyph& b) {
        const bool later_a = !(digits_first && is_digit(a)),
                   later_b = !(digits_first && is_digit(b));
        return std::pair{later_a, a.code} < std::pair{later_b, b.code};
    });
    const auto fixed = static_cast<std::size_t>(
        digits_first ? std::count_if(raster.glyphs.begin(), raster.glyphs.end(), is_digit) : 0);
    const std::vector<const Bitmap*> cells = cells_of(raster);
    const MetricsCode code(
        cells, fixed != 0 ? digit_advance(raster) : 0, longest_stream(cells, table));
    const Between between = code.between();
    std::vector<Glyph> ordered;
    for (const std::size_t i : short_order(cells, fixed, table, &between, code.first()))
        ordered.push_back(std::move(raster.glyphs[i]));
    raster.glyphs = std::move(ordered);
}

PackedFace pack_context(const RasterFace& raster, const ContextTable& table, int enlarged) {
    PackedFace packed{Packing::context, {}};
    if (!storable(raster, Packing::context, enlarged)) return packed;
    const std::vector<const Bitmap*> cells = cells_of(raster);
    const MetricsCode code(cells, counted_advance(raster), longest_stream(cells, table));
    if (!code.fits()) return packed;
    const Between between = code.between();
    const std::vector<std::vector<std::uint8_t>> streams = write_contexts(cells, table, &between);

    std::vector<std::uint8_t> bytes(face::metrics);
    const auto put = [&](std::size_t at, std::size_t number) {
        bytes[at] = static_cast<std::uint8_t>(number);
    };
    put(face::packing, packing::context | (raster.smooth ? packing::tones : 0U));
    put(face::height, static_cast<std::size_t>(raster.height));
    put(face::enlarged, static_cast<std::size_t>(enlarged));
    put(face::glyphs, raster.glyphs.size());
    put(face::advance, static_cast<std::size_t>(code.first()));
    put(face::lengths, static_cast<std::size_t>(code.lengths()));
    put(face::widths, static_cast<std::size_t>(code.widths()));
    int least = code.first();
    for (std::size_t i = 0; i < cells.size(); ++i) {
        for (const std::vector<std::uint8_t>& part :
             {code.bytes(least, cells[i]->width, streams[i].size()), streams[i]})
            bytes.insert(bytes.end(), part.begin(), part.end());
        least = code.group(cells[i]->width);
    }
    if (bytes.size() <= 0xFFFF) packed.bytes = std::move(bytes);
    return packed;
}

std::vector<Bitmap> unpack_context(const PackedFace& packed, const ContextTable& table) {
    const std::span<const std::uint8_t> bytes = packed.bytes;
    if (bytes.size() < face::metrics ||
        (bytes[face::packing] & ~packing::tones) != packing::context)
        return {};
    const bool tones = (bytes[face::packing] & packing::tones) != 0;
    int least = bytes[face::advance];
    std::size_t at = face::metrics;
    std::vector<Bitmap> cells;
    while (cells.size() < bytes[face::glyphs]) {
        if (at >= bytes.size()) return {};
        const std::uint8_t next = bytes[at++];
        if (next >= face::columns) {
            least += next - face::same_columns;
            continue;
        }
        const unsigned length = unsigned{next} * bytes[face::lengths];
        const int columns = least + static_cast<int>(length % 256 * bytes[face::widths] / 256);
        if (columns < 1 || columns > most_context_columns || at + length / 256 > bytes.size())
            return {};
        cells.push_back(
            read_contexts(bytes.subspan(at), columns, bytes[face::height], tones, table));
        at += length / 256;
    }
    return cells;
}

}  // namespace dialplate
