// Meters and scales: where the parts that move go, and the marks and labels that do not.
#include "sim/image/lettering.hpp"
#include "sim/image/page_writer.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <limits>

namespace dialplate {

namespace {

constexpr int label_gap = 1;    // rows or columns between a tick and its label
constexpr int below_ticks = 2;  // of a scale, as in ui/scale.hpp
constexpr int engine_tick_ms = clock_tick_ms;

/// Where a value stands along a bar, as the engine computes it, blocks aside.
int along(const Meter& m, std::int32_t value, int length) {
    const std::int64_t range = static_cast<std::int64_t>(m.to) - m.from;
    const std::int64_t inside = std::clamp<std::int64_t>(value, m.from, m.to) - m.from;
    return static_cast<int>(inside * length / range);
}

}  // namespace

// A label centred at `centre` in a strip of the glass; left out when it would touch the one before.
void PageWriter::put_label(const std::u32string& label,
                           FaceId face,
                           const Box& strip,
                           int centre,
                           int& free_from,
                           PaintId ink,
                           PaintId ground,
                           int index) {
    if (label.empty() || !faces_.usable(face)) return;
    const int width = faces_.width(face, label);
    const int x = std::clamp(centre - width / 2, strip.x, std::max(strip.x, strip.right() - width));
    const bool fits = x >= free_from && width <= strip.width && faces_.height(face) <= strip.height;
    note(index,
         label,
         face,
         {0, 0, x >= free_from ? strip.width : 0, strip.height},
         1,
         ink,
         ground,
         't');
    if (!fits) return;
    put_text(label, face, x, strip.y, ink, ground);
    free_from = x + width;
}

void PageWriter::add_meter(const Item& item, const Box& box, int index) {
    const Meter& m = item.meter;
    map_.fill(box, m.ground);
    std::vector<MeterMark> marks = m.marks;
    std::sort(marks.begin(), marks.end(), [](const MeterMark& a, const MeterMark& b) {
        return a.at < b.at;
    });
    const bool labelled =
        faces_.usable(m.face) &&
        std::any_of(marks.begin(), marks.end(), [](const MeterMark& k) { return !k.text.empty(); });
    const int rows = labelled ? faces_.height(m.face) : 0;
    int label_width = 0;
    for (const MeterMark& k : marks)
        label_width =
            std::max(label_width, labelled ? faces_.width(m.face, code_points(k.text)) : 0);
    const int tick = marks.empty() ? 0 : m.tick;
    const int across_labels = m.upright ? label_width : rows;
    const int across = m.bar + tick + (labelled ? label_gap + across_labels : 0);
    const int room_across = m.upright ? box.width : box.height;
    const int bar_width = std::min(m.bar, room_across);
    const bool with_marks = across <= room_across;
    // Keep the ends of the bar away from the edges so that the outer labels can stand over their ticks.
    const int full = m.upright ? box.height : box.width;
    int pad_from = 0, pad_to = 0;
    if (labelled && with_marks) {
        const auto half = [&](const MeterMark& k) {
            return (m.upright ? faces_.height(m.face) : faces_.width(m.face, code_points(k.text))) /
                   2;
        };
        for (const MeterMark& k : marks) {
            pad_from = std::max(pad_from, half(k) - along(m, k.at, full));
            pad_to = std::max(pad_to, half(k) + along(m, k.at, full) - full);
        }
    }
    int length = std::max(1, full - pad_from - pad_to);
    if (m.block > 0)
        length =
            std::max(m.block, (length + m.gap) / (m.block + m.gap) * (m.block + m.gap) - m.gap);
    length = std::min(length, full);
    const int first = (room_across - (with_marks ? across : bar_width)) / 2;
    // Lying: labels, ticks, bar from the top. Upright: bar, ticks, labels from the left.
    const int bar_offset = m.upright || !with_marks ? first : first + across - m.bar;
    const Box bar = m.upright ? Box{box.x + bar_offset, box.y + pad_to, bar_width, length}
                              : Box{box.x + pad_from, box.y + bar_offset, length, bar_width};
    map_.take(bar);
    if (with_marks && m.upright) {
        int free_below = box.bottom();
        for (const MeterMark& k : marks) {
            const int y = bar.bottom() - 1 - std::min(length - 1, along(m, k.at, length));
            map_.fill({bar.right(), y, tick, 1}, m.mark_ink);
            if (!labelled || k.text.empty()) continue;
            const int top = std::clamp(
                y - faces_.capital(m.face) / 2 - (faces_.ascent(m.face) - faces_.capital(m.face)),
                box.y,
                box.bottom() - rows);
            const std::u32string label = code_points(k.text);
            const bool fits = top + rows <= free_below;
            note(index,
                 label,
                 m.face,
                 {0, 0, box.width, fits ? box.height : 0},
                 1,
                 m.mark_ink,
                 m.ground,
                 't');
            if (!fits) continue;
            put_text(label, m.face, bar.right() + tick + label_gap, top, m.mark_ink, m.ground);
            free_below = top;
        }
    } else if (with_marks) {
        int free_from = box.x;
        const Box strip{box.x, box.y + first, box.width, rows};
        for (const MeterMark& k : marks) {
            const int x = bar.x + std::min(length - 1, along(m, k.at, length));
            map_.fill({x, bar.y - tick, 1, tick}, m.mark_ink);
            if (labelled)
                put_label(code_points(k.text),
                          m.face,
                          strip,
                          x + 1,
                          free_from,
                          m.mark_ink,
                          m.ground,
                          index);
        }
    } else if (labelled) {
        // What bar, ticks and labels need side by side, against the item's own thickness.
        built_.texts_shown.push_back({page_,
                                      index,
                                      "bar with its marks",
                                      m.face,
                                      m.upright ? across : 0,
                                      m.upright ? 0 : across,
                                      box.width,
                                      box.height,
                                      m.mark_ink,
                                      m.ground,
                                      't'});
    }

    ByteBlock bytes;
    begin_item(bytes, static_cast<int>(Kind::meter));
    bytes.rect(bar);
    bytes.u8(m.value);
    bytes.u8((m.upright ? meter::upright : 0) | (m.peak ? meter::has_peak : 0) |
             (m.block > 0 ? meter::has_blocks : 0));
    bytes.u8(m.ink);
    bytes.u8(m.unlit);
    bytes.u8(m.over);
    int over_from = m.over_from > m.to ? full + 1 : along(m, m.over_from, length);
    if (m.block > 0) over_from = (over_from + m.gap) / (m.block + m.gap) * (m.block + m.gap);
    bytes.u16(over_from);
    bytes.i32(m.from);
    bytes.i32(m.to);
    bytes.u8(m.peak_ink);
    bytes.u8(std::clamp(m.peak_hold_ms / engine_tick_ms, 1, 250));
    bytes.u8(m.block);
    bytes.u8(m.gap);
    bytes.u8(m.ground);
    end_item(item, bytes);
}

bool PageWriter::labels_apart(const Scale& s, const Value& value, int columns) const {
    // The tape shows what lies beyond the ends of the value too.
    const std::int64_t beyond = std::int64_t{columns} * s.per_pixel;
    for (const std::int64_t end : {value.min - beyond, value.max + beyond}) {
        std::string digits = std::to_string(std::abs(end / s.divide));
        if (std::ssize(digits) <= s.decimals)
            digits.resize(static_cast<std::size_t>(s.decimals) + 1, '0');
        if (s.decimals > 0) digits += '.';
        if (end < 0) digits += '-';
        if (faces_.width(s.face, code_points(digits)) > s.major / s.per_pixel) return false;
    }
    return true;
}

void PageWriter::add_scale(const Item& item, const Box& box, int index) {
    const Scale& s = item.scale;
    map_.fill(box, s.ground);
    const int tick_rows = std::min(s.major_tick + below_ticks, box.height);
    const bool labelled = faces_.usable(s.face);
    const int rows = labelled ? faces_.height(s.face) : 0;
    const bool room = labelled && tick_rows + rows <= box.height;
    const bool label_tape = s.tape && room;
    const Box moving{box.x, box.y, box.width, tick_rows + (label_tape ? rows : 0)};
    const Value& value = layout_.values[static_cast<std::size_t>(s.value)];
    if (labelled && s.tape) {
        std::u32string widest = code_points(std::to_string(value.max / s.divide));
        if (s.decimals > 0) widest += U".";
        note(index,
             widest,
             s.face,
             {0, 0, std::min(box.width, s.major / s.per_pixel), box.height - tick_rows},
             1,
             s.label_ink,
             s.ground,
             'd');
    }
    map_.take(moving);
    if (!s.tape && labelled) {
        int free_from = box.x;
        const Box strip{box.x, box.y + tick_rows, box.width, box.height - tick_rows};
        for (const ScaleLabel& label : scale_labels(item)) {
            put_label(label.text,
                      s.face,
                      strip,
                      box.x + label.column,
                      free_from,
                      s.label_ink,
                      s.ground,
                      index);
        }
    }
    if (s.major_tick + below_ticks > box.height) return;
    const bool points = label_tape && s.decimals > 0;
    const bool minus = label_tape && faces_.has(s.face, U'-');
    ByteBlock bytes;
    begin_item(bytes, static_cast<int>(Kind::scale));
    bytes.rect(moving);
    bytes.u8(s.value);
    bytes.u8((s.tape ? scale::tape : 0) |
             (label_tape && labels_apart(s, value, box.width) ? scale::apart : 0));
    bytes.u8(label_tape ? s.face : none);
    bytes.u8(s.ink);
    bytes.u8(s.ground);
    bytes.u8(s.label_ink);
    bytes.u8(s.pointer_ink);
    bytes.u8(std::min(s.minor_tick, s.major_tick));  // the engine's rows end below the major ticks
    bytes.u8(s.major_tick);
    bytes.u8(label_tape ? faces_.index(s.face, U'0') : none);
    bytes.u8(points ? faces_.index(s.face, U'.') : none);
    bytes.u8(minus ? faces_.index(s.face, U'-') : none);
    bytes.u8(s.decimals);
    bytes.u16(s.minor / s.per_pixel);
    bytes.u16(s.major / s.per_pixel);
    bytes.i32(s.per_pixel);
    bytes.i32(s.from / s.per_pixel);
    bytes.i32(s.divide);
    end_item(item, bytes);
}

}  // namespace dialplate
