#include "sim/prototype/image_map.hpp"

#include "ui/image_format.hpp"

#include <algorithm>
#include <initializer_list>
#include <utility>

namespace dialplate {
namespace {

/// Which of the kinds of faces, by its packing.
int face_kind(int packing) {
    return packing == (packing::plain | packing::tones)     ? 4
           : packing == (packing::context | packing::tones) ? 5
                                                            : packing;
}

int strip_kind(int packing) {
    return packing == (packing::plain | packing::tones)     ? 3
           : packing == (packing::context | packing::tones) ? 4
                                                            : packing;
}

bool is_in_context(int packing) {
    return (packing & ~int{packing::tones}) == packing::context;
}

/// Walks an image once.
class Walk {
public:
    explicit Walk(const std::vector<std::uint8_t>& image) : image_(image) {
        map_.kinds.assign(image.size(), work::nothing);
    }

    ImageMap take() {
        for (int at = 0; at < header::bytes; ++at) {
            // Of the offsets and the sizes only the lower byte.
            const bool higher = (at >= header::size && at < header::pages && at % 2 == 1) ||
                                (at >= header::at_pages && at < header::hold && at % 2 == 1);
            mark(at, higher ? work::nothing : work::header + at);
        }
        for (int v = 0; v < u8(header::values); ++v) {
            const int at = u16(header::at_values) + 2 * v;
            mark(at, work::value + (u16(at) >> value_type_shift));
        }
        for (int p = 0; p < u8(header::paints) * u8(header::palettes); ++p) {
            mark(u16(header::at_paints) + 2 * p, work::paint);
        }
        for (int t = 0; t < u8(header::tones) * tone_bytes; ++t) {
            mark(u16(header::at_tones) + t, work::tone + t % tone_bytes);
        }
        for (int p = 0; p < u8(header::pages); ++p) {
            const int at = u16(header::at_pages) + 2 * p;
            mark(at, work::page_place);
            page(u16(at));
        }
        for (int f = 0; f < u8(header::faces); ++f) {
            const int at = u16(header::at_faces) + 2 * f;
            mark(at, work::face_place);
            if (u16(at) != 0) face(u16(at));  // 0: no text has it
        }
        for (int p = 0; p < u8(header::pictures); ++p) {
            const int at = u16(header::at_pictures) + 2 * p;
            mark(at, work::picture_place);
            picture(u16(at));
        }
        std::sort(map_.bitmaps.begin(), map_.bitmaps.end(), [](const auto& a, const auto& b) {
            return a.first < b.first;
        });
        return std::move(map_);
    }

private:
    [[nodiscard]] int u8(int at) const { return image_[static_cast<std::size_t>(at)]; }
    [[nodiscard]] int u16(int at) const { return u8(at) | u8(at + 1) << 8; }
    void mark(int at, int kind) {
        map_.kinds[static_cast<std::size_t>(at)] = static_cast<std::uint16_t>(kind);
    }
    void mark_rect(int at, int kind) { mark(at + rect_bytes - 1, kind); }
    void mark_point(int at, int kind) { mark(at + point_bytes - 1, kind); }

    void text(int at) {
        mark(at, work::text);
        for (int i = 1; i <= u8(at); ++i) {
            mark(at + i, work::text + 1);
        }
    }

    void page(int at) {
        for (int field = 0; field < page::bytes; field += 2) {
            mark(at + field, work::page + field);
        }
        int next = at + page::bytes;
        for (int groups = u16(at + page::fills); groups > 0; --groups) {
            mark(next, work::fill_group);
            mark(next + 1, work::fill_group + 1);
            const int count = u8(next + 1);
            next += 2;
            for (int i = 0; i < count; ++i, next += rect_bytes) {
                mark_rect(next, work::fill_rect);
            }
        }
        const int items = u16(at + page::items);
        for (next = u16(at + page::texts); next < items;) {
            for (int field = 0; field < text_group::bytes; ++field) {
                mark(next + field, work::text_group + field);
            }
            const int count = u8(next + text_group::count);
            next += text_group::bytes;
            for (int i = 0; i < count; ++i, next += text_group::each) {
                mark_point(next, work::text_line);
                mark(next + point_bytes, work::text_line + 1);
                text(u16(next + point_bytes));
            }
        }
        next = items;
        for (int i = 0; i < u16(at + page::count); ++i, next += u8(next)) {
            item(next);
        }
    }

