#include "sim/commands/pictures_sheet.hpp"

#include "sim/image/picture_file.hpp"
#include "sim/layout/colour.hpp"
#include "sim/layout/reader.hpp"
#include "sim/prototype/prototype.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <tuple>
#include <vector>

namespace dialplate {
namespace {

constexpr int sheet_margin = 12, between = 14, under_label = 4;
constexpr int widest_side = 320, greatest_zoom = 4;  // of each of the two
constexpr std::uint32_t sheet_ground = 0x101418, label_ink = 0xFFB84D;
constexpr std::uint32_t white = 0xFFFFFF;

/// A picture before and after.
struct Pair {
    std::string label;
    Rgb888 file, glass;
};

std::string label_of(const Item& item, const BuiltImage& built) {
    const bool tones = !item.picture.tones.empty();
    const auto cost =
        std::find_if(built.pictures.begin(), built.pictures.end(), [&](const PictureCost& each) {
            return each.file == item.picture.file && each.tones == tones;
        });
    if (cost == built.pictures.end()) return item.picture.file;
    std::string label = cost->file + "  " + std::to_string(cost->width) + " x " +
                        std::to_string(cost->height) + " px, " +
                        (tones ? "four paints" : "two paints");
    for (const auto& [name, bytes] : {std::pair{"plain", cost->plain},
                                      std::pair{"runs", cost->runs},
                                      std::pair{"context", cost->context}}) {
        if (bytes.value == 0) continue;
        label += std::string(", ") + name + ' ' + std::to_string(bytes.value);
        if (cost->packing == name) label += '*';
    }
    return label + " bytes";
}

Rgb888 part_of_glass(const Prototype& prototype, const Box& box) {
    Rgb888 part(box.width, box.height, 0);
    const std::vector<std::uint16_t> glass = prototype.glass();
    for (int y = 0; y < box.height; ++y) {
        for (int x = 0; x < box.width; ++x) {
            const int at = (box.y + y) * prototype.layout().glass_width() + box.x + x;
            part.at(x, y) = expand_rgb565(glass[static_cast<std::size_t>(at)]);
        }
    }
    return part;
}

Rgb888 file_of(const Item& item, const Layout& layout) {
    const PictureFile file = read_picture(find_file(layout.directory, item.picture.file));
    if (!file.picture) return Rgb888(0, 0, 0);
    const bool tones = !item.picture.tones.empty();
    const auto first = static_cast<std::size_t>(item.picture.ground);
    Rgb888 picture(file.picture->width, file.picture->height, 0);
    picture.pixels =
        laid_over(*file.picture, tones ? expand_rgb565(layout.paints[first].rgb565) : white);
    return picture;
}

std::vector<Pair> pairs_of(const Loaded& loaded, int palette) {
    std::vector<Pair> pairs;
    std::set<std::tuple<std::string, PaintId, PaintId, std::vector<PaintId>>> seen;
    Prototype prototype(loaded.layout, loaded.built);
    prototype.use_palette(palette);
    for (std::size_t p = 0; p < loaded.layout.pages.size(); ++p) {
        for (const Item& item : loaded.layout.pages[p].items) {
            const Picture& picture = item.picture;
            const bool on_glass = item.box.right() <= loaded.layout.glass_width() &&
                                  item.box.bottom() <= loaded.layout.glass_height();
            if (item.kind != ItemKind::picture || !on_glass ||
                !seen.emplace(picture.file, picture.ink, picture.ground, picture.tones).second) {
                continue;
            }
            prototype.show_page(static_cast<int>(p));
            prototype.settle();
            const int zoom = std::clamp(widest_side / item.box.width, 1, greatest_zoom);
            pairs.push_back({label_of(item, loaded.built),
                             enlarged(file_of(item, loaded.layout), zoom),
                             enlarged(part_of_glass(prototype, item.box), zoom)});
        }
    }
    return pairs;
}

int draw_words(Rgb888* sheet, const RasterFace& face, const std::string& words, int x, int y) {
    for (const char c : words) {
        const auto glyph =
            std::find_if(face.glyphs.begin(), face.glyphs.end(), [c](const Glyph& each) {
                return each.code == static_cast<unsigned char>(c);
            });
        if (glyph == face.glyphs.end()) continue;
        for (int row = 0; sheet != nullptr && row < glyph->cell.height; ++row) {
            for (int column = 0; column < glyph->cell.width; ++column) {
                if (glyph->cell.ink(column, row)) sheet->at(x + column, y + row) = label_ink;
            }
        }
        x += glyph->cell.width;
    }
    return x;
}

void put(Rgb888& sheet, const Rgb888& part, int x, int y) {
    for (int row = 0; row < part.height; ++row) {
        for (int column = 0; column < part.width; ++column) {
            sheet.at(x + column, y + row) =
                part.pixels[static_cast<std::size_t>(row) * static_cast<std::size_t>(part.width) +
                            static_cast<std::size_t>(column)];
        }
    }
}

}  // namespace

Rgb888 draw_pictures(const Loaded& loaded, int palette, const RasterFace& labels) {
    const std::vector<Pair> pairs = pairs_of(loaded, palette);
    if (pairs.empty()) return Rgb888(0, 0, 0);
    int width = 0, height = sheet_margin;
    for (const Pair& pair : pairs) {
        width = std::max({width,
                          pair.file.width + between + pair.glass.width,
                          draw_words(nullptr, labels, pair.label, 0, 0)});
        height += labels.height + under_label + pair.glass.height + between;
    }
    Rgb888 sheet(width + 2 * sheet_margin, height - between + sheet_margin, sheet_ground);
    int y = sheet_margin;
    for (const Pair& pair : pairs) {
        draw_words(&sheet, labels, pair.label, sheet_margin, y);
        y += labels.height + under_label;
        put(sheet, pair.file, sheet_margin, y);
        put(sheet, pair.glass, sheet_margin + pair.file.width + between, y);
        y += pair.glass.height + between;
    }
    return sheet;
}

}  // namespace dialplate
