#include "sim/image/face_set.hpp"

#include "fonts/ink_box.hpp"
#include "fonts/measure.hpp"
#include "sim/image/decoder_sizes.hpp"
#include "sim/image/digit_time.hpp"
#include "sim/image/lettering.hpp"
#include "sim/image/packing_in_time.hpp"
#include "sim/layout/reader.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <filesystem>

namespace dialplate {

std::u32string digits_between(std::int64_t low, std::int64_t high, int drop) {
    std::int64_t unit = 1;
    for (int i = 0; i < drop; ++i)
        unit *= 10;
    const std::int64_t a = std::min(std::abs(low), std::abs(high)) / unit;
    const std::int64_t b = std::max(std::abs(low), std::abs(high)) / unit;
    int greatest = 0;
    const bool all = b - a >= 9 || (low < 0 && high > 0);
    for (std::int64_t n = a; n <= b && !all; ++n) {
        for (std::int64_t rest = n; rest != 0; rest /= 10) {
            greatest = std::max(greatest, static_cast<int>(rest % 10));
        }
    }
    if (all) greatest = b >= 9 || a >= 9 ? 9 : static_cast<int>(b);
    std::u32string digits;
    for (int d = 0; d <= greatest; ++d)
        digits.push_back(U'0' + static_cast<char32_t>(d));
    return digits;
}

std::vector<ScaleLabel> scale_labels(const Item& item) {
    const Scale& s = item.scale;
    std::vector<ScaleLabel> labels;
    const std::int64_t major = s.major / s.per_pixel, first = s.from / s.per_pixel;
    for (int x = 0; x < item.box.width; ++x) {
        if ((first + x) % major != 0) continue;
        const std::int64_t number = (first + x) * s.per_pixel / s.divide;
        std::string digits = std::to_string(std::abs(number));
        if (s.decimals > 0) {
            const auto decimals = static_cast<std::size_t>(s.decimals);
            if (digits.size() <= decimals) digits.insert(0, decimals + 1 - digits.size(), '0');
            digits.insert(digits.size() - decimals, ".");
        }
        if (number < 0) digits.insert(0, "-");
        labels.push_back({x, code_points(digits)});
    }
    return labels;
}

namespace {

/// A cell with so many columns of ground more to its right.
Bitmap widened(const Bitmap& cell, int columns) {
    if (columns == 0) return cell;
    Bitmap wide{cell.width + columns, cell.height, {}, cell.tones};
    for (int y = 0; y < cell.height; ++y) {
        for (int x = 0; x < wide.width; ++x)
            wide.pixels.push_back(x < cell.width ? cell.at(x, y) : std::uint8_t{0});
    }
    return wide;
}

}  // namespace

FaceSet::FaceSet(const Layout& layout) : layout_(layout), prepared_(layout.faces.size()) {}

void FaceSet::wish(FaceId face, const std::u32string& text, const std::string& pointer) {
    for (const char32_t code : text) {
        if (prepared_[static_cast<std::size_t>(face)].codes.insert(code).second) {
            wishes_.push_back({face, code, pointer});
        }
    }
}

// What an item can show: nothing else is stored.
void FaceSet::collect(const Item& item) {
    const auto words = [&](FaceId face, const std::string& text, const char* member) {
        for (const std::u32string& line : lines_of(text))
            wish(face, line, item.pointer + member);
    };
    switch (item.kind) {
        case ItemKind::readout: {
            const Readout& r = item.readout;
            const Value& value = layout_.values[static_cast<std::size_t>(r.value)];
            wish(r.face, digits_between(value.min, value.max, r.drop), item.pointer + "/face");
            words(r.face, r.groups.size() > 1 ? r.separator : "", "/separator");
            if (value.min < 0) wish(r.face, U"-", item.pointer + "/face");
            words(r.unit_face, r.unit, "/unit/text");
            prepared_[static_cast<std::size_t>(r.face)].even_digits = true;
            Prepared& figures = prepared_[static_cast<std::size_t>(r.face)];
            figures.counted_digits = true;
            if (r.within) figures.within = std::min(*r.within, figures.within.value_or(*r.within));
            break;
        }
        case ItemKind::key:
            words(item.key.face, item.key.text, "/text");
            break;
        case ItemKind::legend:
            words(item.legend.face, item.legend.text, "/text");
            break;
        case ItemKind::lamp:
            if (item.lamp.when) {
                words(item.lamp.face, item.lamp.text, "/text");
            } else {
                for (const Choice& c :
                     layout_.values[static_cast<std::size_t>(item.lamp.value)].choices) {
                    words(item.lamp.face, c.text, "/face");
                }
            }
            break;
        case ItemKind::meter:
            for (const MeterMark& m : item.meter.marks)
                wish(item.meter.face, code_points(m.text), m.pointer + "/text");
            break;
        case ItemKind::scale: {
            const Scale& s = item.scale;
            if (s.tape) {
                prepared_[static_cast<std::size_t>(s.face)].counted_digits = true;
                const Value& value = layout_.values[static_cast<std::size_t>(s.value)];
                wish(s.face, U"0123456789", item.pointer + "/face");
                if (s.decimals > 0) wish(s.face, U".", item.pointer + "/face");
                const std::int64_t margin =
                    static_cast<std::int64_t>(item.box.width) / 2 * s.per_pixel;
                if (value.min - margin < 0) wish(s.face, U"-", item.pointer + "/face");
            } else {
                for (const ScaleLabel& label : scale_labels(item))
                    wish(s.face, label.text, item.pointer + "/face");
            }
            break;
        }
        case ItemKind::picture:
        case ItemKind::frame:
            break;
    }
}

void FaceSet::prepare(std::vector<Finding>& findings, const std::vector<PictureToPack>& pictures) {
    for (const Page& page : layout_.pages) {
        for (const Item& item : page.items)
            collect(item);
    }
    for (std::size_t i = 0; i < prepared_.size(); ++i) {
        if (!prepared_[i].codes.empty()) rasterise_face(static_cast<FaceId>(i), findings);
    }
    pack_all(pictures);
    // One finding for each item and face, with all that it misses.
    std::map<std::pair<std::string, FaceId>, std::string> missing;
    for (const GlyphWish& w : wishes_) {
        if (usable(w.face) && !has(w.face, w.code)) {
            std::string& text = missing[{w.pointer, w.face}];
            text += (text.empty() ? "" : ", ") + ("\"" + utf8(w.code) + "\"");
        }
    }
    for (const auto& [where, characters] : missing) {
        const Face& face = layout_.faces[static_cast<std::size_t>(where.second)];
        Finding f;
        f.rule = "missing-glyph";
        f.pointer = where.first;
        f.message = "face \"" + face.name + "\" has no " + characters +
                    (face.kind == FaceKind::segment
                         ? "; a segment face has the digits, \"-\", \".\" and \":\""
                         : "; choose other words or another font than " + face.file);
        findings.push_back(f);
    }
}

void FaceSet::rasterise_face(FaceId id, std::vector<Finding>& findings) {
    const Face& face = layout_.faces[static_cast<std::size_t>(id)];
    Prepared& p = prepared_[static_cast<std::size_t>(id)];
    if (face.kind == FaceKind::segment) {
        p.height = p.ascent = p.capital = face.segment_height * face.scale;
        p.digit_advance = (face.segment_width + face.segment_gap) * face.scale;
        p.usable = true;
        return;
    }
    const auto fail = [&](const std::string& member, const std::string& message) {
        Finding f;
        f.rule = "font-file";
        f.pointer = face.pointer + member;
        f.message = message;
        findings.push_back(f);
    };
    const std::string path = find_file(layout_.directory, face.file);
    if (path.empty()) {
        fail("/file",
             "font file \"" + face.file +
                 "\" is not there; looked beside the layout, in the project's fonts and where the "
                 "system keeps fonts");
        return;
    }
    FaceResult result = rasterise({.file = path,
                                   .size = face.size,
                                   .characters = std::u32string(p.codes.begin(), p.codes.end()),
                                   .even_digits = p.even_digits,
                                   .smooth = face.smooth});
    if (!result.face) {
        fail("/file", result.error);
        return;
    }
    p.raster = std::move(*result.face);
    for (Glyph& glyph : p.raster.glyphs)
        glyph.cell = widened(glyph.cell, face.spacing);
    p.height = p.raster.height * face.scale;
    p.ascent = p.raster.ascent * face.scale;
    p.capital = capital_height(p.raster).value_or(p.raster.height) * face.scale;
    for (const Glyph& g : p.raster.glyphs) {
        if (g.code >= U'0' && g.code <= U'9')
            p.digit_advance = std::max(p.digit_advance, g.cell.width * face.scale);
    }
    p.usable = !p.raster.glyphs.empty();
}

int FaceSet::index(FaceId face, char32_t code) const {
    if (layout_.faces[static_cast<std::size_t>(face)].kind == FaceKind::segment) {
        return code >= U'0' && code <= U'9' ? static_cast<int>(code - U'0')
               : code == U'.'               ? segment_glyph::point
               : code == U':'               ? segment_glyph::colon
                                            : segment_glyph::minus;
    }
    const auto& glyphs = prepared(face).raster.glyphs;
    const auto it = std::find_if(
        glyphs.begin(), glyphs.end(), [code](const Glyph& g) { return g.code == code; });
    return it != glyphs.end() ? static_cast<int>(it - glyphs.begin()) : 0;
}

bool FaceSet::has(FaceId face, char32_t code) const {
    if (layout_.faces[static_cast<std::size_t>(face)].kind == FaceKind::segment) {
        return (code >= U'0' && code <= U'9') || code == U'.' || code == U':' || code == U'-';
    }
    const auto& glyphs = prepared(face).raster.glyphs;
    return std::any_of(
        glyphs.begin(), glyphs.end(), [&](const Glyph& g) { return g.code == code; });
}

int FaceSet::advance(FaceId id, char32_t code) const {
    const Face& face = layout_.faces[static_cast<std::size_t>(id)];
    if (face.kind == FaceKind::segment) {
        const bool dot = code == U'.' || code == U':';
        return ((dot ? face.segment_stroke : face.segment_width) + face.segment_gap) * face.scale;
    }
    if (prepared(id).raster.glyphs.empty()) return 0;
    return prepared(id).raster.glyphs[static_cast<std::size_t>(index(id, code))].cell.width *
           face.scale;
}

int FaceSet::width(FaceId face, const std::u32string& text) const {
    int width = 0;
    for (const char32_t code : text)
        width += advance(face, code);
    return width;
}

int FaceSet::spacing(FaceId id) const {
    const Face& face = layout_.faces[static_cast<std::size_t>(id)];
    return face.spacing * face.scale;
}

int FaceSet::line_pitch(FaceId face, int lines, int room) const {
    const int capital = prepared(face).capital, height = prepared(face).height;
    const int least = height + std::max(1, capital / 3);
    if (lines < 2) return least;
    const int wanted = std::max(least, capital + (capital + 1) / 2);
    return std::clamp((room - height) / (lines - 1), least, wanted);
}

/// Only where the author asks for a time that whole digits do not meet: changed runs take flash of their own.
void FaceSet::choose_changed_runs(FaceId face, Packed& packed) const {
    if (!prepared(face).within || packed.bytes.empty() ||
        layout_.faces[static_cast<std::size_t>(face)].smooth) {
        return;
    }
    int digits = 0;
    while (digits < 10 && has(face, U'0' + static_cast<char32_t>(digits))) {
        ++digits;
    }
    for (const Glyph& glyph : prepared(face).raster.glyphs) {
        const bool digit = glyph.code >= U'0' && glyph.code <= U'9';
        if (digit && fonts::most_strokes_in_a_row(glyph.cell) > most_digit_strokes) return;
    }
    const StoredDigits stored{packed.bytes, index(face, U'0'), digits};
    const double most_cycles = prepared(face).within->value * layout_.clock.value / 1000.0;
    const bool in_time = median_change(stored, pixel_times(layout_), false) <= most_cycles;
    if (digits == 0 || in_time || !changed_runs_pay(stored)) return;
    packed.bytes[face::enlarged] |= face::changed_runs;
    packed.changed_runs = true;
}

void FaceSet::pack_all(const std::vector<PictureToPack>& pictures) {
    static constexpr const char* names[] = {"plain", "runs", "context"};
    packed_.faces.resize(prepared_.size());
    std::vector<FaceToPack> wanted;
    std::vector<std::size_t> ids;
    std::vector<std::optional<double>> most_cycles;
    for (std::size_t i = 0; i < prepared_.size(); ++i) {
        const Prepared& p = prepared_[i];
        const Face& face = layout_.faces[i];
        Packed& packed = packed_.faces[i];
        if (!p.usable) continue;
        if (face.kind == FaceKind::segment) {
            for (const int b : {static_cast<int>(packing::segment),
                                face.segment_height,
                                face.scale,
                                13,
                                face.segment_width,
                                face.segment_stroke,
                                face.segment_gap}) {
                packed.bytes.push_back(static_cast<std::uint8_t>(b));
            }
            packed.packing = "segment";
            packed.glyphs = static_cast<int>(p.codes.size());
            continue;
        }
        wanted.push_back({&p.raster, face.packing, face.scale, p.counted_digits});
        ids.push_back(i);
        most_cycles.push_back(p.within && !face.smooth
                                  ? std::optional(p.within->value * layout_.clock.value / 1000.0)
                                  : std::nullopt);
    }
    const bool decides_and_sends =
        sends_contexts(layout_.bus.kind, layout_.display.bytes_per_pixel);
    PackingChoices choices = choose_packings_in_time(wanted,
                                                     most_cycles,
                                                     pixel_times(layout_),
                                                     {.decides_and_sends = decides_and_sends},
                                                     pictures);
    const auto taken = [](PackingChoice& choice, std::size_t glyphs) {
        return Packed{std::move(choice.face.bytes),
                      names[static_cast<std::size_t>(choice.face.packing)],
                      choice.plain,
                      choice.runs,
                      choice.context,
                      static_cast<int>(glyphs)};
    };
    for (std::size_t i = 0; i < ids.size(); ++i) {
        PackingChoice& choice = choices.faces[i];
        std::vector<Glyph>& glyphs = prepared_[ids[i]].raster.glyphs;
        packed_.faces[ids[i]] = taken(choice, glyphs.size());
        // Texts name glyphs by their number.
        std::vector<Glyph> ordered;
        for (const char32_t code : choice.order) {
            ordered.push_back(std::move(*std::find_if(
                glyphs.begin(), glyphs.end(), [code](const Glyph& g) { return g.code == code; })));
        }
        if (!ordered.empty()) glyphs = std::move(ordered);
    }
    for (PackingChoice& choice : choices.pictures)
        packed_.pictures.push_back(taken(choice, 0));
    if (choices.contexts)
        packed_.contexts.assign(choices.contexts->begin(),
                                choices.contexts->begin() + choices.table_bytes);
    for (std::size_t i = 0; i < prepared_.size(); ++i) {
        choose_changed_runs(static_cast<FaceId>(i), packed_.faces[i]);
    }
}

}  // namespace dialplate