    struct Wide {
        int at, bytes;
    };
    /// The fields of an item up to `end`, but for its place, each of its own kind.
    void fields(int at, int first, int end, std::initializer_list<Wide> wide) {
        for (int field = 0; field < end; ++field) {
            mark(at + field, first + field);
        }
        for (const Wide& number : wide) {
            for (int i = 1; i < number.bytes; ++i) {
                mark(at + number.at + i, work::nothing);
            }
        }
        const bool is_point = first == work::readout;
        for (int i = 0; i < (is_point ? point_bytes : rect_bytes); ++i) {
            mark(at + item::place + i, work::nothing);
        }
        if (is_point) {
            mark_point(at + item::place, first + item::place);
        } else {
            mark_rect(at + item::place, first + item::place);
        }
    }

    void item(int at) {
        switch (static_cast<Kind>(u8(at + item::kind))) {
            case Kind::readout: {
                fields(at, work::readout, readout::cells, {});
                const int digits = at + readout::cells + u8(at + readout::count);
                for (int i = at + readout::cells; i < at + u8(at); ++i) {
                    mark(i, work::readout + readout::cells + (i < digits ? 0 : 1));
                }
                break;
            }
            case Kind::box:
                box(at);
                break;
            case Kind::meter:
                fields(at,
                       work::meter,
                       meter::gap_paint + 1,
                       {{meter::over_from, 2}, {meter::from, 4}, {meter::to, 4}});
                break;
            case Kind::scale:
                fields(at,
                       work::scale,
                       scale::divide + 4,
                       {{scale::minor, 2},
                        {scale::major, 2},
                        {scale::units, 4},
                        {scale::from, 4},
                        {scale::divide, 4}});
                break;
            case Kind::picture:
                fields(at, work::picture_item, std::min(u8(at), picture_item::darker + 1), {});
                break;
        }
    }

    void box(int at) {
        fields(at, work::box, box::rest, {});
        const int flags = u8(at + box::flags);
        int next = at + box::rest;
        if (flags & box::words) mark(next++, work::box + box::rest);
        if (flags & box::active) {
            mark(next, work::box + box::rest + 1);
            const int type = u16(u16(header::at_values) + 2 * u8(next)) >> value_type_shift;
            mark(++next, work::box + box::rest + 2);
            next += type == value_type::choice || type == value_type::flag ? 1 : 4;
        }
        if (flags & box::enabled_by) mark(next++, work::box + box::rest + 3);
        if (flags & box::tap_page) mark(next++, work::box + box::rest + 4);
        if (flags & box::hold_page) mark(next++, work::box + box::rest + 5);
        const int lines = u8(next);
        mark(next++, work::box_line);
        for (int i = 0; i < lines; ++i, next += text_group::each) {
            mark_point(next, work::box_line + 1);
            mark(next + point_bytes, work::box_line + 2);
            text(u16(next + point_bytes));
        }
    }

    void face(int at) {
        const int packing = u8(at + face::packing);
        const int fields = is_in_context(packing)        ? face::metrics
                           : packing == packing::segment ? face::segment_bytes
                                                         : face::places;
        const int first = work::face + face_kind(packing) * work::face_fields;
        for (int field = 0; field < fields; ++field) {
            mark(at + field, first + field);
        }
        if (is_in_context(packing)) context_glyphs(at);
        if (is_in_context(packing) || packing == packing::segment) return;
        const int kind = packing == packing::plain ? 0 : packing == packing::runs ? 1 : 2;
        for (int g = 0; g < u8(at + face::glyphs); ++g) {
            const int its_place = at + face::places + 2 * g;
            mark(its_place, first + face::places);
            mark(its_place + 1, work::nothing);
            glyph(at, at + u16(its_place), kind);
        }
    }

