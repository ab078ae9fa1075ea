#include "sim/prototype/work_counter.hpp"

#include "ui/image_format.hpp"

#include <algorithm>
#include <bit>
#include <cstdlib>

namespace dialplate {
namespace {

using work::Subject;

bool is_within(int kind, int first, int after) {
    return kind >= first && kind < after;
}

/// Whether the glyphs of a face of such a kind have metrics as in context.
bool is_face_in_context(int face_kind) {
    return face_kind == 2 || face_kind == 5;
}

/// Columns that the engine tries for where a row of a round corner begins: as corner_inset() of ui/box.hpp.
int columns_tried(int radius, int inner, int y) {
    const int down = 2 * (radius - y) - 1;
    int tried = 1;
    for (int x = radius - inner; x < radius; ++x, ++tried) {
        const int across = 2 * (radius - x) - 1;
        if (across * across + down * down <= 4 * inner * inner) break;
    }
    return tried;
}

}  // namespace

WorkCounter::WorkCounter(const std::vector<std::uint8_t>& image,
                         const std::vector<std::int32_t>& values)
    : image_(image),
      values_(values),
      map_(map_of_image(image)),
      decodings_(map_.bitmaps.size()),
      decoded_(map_.bitmaps.size()) {
    for (int kind = 0; kind < work::reads; ++kind) {
        tells_[static_cast<std::size_t>(kind)] =
            is_within(kind, work::page, work::text) ||
            is_within(kind, work::readout, work::picture_item) ||
            is_within(kind, work::face, work::picture_place) ||
            is_within(kind, work::strip_data, work::reads);
    }
}

std::int32_t WorkCounter::i32(int at) const {
    std::uint32_t number = 0;
    for (int i = 3; i >= 0; --i) {
        number = number << 8 | static_cast<std::uint32_t>(u8(at + i));
    }
    return static_cast<std::int32_t>(number);
}

void WorkCounter::listen(int kind, int at) {
    listen_for_change(kind, at);
    if (changing_face_ != 0) {
        // Nothing of it is a glyph drawn whole.
    } else if (is_within(kind, work::face, work::glyph)) {
        const int face_kind = (kind - work::face) / work::face_fields;
        const int field = (kind - work::face) % work::face_fields;
        if (fresh_) begin_glyph(face_kind, at - field);
        if (is_face_in_context(face_kind) && field == face::advance) looks_up_ = true;
    } else if (is_within(kind, work::metric, work::picture_place)) {
        // A stream is read on into what stands in front of the next.
        if (!looks_up_) add(kind, -1);
        if (looks_up_) last_glyph_ = at;
    } else if (is_within(kind, work::glyph, work::metric)) {
        if ((kind - work::glyph) % work::glyph_fields == 1) add_bitmap(at);
    } else if (kind >= work::strip_data) {
        // A stream in context may read on into the next strip's; only the first read is the strip's own.
        const bool begins = fresh_;
        constexpr Subject subjects[work::strip_kinds] = {Subject::plain,
                                                         Subject::runs,
                                                         Subject::context,
                                                         Subject::plain_tones,
                                                         Subject::context_tones};
        if (begins) {
            begin(subjects[kind - work::strip_data]);
            add_bitmap(at);
        }
    } else if (kind < work::text) {
        item_ = Subject::page;
    } else if (kind < work::box) {
        item_ = Subject::readout;
        listen_to_readout(kind - work::readout, at - (kind - work::readout));
    } else if (kind < work::meter) {
        item_ = Subject::box;
        if (kind == work::box + box::radius) box_ = at - box::radius;
    } else if (kind < work::scale) {
        item_ = Subject::meter;
        if (kind == work::meter + meter::from) add_place_on_meter(at - meter::from);
    } else {
        item_ = Subject::scale;
        if (kind == work::scale + scale::minor) look_at_scale(at - scale::minor);
    }
}

/// Of a digit that is to change, a bitmap is read before its window is opened, as no other is; of segments the columns
/// are looked up twice in turn. The change lasts until the readout is read again.
void WorkCounter::listen_for_change(int kind, int at) {
    if (is_within(kind, work::glyph, work::metric)) {
        if ((kind - work::glyph) % work::glyph_fields == 0) last_glyph_ = at;
        return;
    }
    if (!is_within(kind, work::face, work::glyph)) {
        if (kind < work::face) changing_face_ = last_face_read_ = 0;
        return;
    }
    const int field = (kind - work::face) % work::face_fields;
    const int face_at = at - field;
    const bool changes = (u8(face_at + face::enlarged) & face::changed_runs) != 0;
    const bool segments = u8(face_at) == packing::segment;
    const bool follows_enlarged = last_face_read_ == face_at + face::enlarged;
    last_face_read_ = at;
    if (!changes) return;
    if (segments && field == face::advance && follows_enlarged) changing_face_ = face_at;
    if (field != face::parameters) return;
    if (segments && changing_face_ != 0) {
        add(work::unlike_segments, 1);
    } else if (!segments && !fresh_) {
        changing_face_ = face_at;
        add_compared_digit();
    }
}

void WorkCounter::add_compared_digit() {
    const EngineWork before = work_;
    add_bitmap(last_glyph_ + 1);
    const auto counted = [&](int kind) {
        const auto at = static_cast<std::size_t>(kind);
        return work_.times[at] - before.times[at];
    };
    EngineWork all = before;
    const auto put = [&](int kind, int times) {
        all.times[static_cast<std::size_t>(kind)] += times;
    };
    put(work::compared, 1);
    put(work::compared_row,
        counted(work::runs_row) + counted(work::plain_row) + counted(work::plain_blank));
    put(work::compared_run, counted(work::runs_run));
    put(work::compared_bit, counted(work::runs_one) + counted(work::runs_low));
    put(work::compared_plain_bit, counted(work::plain_bit));
    work_ = all;
}

/// The rows of a window of changed segments that are not those above again.
void WorkCounter::add_unlike_rows() {
    const int high = u8(readout_ + item::place + 2);
    const int top = u8(readout_ + item::place + 1) | (high >> 2 & 3) << 8;
    const int times = std::max(1, u8(changing_face_ + face::enlarged) & face::most_enlarged);
    const int height = u8(changing_face_ + face::height);
    const int stroke = u8(changing_face_ + face::parameters);
    const int middle = (height - stroke) / 2;
    const int first = (window_.y - top) / times;
    for (int y = first; y < first + window_.height / times; ++y) {
        const bool upper = y > stroke && y < middle;
        const bool lower = y > middle + stroke && y < height - stroke;
        add(work::unlike_row, y == first || !(upper || lower) ? 1 : 0);
    }
}

/// @param face_kind  Which of the groups of work::face.
void WorkCounter::begin_glyph(int face_kind, int face_at) {
    const bool large = (u8(face_at + face::enlarged) & face::most_enlarged) > 1;
    const Subject subjects[work::face_kinds] = {Subject::plain,
                                                Subject::runs,
                                                large ? Subject::large_context : Subject::context,
                                                Subject::segment,
                                                Subject::plain_tones,
                                                Subject::context_tones};
    begin(subjects[face_kind]);
    if (subject_ == Subject::segment) add_segment_rows(face_at);
    if (is_face_in_context(face_kind)) add_bitmap(last_glyph_);
}

void WorkCounter::window(std::uint16_t x,
                         std::uint16_t y,
                         std::uint16_t width,
                         std::uint16_t height) {
    window_ = {x, y, width, height};
    fresh_ = true;
    looks_up_ = false;
}

void WorkCounter::push(std::uint16_t colour, std::uint16_t count) {
    if (fresh_ && changing_face_ != 0) {
        const bool segments = u8(changing_face_) == packing::segment;
        begin(segments ? Subject::changed_segments : Subject::changed_runs);
        if (segments) add_unlike_rows();
    } else if (fresh_) {
        begin(item_);
        if (item_ == Subject::box) add_corners();
    }
    add((count != 0 ? work::push : work::empty_push) + static_cast<int>(subject_), 1);
    add(work::pixel, count);
    if (colour >> 8 == (colour & 0xFF) && count != 0) {
        add(work::even_pixel, count);
        add(work::even_push, 1);
    }
}

void WorkCounter::begin(Subject subject) {
    fresh_ = false;
    subject_ = subject;
    add(work::window + static_cast<int>(subject), 1);
    if (subject == Subject::scale && window_.width == 1) {
        ++scale_windows_;
        scale_to_ = window_.x + 1;
    }
    add(work::row + static_cast<int>(subject), window_.height);
}

void WorkCounter::add_corners() {
    const int radius = u8(box_ + box::radius);
    const int edge = u8(box_ + box::edge);
    const int high = u8(box_ + item::place + 4);
    const int top = u8(box_ + item::place + 1) | (high >> 2 & 3) << 8;
    const int height = u8(box_ + item::place + 3) | (high >> 6 & 3) << 8;
    for (int y = window_.y - top; y < window_.y - top + window_.height; ++y) {
        const int end_row = std::min(y, height - 1 - y);
        if (end_row < 0 || end_row >= radius) continue;
        add(work::corner_row, 1);
        add(work::corner_column, columns_tried(radius, radius, end_row));
        if (edge < radius) add(work::corner_column, columns_tried(radius, radius - edge, end_row));
    }
}

void WorkCounter::add_segment_rows(int face_at) {
    const int height = u8(face_at + face::height);
    const int stroke = u8(face_at + face::parameters);
    const int times = std::max(1, u8(face_at + face::enlarged) & face::most_enlarged);
    const int gap = u8(face_at + face::segment_gap);
    if (window_.width == (stroke + gap) * times) {
        add(work::segment_dots, height);
    } else {
        add(work::segment_end, 2 * stroke);
        add(work::segment_middle, stroke);
        add(work::segment_upright, height - 3 * stroke);
    }
    add(work::sent_row, height * times);
}

void WorkCounter::listen_to_readout(int field, int at) {
    readout_ = at;
    switch (field) {
        case item::kind:  // before and after each of the steps of an update
            draws_readout_ = false;
            break;
        case readout::face:
            draws_readout_ = true;
            break;
        case readout::least:
            add_digits(at);
            break;
        case readout::count:
            add(work::drawn_count, draws_readout_ ? 1 : 0);
            break;
        case readout::cells:
            add(work::drawn_cell, draws_readout_ ? 1 : 0);
            break;
        default:
            break;
    }
}

void WorkCounter::look_at_scale(int item) {
    if (item == scale_) return;
    if (scale_ != 0) add_scale_steps(0);
    if (scale_ != 0) scale_from_ = 0;
    scale_ = item;
    scale_windows_ = 0;
}

/// The ticks that were walked over and sent nothing, because they stand where others stood.
/// @param to  Column behind the last one walked; 0: to the end.
void WorkCounter::add_scale_steps(int to) {
    const int high = u8(scale_ + item::place + 4);
    const int left = u8(scale_ + item::place) | (high & 3) << 8;
    const int width = u8(scale_ + item::place + 2) | (high >> 4 & 3) << 8;
    const int minor = u8(scale_ + scale::minor) | u8(scale_ + scale::minor + 1) << 8;
    const int stands = u8(scale_ + scale::flags) & scale::tape ? 2 : 1;
    constexpr int of_pointers = 4;
    const int walked = (to == 0 ? width : to - left) - scale_from_;
    const int steps =
        (stands * width / std::max(1, minor) + of_pointers) * walked / std::max(1, width);
    add(work::scale_step, std::max(0, steps - scale_windows_));
    scale_from_ = to == 0 ? 0 : to - left;
}

void WorkCounter::end_service(bool full) {
    if (scale_ != 0) add_scale_steps(full && subject_ == Subject::scale ? scale_to_ : 0);
    scale_ = 0;
}

void WorkCounter::add_digits(int item) {
    const auto value = static_cast<std::size_t>(u8(item + readout::value));
    if (value >= values_.size()) return;
    auto rest = static_cast<std::uint32_t>(std::abs(std::int64_t{values_[value]}));
    const int dropped = u8(item + readout::drop);
    const int least = u8(item + readout::least);
    int digits = 0;
    for (int i = 0; i < u8(item + readout::count); ++i) {
        digits += u8(item + readout::cells + i) < readout::sign_cell ? 1 : 0;
    }
    for (int taken = 0; taken < dropped + digits; ++taken) {
        if (rest == 0 && taken >= dropped + least) break;
        add(work::digit, 1);
        add(work::digit_byte, (std::bit_width(rest) + 7) / 8);
        rest /= 10;
    }
}

void WorkCounter::add_place_on_meter(int item) {
    const auto value = static_cast<std::size_t>(u8(item + meter::value));
    if (value >= values_.size()) return;
    const std::int32_t now = values_[value];
    if (now > i32(item + meter::from) && now < i32(item + meter::to)) add(work::on_meter, 1);
}

void WorkCounter::add_bitmap(int at) {
    const auto found = std::lower_bound(
        map_.bitmaps.begin(), map_.bitmaps.end(), at, [](const auto& bitmap, int place) {
            return bitmap.first < place;
        });
    if (found == map_.bitmaps.end() || found->first != at) return;
    const auto number = static_cast<std::size_t>(found - map_.bitmaps.begin());
    if (!decoded_[number]) {
        EngineWork decoding;
        add_decoding(image_, found->second, decoding);
        std::copy_n(
            decoding.times.begin() + work::runs_row, decoding_kinds, decodings_[number].begin());
        decoded_[number] = true;
    }
    for (int i = 0; i < decoding_kinds; ++i) {
        add(work::runs_row + i, decodings_[number][static_cast<std::size_t>(i)]);
    }
}

}  // namespace dialplate
