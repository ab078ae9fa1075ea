#include "sim/fit/options.hpp"

#include "fonts/face.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/visual_angle.hpp"
#include "sim/image/build.hpp"

#include <algorithm>
#include <limits>

namespace dialplate {
namespace {

bool kept(FaceId face, const FitWish& wish) {
    return std::find(wish.keep.begin(), wish.keep.end(), face) != wish.keep.end();
}

bool may_change(const Layout& layout, FaceId face, const FitWish& wish) {
    return layout.faces[static_cast<std::size_t>(face)].latitude && !kept(face, wish);
}

std::vector<FaceChoice> choices_for(const Face& face) {
    const Latitude& latitude = *face.latitude;
    std::vector<std::string> files = {face.file};
    for (const std::string& file : latitude.files)
        if (std::find(files.begin(), files.end(), file) == files.end()) files.push_back(file);
    std::vector<bool> manners = {face.smooth};
    if (latitude.smooth && face.scale == 1) manners.push_back(!face.smooth);
    std::vector<FaceChoice> choices;
    for (const bool smooth : manners) {
        for (const std::string& file : files) {
            choices.push_back({file, face.size, smooth});
            for (int size = latitude.least_size; size != 0 && size <= latitude.greatest_size;
                 ++size)
                if (size != face.size) choices.push_back({file, size, smooth});
        }
    }
    return choices;
}

// Every other face that may change as small as it may be.
std::vector<FaceChoice> smallest_faces(const Layout& layout, const FitWish& wish) {
    std::vector<FaceChoice> faces = faces_of(layout);
    for (std::size_t i = 0; i < faces.size(); ++i) {
        const Face& face = layout.faces[i];
        if (may_change(layout, static_cast<FaceId>(i), wish) && face.latitude->least_size != 0)
            faces[i].size = std::min(face.size, face.latitude->least_size);
    }
    return faces;
}

bool has_room(const BuiltImage& built, FaceId face) {
    return std::none_of(
        built.texts_shown.begin(), built.texts_shown.end(), [face](const TextExtent& text) {
            return text.face == face &&
                   (text.width > text.room_width || text.height > text.room_height);
        });
}

// In each packing, without decoder and table; of `context` with a table of its own.
void weigh(FaceOption& option, const Face& face, const BuiltImage& built, FaceId id) {
    const auto cost = std::find_if(built.faces.begin(),
                                   built.faces.end(),
                                   [id](const FaceCost& each) { return each.face == id; });
    const RasterFace& raster = built.rasters[static_cast<std::size_t>(id)];
    if (face.kind == FaceKind::segment || cost == built.faces.end()) {
        option.least.fill(cost == built.faces.end() ? 0 : cost->bytes.value);
        return;
    }
    std::vector<const Bitmap*> cells;
    for (const Glyph& glyph : raster.glyphs)
        cells.push_back(&glyph.cell);
    const ContextTable table = train_contexts(cells);
    RasterFace ordered = raster;
    order_for_contexts(ordered, true, table);
    const auto size = [](const PackedFace& packed) {
        return static_cast<std::int64_t>(packed.bytes.size());
    };
    struct Packed {
        unsigned bit;
        PackingWish wish;
        std::int64_t bytes;
    };
    const Packed all[] = {
        {packing_bit::plain, PackingWish::plain, size(pack(raster, Packing::plain, face.scale))},
        {packing_bit::runs, PackingWish::runs, size(pack(raster, Packing::runs, face.scale))},
        {packing_bit::context,
         PackingWish::context,
         size(pack_context(ordered, table, face.scale))}};
    for (unsigned set = 0; set < option.least.size(); ++set) {
        for (const Packed& packed : all) {
            const bool may = face.packing == PackingWish::automatic || face.packing == packed.wish;
            if ((set & packed.bit) == 0 || !may || packed.bytes == 0) continue;
            option.least[set] = std::min(option.least[set].value_or(packed.bytes), packed.bytes);
        }
    }
}

}  // namespace

std::vector<FaceChoice> faces_of(const Layout& layout) {
    std::vector<FaceChoice> faces;
    for (const Face& face : layout.faces)
        faces.push_back({face.file, face.size, face.smooth});
    return faces;
}

Layout with_faces(const Layout& layout, const std::vector<FaceChoice>& faces, const FitWish& wish) {
    Layout changed = layout;
    for (std::size_t i = 0; i < faces.size(); ++i) {
        Face& face = changed.faces[i];
        face.file = faces[i].file;
        face.size = faces[i].size;
        face.smooth = faces[i].smooth;
        if (!kept(static_cast<FaceId>(i), wish)) face.packing = PackingWish::automatic;
    }
    return changed;
}

ArcMinutes required_angle(const Layout& layout) {
    return ArcMinutes{figure(layout, rule::character_height, "least_arcmin")};
}

std::vector<FaceOption> options_for(const Layout& layout, FaceId face, const FitWish& wish) {
    const auto at = static_cast<std::size_t>(face);
    const bool changes = may_change(layout, face, wish);
    const Millimetres pitch = foreshortened(layout.pitch_y(), layout.viewing.tilt);
    std::vector<FaceOption> options;
    const std::vector<FaceChoice> own = {faces_of(layout)[at]};
    for (const FaceChoice& choice : changes ? choices_for(layout.faces[at]) : own) {
        std::vector<FaceChoice> faces = smallest_faces(layout, wish);
        faces[at] = choice;
        Layout changed = with_faces(layout, faces, wish);
        Building building = build_image(changed);
        if (!building.image) {  // perhaps another face cannot be had so small
            faces = faces_of(layout);
            faces[at] = choice;
            changed = with_faces(layout, faces, wish);
            building = build_image(changed);
        }
        if (!building.image || (changes && !has_room(*building.image, face))) continue;
        FaceOption option{.choice = choice,
                          .angle = std::nullopt,
                          .margin = std::numeric_limits<double>::infinity()};
        for (const FaceMeasure& measure : building.image->measures) {
            if (measure.face != face || measure.capital.value_or(0) <= 0 || pitch.value <= 0)
                continue;
            option.angle = visual_angle(
                {.height = pitch * *measure.capital, .distance = layout.viewing.distance});
            option.margin = option.angle->value / required_angle(layout).value;
        }
        weigh(option, changed.faces[at], *building.image, face);
        options.push_back(std::move(option));
    }
    std::stable_sort(options.begin(), options.end(), [](const FaceOption& a, const FaceOption& b) {
        return a.margin < b.margin;
    });
    return options;
}

}  // namespace dialplate