    void context_glyphs(int face_at) {
        int least_columns = u8(face_at + face::advance);
        int at = face_at + face::metrics;
        for (int left = u8(face_at + face::glyphs); left > 0; ++at) {
            const int next = u8(at);
            if (next >= face::columns) {
                mark(at, work::metric + 1);
                least_columns += next - face::same_columns;
                continue;
            }
            const int length = next * u8(face_at + face::lengths);
            mark(at, work::metric);
            CodedBitmap bitmap;
            bitmap.packing = static_cast<std::uint8_t>(u8(face_at + face::packing));
            bitmap.width = least_columns + length % 256 * u8(face_at + face::widths) / 256;
            bitmap.height = u8(face_at + face::height);
            bitmap.times = u8(face_at + face::enlarged) & face::most_enlarged;
            bitmap.data = static_cast<std::uint16_t>(at + 1);
            map_.bitmaps.emplace_back(static_cast<std::uint16_t>(at), bitmap);
            at += length / 256;
            --left;
        }
    }

    void glyph(int face_at, int at, int kind) {
        const int first = work::glyph + kind * work::glyph_fields;
        mark(at, first);
        if (at + 1 < static_cast<int>(image_.size())) mark(at + 1, first + 1);
        CodedBitmap bitmap;
        bitmap.packing = static_cast<std::uint8_t>(u8(face_at + face::packing));
        bitmap.parameters = static_cast<std::uint8_t>(u8(face_at + face::parameters));
        bitmap.width = u8(at);
        bitmap.height = u8(face_at + face::height);
        bitmap.times = u8(face_at + face::enlarged) & face::most_enlarged;
        bitmap.data = static_cast<std::uint16_t>(at + (kind != 1 ? 5 : 1));
        if (kind != 1) {
            bitmap.inked_left = u8(at + 1);
            bitmap.inked_top = u8(at + 2);
            bitmap.inked_width = u8(at + 3);
            bitmap.inked_height = u8(at + 4);
        }
        map_.bitmaps.emplace_back(static_cast<std::uint16_t>(at + 1), bitmap);
    }

    void picture(int at) {
        for (int field = 0; field < picture::places; ++field) {
            mark(at + field, work::picture + field);
        }
        mark(at + picture::width + 1, work::nothing);
        mark(at + picture::height + 1, work::nothing);
        const int strip_rows = u8(at + picture::strip_rows);
        for (int s = 0; s < u8(at + picture::strips); ++s) {
            const int its_place = at + picture::places + 2 * s;
            mark(its_place, work::picture + picture::places);
            const int data = at + u16(its_place);
            CodedBitmap bitmap;
            bitmap.packing = static_cast<std::uint8_t>(u8(at + picture::packing));
            bitmap.parameters = static_cast<std::uint8_t>(u8(at + picture::parameters));
            bitmap.width = u16(at + picture::width);
            bitmap.height = std::min(strip_rows, u16(at + picture::height) - s * strip_rows);
            bitmap.data = static_cast<std::uint16_t>(data);
            bitmap.inked_width = bitmap.width;
            bitmap.inked_height = bitmap.height;
            mark(data, work::strip_data + strip_kind(bitmap.packing));
            map_.bitmaps.emplace_back(static_cast<std::uint16_t>(data), bitmap);
        }
    }

    const std::vector<std::uint8_t>& image_;
    ImageMap map_;
};

}  // namespace

ImageMap map_of_image(const std::vector<std::uint8_t>& image) {
    return Walk(image).take();
}

}  // namespace dialplate
