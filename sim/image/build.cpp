#include "sim/image/build.hpp"

#include "fonts/measure.hpp"
#include "sim/image/arena.hpp"
#include "sim/image/byte_block.hpp"
#include "sim/image/face_set.hpp"
#include "sim/image/page_writer.hpp"
#include "sim/image/tables.hpp"
#include "ui/image_format.hpp"

#include <algorithm>

namespace dialplate {

namespace {

constexpr std::size_t greatest_image = 65535;  // 16-bit offsets
constexpr int band_pixels = 1024;              // most that a slice fills
constexpr std::size_t context_read_ahead = 2;  // bytes behind the last stream

int type_code(ValueType type) {
    switch (type) {
        case ValueType::number:
            return value_type::number;
        case ValueType::choice:
            return value_type::choice;
        case ValueType::flag:
            return value_type::flag;
        case ValueType::level:
            return value_type::level;
    }
    return 0;
}

int value_bytes(ValueType type) {
    return type == ValueType::number ? 4 : type == ValueType::level ? 2 : 1;
}

/// A block that is placed as a whole, with the header field that points at its table.
class Writer {
public:
    [[nodiscard]] int here() const { return static_cast<int>(out_.size()); }
    /// Appends a block; offsets to places inside it and to texts become real. @pre texts were placed.
    void append(const ByteBlock& block) {
        const std::size_t base = out_.size();
        out_.insert(out_.end(), block.bytes().begin(), block.bytes().end());
        for (const ByteBlock::Reference& r : block.references()) {
            put16(base + r.at,
                  r.text >= 0 ? text_places_[static_cast<std::size_t>(r.text)]
                              : static_cast<int>(base + r.local));
        }
    }
    void append(const std::vector<std::uint8_t>& bytes) {
        out_.insert(out_.end(), bytes.begin(), bytes.end());
    }
    void text(const std::vector<std::uint8_t>& glyphs) {
        text_places_.push_back(here());
        out_.push_back(static_cast<std::uint8_t>(glyphs.size()));
        append(glyphs);
    }
    void put16(std::size_t at, int value) {
        out_[at] = static_cast<std::uint8_t>(value & 0xFF);
        out_[at + 1] = static_cast<std::uint8_t>(value >> 8 & 0xFF);
    }
    void put8(std::size_t at, int value) { out_[at] = static_cast<std::uint8_t>(value); }
    void room(std::size_t bytes) { out_.resize(out_.size() + bytes); }
    void u16(int value) {
        room(2);
        put16(out_.size() - 2, value);
    }
    void u8(int value) { out_.push_back(static_cast<std::uint8_t>(value)); }
    std::vector<std::uint8_t> take() { return std::move(out_); }

private:
    std::vector<std::uint8_t> out_;
    std::vector<int> text_places_;
};

void write_header(Writer& out, const Layout& layout, const Tables& tables) {
    out.room(header::bytes);
    out.put8(header::mark, image_mark);
    out.put8(header::version, image_version);
    out.put16(header::width, layout.glass_width());
    out.put16(header::height, layout.glass_height());
    out.put8(header::pages, static_cast<int>(layout.pages.size()));
    out.put8(header::palettes, static_cast<int>(std::max<std::size_t>(1, layout.palettes.size())));
    out.put8(header::paints, static_cast<int>(layout.paints.size()));
    out.put8(header::faces, static_cast<int>(layout.faces.size()));
    out.put8(header::values, static_cast<int>(layout.values.size()));
    out.put8(header::pictures, static_cast<int>(tables.pictures().size()));
    out.put8(header::tones, static_cast<int>(tables.tone_table().size()));
    out.put8(header::band, band_pixels / 16);
    out.put8(header::hold, layout.touch.hold_ms / clock_tick_ms);
    out.put8(header::repeat_after, layout.touch.repeat_after_ms / clock_tick_ms);
    out.put8(header::repeat_every, layout.touch.repeat_every_ms / clock_tick_ms);
}

bool is_on_glass(const Box& box, const Layout& layout) {
    return box.x >= 0 && box.y >= 0 && box.right() <= layout.glass_width() &&
           box.bottom() <= layout.glass_height();
}

void place_findings(const Layout& layout, std::vector<Finding>& findings) {
    for (Finding& f : findings) {
        // The nearest member that is written in the file.
        for (std::string pointer = f.pointer;; pointer.resize(pointer.rfind('/'))) {
            if (const auto it = layout.places.find(pointer); it != layout.places.end()) {
                f.place = it->second;
                break;
            }
            if (pointer.empty() || pointer.rfind('/') == std::string::npos) break;
        }
    }
    sort_by_place(findings);
}

}  // namespace

int BuiltImage::context_columns() const {
    int columns = 1;
    for (const FaceCost& face : faces) {
        if (face.packing != "context") continue;
        for (const Glyph& glyph : rasters[static_cast<std::size_t>(face.face)].glyphs)
            columns = std::max(columns, glyph.cell.width);
    }
    for (const PictureCost& picture : pictures)
        if (picture.packing == "context") columns = std::max(columns, picture.width);
    return columns;
}

Building build_image(const Layout& layout) {
    Building building;
    BuiltImage built;
    Tables tables;
    for (const Page& page : layout.pages)
        for (const Item& item : page.items)
            if (item.kind == ItemKind::picture && is_on_glass(item.box, layout))
                tables.add_picture(layout, item);
    std::vector<PictureToPack> pictures;
    for (const Tables::StoredPicture& picture : tables.pictures())
        pictures.push_back({&picture.bitmap, picture.packing});
    FaceSet faces(layout);
    faces.prepare(building.findings, pictures);
    const ShownParts parts = shown_parts(layout);

    std::vector<ByteBlock> pages;
    for (std::size_t p = 0; p < layout.pages.size(); ++p) {
        PageWriter page(layout, static_cast<int>(p), faces, tables, built);
        pages.push_back(page.write(static_cast<int>(built.keys.size())));
        built.keys.insert(built.keys.end(), page.keys().begin(), page.keys().end());
        int shown = 0, shown_by_all = 0;
        for (const Item* item : page.written()) {
            shown += shown_bytes(*item, parts);
            shown_by_all += shown_bytes(*item, ShownParts{});
        }
        built.arena_shown = std::max(built.arena_shown, shown);
        built.arena_shown_by_all_parts = std::max(built.arena_shown_by_all_parts, shown_by_all);
    }
    building.findings.insert(
        building.findings.end(), tables.findings.begin(), tables.findings.end());

    Writer out;
    write_header(out, layout, tables);
    const auto part = [&](Bytes& share, auto write) {
        const int before = out.here();
        write();
        share = Bytes{out.here() - before};
    };
    built.header = Bytes{header::bytes};
    const FaceSet::AllPacked& packed_faces = faces.packed();
    part(built.contexts, [&] { out.append(packed_faces.contexts); });
    out.put16(header::at_values, out.here());
    part(built.values, [&] {
        for (const Value& value : layout.values) {
            out.u16(built.arena_values | type_code(value.type) << value_type_shift);
            built.arena_values += value_bytes(value.type);
        }
    });
    out.put16(header::at_paints, out.here());
    part(built.paints, [&] {
        for (std::size_t palette = 0; palette < std::max<std::size_t>(1, layout.palettes.size());
             ++palette) {
            for (const Paint& paint : layout.paints) {
                out.u16(palette == 0 || paint.others.size() < palette ? paint.rgb565
                                                                      : paint.others[palette - 1]);
            }
        }
        out.put16(header::at_tones, out.here());
        for (const Tones& t : tables.tone_table()) {
            for (const PaintId paint : {t.ink, t.fill, t.edge})
                out.u8(paint);
        }
    });
    part(built.texts, [&] {
        for (const auto& text : tables.texts())
            out.text(text);
    });
    // Faces first: a decoder may read some bytes beyond the last glyph.
    out.put16(header::at_faces, out.here());
    const int face_table = out.here();
    out.room(layout.faces.size() * 2);
    built.header += Bytes{static_cast<std::int64_t>(layout.faces.size()) * 2};
    for (std::size_t i = 0; i < layout.faces.size(); ++i) {
        const auto face = static_cast<FaceId>(i);
        built.rasters.push_back(faces.raster(face));
        if (!faces.usable(face)) continue;
        const FaceSet::Packed& packed = packed_faces.faces[i];
        if (packed.bytes.empty()) {
            Finding f;
            f.rule = "face-size";
            f.pointer = layout.faces[i].pointer;
            f.message =
                "face \"" + layout.faces[i].name +
                "\" does not fit the image: a face has at most 255 glyphs of 255 x 255 px "
                "and 65,535 bytes, and enlarged, in runs or in context, 12 strokes in a row";
            building.findings.push_back(f);
            continue;
        }
        out.put16(static_cast<std::size_t>(face_table) + 2 * i, out.here());
        out.append(packed.bytes);
        built.faces.push_back({face,
                               packed.glyphs,
                               packed.packing,
                               Bytes{static_cast<std::int64_t>(packed.bytes.size())},
                               packed.plain,
                               packed.runs,
                               packed.context,
                               faces.height(face),
                               faces.digit_advance(face),
                               packed.changed_runs});
        FaceMeasure measure{face, std::nullopt, std::nullopt};
        const int scale = layout.faces[i].scale;
        if (layout.faces[i].kind == FaceKind::segment) {
            measure.capital = faces.capital(face);
        } else {
            const auto scaled = [&](std::optional<int> rows) {
                return rows ? std::optional<int>(*rows * scale) : std::nullopt;
            };
            measure.capital = scaled(capital_height(faces.raster(face)));
            measure.x_height = scaled(x_height(faces.raster(face)));
        }
        built.measures.push_back(measure);
    }
    out.put16(header::at_pages, out.here());
    part(built.pages, [&] {
        const int table = out.here();
        out.room(pages.size() * 2);
        for (std::size_t p = 0; p < pages.size(); ++p) {
            out.put16(static_cast<std::size_t>(table) + 2 * p, out.here());
            out.append(pages[p]);
        }
    });
    out.put16(header::at_pictures, out.here());
    const int picture_table = out.here();
    out.room(tables.pictures().size() * 2);
    built.header += Bytes{static_cast<std::int64_t>(tables.pictures().size()) * 2};
    for (std::size_t i = 0; i < tables.pictures().size(); ++i) {
        out.put16(static_cast<std::size_t>(picture_table) + 2 * i, out.here());
        const Tables::StoredPicture& stored = tables.pictures()[i];
        const FaceSet::Packed& packed = packed_faces.pictures[i];
        out.append(packed.bytes);
        built.pictures.push_back({stored.file,
                                  stored.bitmap.width,
                                  stored.bitmap.height,
                                  packed.packing,
                                  Bytes{static_cast<std::int64_t>(packed.bytes.size())},
                                  packed.plain,
                                  packed.runs,
                                  packed.context,
                                  stored.bitmap.tones});
    }
    // What is in context may be read on beyond its end.
    if (!tables.pictures().empty() && packed_faces.pictures.back().packing == "context") {
        out.room(context_read_ahead);
        built.header += Bytes{context_read_ahead};
    }
    const int size = out.here();
    out.put16(header::size, size);
    if (static_cast<std::size_t>(size) > greatest_image) {
        Finding f;
        f.rule = "image-size";
        f.message =
            "the image takes " + std::to_string(size) +
            " bytes, its 16-bit offsets reach 65,535: use fewer or smaller faces and pictures";
        f.measured = size;
        f.required = static_cast<double>(greatest_image);
        f.unit = "bytes";
        building.findings.push_back(f);
    }
    if (tables.tone_table().size() > 255) {
        Finding f;
        f.rule = "tone-count";
        f.message = "keys and lamps use " + std::to_string(tables.tone_table().size()) +
                    " different tones, an image has at most 255: share looks";
        building.findings.push_back(f);
    }
    built.bytes = out.take();
    place_findings(layout, building.findings);
    if (building.findings.empty()) building.image = std::move(built);
    return building;
}

}  // namespace dialplate
