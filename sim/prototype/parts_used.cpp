#include "sim/prototype/parts_used.hpp"

#include "sim/image/arena.hpp"

namespace dialplate {
namespace {

constexpr const char* part_names[part_count] = {
    "readout", "box",         "meter",         "scale",        "picture", "plain", "runs",
    "segment", "enlarged",    "tuning_digit",  "sign",         "rounded", "words", "touch",
    "hold",    "pages",       "peak",          "blocks",       "upright", "tape",  "context",
    "smooth",  "tones_plain", "tones_context", "changed_runs",
};

void add_key(const Key& key, PartSet& parts) {
    const bool turns_page = key.tap.kind == ActionKind::page || key.hold.kind == ActionKind::page;
    parts.add(Part::box)
        .add(Part::touch)
        .add(Part::rounded, key.radius > 0)
        .add(Part::hold, key.repeat || key.hold.kind != ActionKind::none)
        .add(Part::pages, turns_page);
}

void add_item(const Item& item, const Layout& layout, PartSet& parts) {
    switch (item.kind) {
        case ItemKind::readout:
            parts.add(Part::readout)
                .add(Part::sign,
                     layout.values[static_cast<std::size_t>(item.readout.value)].min < 0);
            break;
        case ItemKind::key:
            add_key(item.key, parts);
            break;
        case ItemKind::lamp:
            parts.add(Part::box)
                .add(Part::rounded, item.lamp.radius > 0)
                .add(Part::words, !item.lamp.when.has_value());
            break;
        case ItemKind::meter:
            parts.add(Part::meter)
                .add(Part::blocks, item.meter.block > 0)
                .add(Part::upright, item.meter.upright);
            break;
        case ItemKind::scale:
            parts.add(Part::scale).add(Part::tape, item.scale.tape);
            break;
        case ItemKind::picture:
            parts.add(Part::picture);
            break;
        case ItemKind::legend:  // what never changes is fills and texts of the page, always there
        case ItemKind::frame:
            break;
    }
}

void add_packing(const std::string& packing, bool tones, PartSet& parts) {
    parts.add(tones ? Part::tones_plain : Part::plain, packing == "plain")
        .add(Part::runs, packing == "runs")
        .add(tones ? Part::tones_context : Part::context, packing == "context")
        .add(Part::segment, packing == "segment");
}

}  // namespace

const char* name_of(Part part) {
    return part_names[static_cast<unsigned>(part)];
}

PartSet packings_of_faces(const Layout& layout, const BuiltImage& built) {
    PartSet packings;
    for (const FaceCost& face : built.faces)
        add_packing(
            face.packing, layout.faces[static_cast<std::size_t>(face.face)].smooth, packings);
    return packings;
}

PartSet packings_of_pictures(const BuiltImage& built) {
    PartSet packings;
    for (const PictureCost& picture : built.pictures)
        add_packing(picture.packing, picture.tones, packings);
    return packings;
}

PartSet parts_used(const Layout& layout, const BuiltImage& built) {
    PartSet parts;
    const ShownParts shown = shown_parts(layout);
    parts.add(Part::tuning_digit, shown.tuning_digit).add(Part::peak, shown.peak);
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            add_item(item, layout, parts);
        }
    }
    for (const FaceCost& face : built.faces) {
        const Face& its = layout.faces[static_cast<std::size_t>(face.face)];
        parts.add(Part::enlarged, its.scale > 1).add(Part::smooth, its.smooth);
        parts.add(Part::changed_runs, face.changed_runs);
    }
    parts.bits |= packings_of_faces(layout, built).bits | packings_of_pictures(built).bits;
    return parts;
}

}  // namespace dialplate
