// Where the cells of a readout go, and what else of it never changes.
#include "sim/image/lettering.hpp"
#include "sim/image/page_writer.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <numeric>

namespace dialplate {

namespace {

/// floor(log10(step)) less the digits not shown; 255 if that digit is not shown.
int digit_of_step(std::int64_t step, int drop) {
    int digit = -drop;
    for (; step >= 10; step /= 10)
        ++digit;
    return digit < 0 ? none : digit;
}

}  // namespace

void PageWriter::add_readout(const Item& item, const Box& box, int index) {
    const Readout& r = item.readout;
    map_.fill(box, r.ground);
    if (!faces_.usable(r.face)) return;
    const Value& value = layout_.values[static_cast<std::size_t>(r.value)];

    // Cells from the left: sign, digits in groups, separators between.
    std::vector<int> cells;
    std::vector<int> widths;
    std::u32string widest;
    const bool sign = value.min < 0;
    if (sign) {
        cells.push_back(readout::sign_cell);
        widths.push_back(faces_.digit_advance(r.face));
        widest += U"-";
    }
    const std::u32string separator = code_points(r.separator);
    int digit = std::accumulate(r.groups.begin(), r.groups.end(), 0);
    const int digits = digit;
    for (std::size_t g = 0; g < r.groups.size(); ++g) {
        if (g != 0 && !separator.empty()) {
            cells.push_back(readout::separator_cell + faces_.index(r.face, separator.front()));
            widths.push_back(faces_.advance(r.face, separator.front()));
            widest += separator.front();
        }
        for (int i = 0; i < r.groups[g]; ++i) {
            cells.push_back(--digit);
            widths.push_back(faces_.digit_advance(r.face));
            widest += U"8";
        }
    }
    // More digits than there are cells for would be cut off at the left: count them into the width.
    std::int64_t greatest = std::max(std::abs(static_cast<std::int64_t>(value.min)),
                                     std::abs(static_cast<std::int64_t>(value.max)));
    for (int i = 0; i < r.drop; ++i)
        greatest /= 10;
    const int needed = static_cast<int>(std::to_string(greatest).size());
    const int lacking = std::max(0, needed - digits);

    const std::u32string unit = code_points(r.unit);
    const bool has_unit = !unit.empty() && faces_.usable(r.unit_face);
    const int unit_gap = has_unit ? std::max(2, faces_.digit_advance(r.face) / 4) : 0;
    const int unit_width = has_unit ? unit_gap + faces_.width(r.unit_face, unit) : 0;
    const int rows = faces_.height(r.face);
    const bool underlined = r.tuning && r.mark == Readout::Mark::underline;
    const bool inverted = r.tuning && r.mark == Readout::Mark::invert;
    const int gap = underlined ? std::max(1, (rows + 8) / 16) : 0;
    // Of the line; or how much an inverted cell is higher than its ink, which fills all rows.
    const int thickness = underlined ? std::max(1, (rows + 8) / 12)
                          : inverted ? std::max(1, (rows + 8) / 16)
                                     : 0;
    const int above = inverted ? thickness : 0;
    const int all_rows = above + rows + gap + thickness;
    int width = std::accumulate(widths.begin(), widths.end(), 0);

    TextExtent extent{page_,
                      index,
                      {},
                      r.face,
                      width + unit_width + lacking * faces_.digit_advance(r.face),
                      all_rows,
                      box.width,
                      box.height,
                      r.ink,
                      r.ground,
                      'd'};
    for (const char32_t code : widest)
        extent.what += utf8(code);
    built_.texts_shown.push_back(extent);
    if (has_unit) note(index, unit, r.unit_face, box, 1, r.unit_ink, r.ground, 't');

    // What does not fit is left out from the left, so that the engine never draws beside the item.
    while (!cells.empty() && width + unit_width > box.width) {
        width -= widths.front();
        cells.erase(cells.begin());
        widths.erase(widths.begin());
    }
    if (cells.empty() || all_rows > box.height) return;
    if (cells.size() > 16) {
        Finding f;
        f.rule = "readout-cells";
        f.pointer = item.pointer + "/groups";
        f.message = item.name + " has " + std::to_string(cells.size()) +
                    " cells for digits and separators, a readout has at most 16";
        tables_.findings.push_back(f);
        return;
    }

    const int room = box.width - width - unit_width;
    const int x = box.x + (r.align == Align::left ? 0 : r.align == Align::centre ? room / 2 : room);
    const int y = box.y + (box.height - all_rows) / 2 + above;
    map_.take({x, y - above, width, above + rows});
    map_.take({x, y + rows + gap, width, thickness});
    if (has_unit) {
        // On the digits' baseline, but inside the item.
        int unit_y = y + faces_.ascent(r.face) - faces_.ascent(r.unit_face);
        unit_y = std::min(unit_y, box.bottom() - faces_.height(r.unit_face));
        if (unit_y >= box.y)
            put_text(unit, r.unit_face, x + width + unit_gap, unit_y, r.unit_ink, r.ground);
    }

    const Value* step = r.tuning ? &layout_.values[static_cast<std::size_t>(*r.tuning)] : nullptr;
    ByteBlock bytes;
    begin_item(bytes, static_cast<int>(Kind::readout));
    bytes.point(x, y);
    bytes.u8(r.value);
    bytes.u8(r.face);
    bytes.u8(r.ink);
    bytes.u8(r.ground);
    bytes.u8(r.drop);
    bytes.u8(r.least);
    bytes.u8(faces_.index(r.face, U'0'));
    bytes.u8(sign ? faces_.index(r.face, U'-') : none);
    bytes.u8(r.tuning ? *r.tuning : none);
    bytes.u8(gap);
    bytes.u8(thickness);
    bytes.u8(step != nullptr ? static_cast<int>(step->choices.size()) : 0);
    bytes.u8(static_cast<int>(cells.size()));
    for (const int cell : cells)
        bytes.u8(cell);
    if (step != nullptr) {
        for (const Choice& choice : step->choices)
            bytes.u8(digit_of_step(choice.number.value_or(1), r.drop));
    }
    end_item(item, bytes);
}

}  // namespace dialplate
