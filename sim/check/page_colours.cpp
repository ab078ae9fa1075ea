#include "sim/check/page_colours.hpp"

#include "sim/check/contrast.hpp"

#include <algorithm>
#include <cstdio>

namespace dialplate {

namespace {

void add(
    std::vector<ShownText>& texts, const char* part, FaceId face, PaintId ink, PaintId ground) {
    texts.push_back({.part = part, .face = face, .ink = ink, .ground = ground});
}

const Paint& paint_of(const Layout& layout, PaintId paint) {
    return layout.paints.at(static_cast<std::size_t>(paint));
}

}  // namespace

std::vector<ShownText> texts_of(const Item& item, const Layout& layout) {
    std::vector<ShownText> texts;
    switch (item.kind) {
        case ItemKind::readout: {
            const Readout& r = item.readout;
            add(texts, "its number", r.face, r.ink, r.ground);
            if (!r.unit.empty()) add(texts, "its unit", r.unit_face, r.unit_ink, r.ground);
            break;
        }
        case ItemKind::key: {
            const Key& k = item.key;
            if (k.text.empty()) break;
            const Look& look = layout.looks.at(static_cast<std::size_t>(k.look));
            add(texts, "its text", k.face, look.idle.ink, look.idle.fill);
            add(texts, "its text when pressed", k.face, look.pressed.ink, look.pressed.fill);
            if (k.active_value)
                add(texts, "its text when active", k.face, look.active.ink, look.active.fill);
            break;
        }
        case ItemKind::legend:
            if (!item.legend.text.empty())
                add(texts, "its text", item.legend.face, item.legend.ink, item.legend.ground);
            break;
        case ItemKind::lamp: {
            const Lamp& l = item.lamp;
            if (l.when && l.text.empty()) break;
            add(texts, l.when ? "its text when lit" : "its text", l.face, l.lit.ink, l.lit.fill);
            break;
        }
        case ItemKind::meter: {
            const Meter& m = item.meter;
            const bool words = std::any_of(
                m.marks.begin(), m.marks.end(), [](const MeterMark& k) { return !k.text.empty(); });
            if (words) add(texts, "its labels", m.face, m.mark_ink, m.ground);
            break;
        }
        case ItemKind::scale:
            add(texts, "its labels", item.scale.face, item.scale.label_ink, item.scale.ground);
            break;
        case ItemKind::picture:
        case ItemKind::frame:
            break;
    }
    return texts;
}

std::vector<ShownMark> marks_of(const Item& item) {
    switch (item.kind) {
        case ItemKind::meter: {
            const Meter& m = item.meter;
            std::vector<ShownMark> marks{{"its bar", m.ink, m.unlit}};
            if (m.over_from <= m.to) marks.push_back({"its bar above the limit", m.over, m.unlit});
            if (m.peak) marks.push_back({"its peak", m.peak_ink, m.unlit});
            if (!m.marks.empty() && m.tick > 0)
                marks.push_back({"its ticks", m.mark_ink, m.ground});
            return marks;
        }
        case ItemKind::scale:
            return {{"its ticks", item.scale.ink, item.scale.ground},
                    {"its pointer", item.scale.pointer_ink, item.scale.ground}};
        case ItemKind::picture:
            return {{"its shape", item.picture.ink, item.picture.ground}};
        default:
            return {};
    }
}

bool inside_line(const Box& inner, const Item& frame) {
    const int line = frame.frame.line;
    const Box& box = frame.box;
    return inner.x >= box.x + line && inner.y >= box.y + line &&
           inner.right() <= box.right() - line && inner.bottom() <= box.bottom() - line;
}

PaintId backdrop_of(const Item& item, const Page& page) {
    PaintId behind = page.ground;
    for (const Item& other : page.items) {
        if (&other == &item || other.kind != ItemKind::frame || !other.frame.fill) continue;
        if (inside_line(item.box, other)) behind = *other.frame.fill;
    }
    return behind;
}

std::uint16_t colour_in(const Layout& layout, PaintId paint, std::size_t palette) {
    const Paint& found = paint_of(layout, paint);
    if (palette == 0 || palette > found.others.size()) return found.rgb565;
    return found.others[palette - 1];
}

LeastContrast least_contrast(const Layout& layout, PaintId a, PaintId b) {
    LeastContrast least{.ratio = 22.0, .palette = 0};
    const std::size_t palettes = std::max<std::size_t>(1, layout.palettes.size());
    for (std::size_t palette = 0; palette < palettes; ++palette) {
        const double ratio =
            contrast_on_glass(colour_in(layout, a, palette), colour_in(layout, b, palette));
        if (ratio < least.ratio) least = {.ratio = ratio, .palette = palette};
    }
    return least;
}

std::string in_palette(const Layout& layout, std::size_t palette) {
    if (layout.palettes.size() < 2) return "";
    return " in palette \"" + layout.palettes[palette] + "\"";
}

std::string hex_colour(std::uint32_t rgb888) {
    char colour[16];
    std::snprintf(colour, sizeof colour, "#%06X", static_cast<unsigned>(rgb888));
    return colour;
}

std::string painted(const Layout& layout, PaintId paint, std::size_t palette) {
    return paint_of(layout, paint).name + " (" +
           hex_colour(expand_rgb565(colour_in(layout, paint, palette))) + ")";
}

}  // namespace dialplate
