#include "sim/commands/faces_sheet.hpp"

#include <algorithm>

namespace dialplate {
namespace {

constexpr int margin = 12;
constexpr int most_width = 640;
constexpr int under_label = 4;
constexpr int between_rows = 2;
constexpr int between_samples = 14;

constexpr std::uint32_t ground = 0x101418;
constexpr std::uint32_t cell_ground = 0x181E24;  // shows where a cell begins and ends
constexpr std::uint32_t ink = 0xF2EFE6;
constexpr std::uint32_t label_ink = 0xFFB84D;

/// Where the glyphs of a face go, relative to its first cell.
struct Flow {
    struct Spot {
        int x, y;
    };
    std::vector<Spot> spots;
    int width = 0;
    int height = 0;
};

Flow flow_of(const RasterFace& face, int enlarged) {
    Flow flow;
    int x = 0;
    int y = 0;
    for (const Glyph& glyph : face.glyphs) {
        if (x > 0 && x + glyph.cell.width * enlarged > most_width) {
            x = 0;
            y += face.height * enlarged + between_rows;
        }
        flow.spots.push_back({x, y});
        x += glyph.cell.width * enlarged;
        flow.width = std::max(flow.width, x);
        flow.height = y + face.height * enlarged;
    }
    return flow;
}

const Glyph* glyph_of(const RasterFace& face, char32_t code) {
    const auto found = std::find_if(
        face.glyphs.begin(), face.glyphs.end(), [code](const Glyph& g) { return g.code == code; });
    return found == face.glyphs.end() ? nullptr : &*found;
}

struct CellInk {
    std::uint32_t ink, ground;
    int enlarged = 1;
};

void draw_cell(Rgb888& sheet, const Bitmap& cell, Flow::Spot at, const CellInk& in) {
    for (int y = 0; y < cell.height * in.enlarged; ++y) {
        for (int x = 0; x < cell.width * in.enlarged; ++x) {
            sheet.at(at.x + x, at.y + y) =
                cell.ink(x / in.enlarged, y / in.enlarged) ? in.ink : in.ground;
        }
    }
}

int words_width(const RasterFace& face, const std::string& words) {
    int width = 0;
    for (const char c : words) {
        const Glyph* glyph = glyph_of(face, static_cast<unsigned char>(c));
        width += glyph == nullptr ? 0 : glyph->cell.width;
    }
    return width;
}

}  // namespace

Rgb888 draw_sheet(const std::vector<FaceSample>& samples, const RasterFace& labels) {
    int width = 0;
    int height = margin;
    std::vector<Flow> flows;
    for (const FaceSample& sample : samples) {
        flows.push_back(flow_of(sample.face, sample.enlarged));
        width = std::max({width, flows.back().width, words_width(labels, sample.label)});
        height += labels.height + under_label + flows.back().height + between_samples;
    }
    Rgb888 sheet(width + 2 * margin, height - between_samples + margin, ground);
    int y = margin;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        int x = margin;
        for (const char c : samples[i].label) {
            if (const Glyph* glyph = glyph_of(labels, static_cast<unsigned char>(c))) {
                draw_cell(sheet, glyph->cell, {x, y}, {label_ink, ground});
                x += glyph->cell.width;
            }
        }
        y += labels.height + under_label;
        const RasterFace& face = samples[i].face;
        for (std::size_t g = 0; g < face.glyphs.size(); ++g) {
            const Flow::Spot spot = flows[i].spots[g];
            draw_cell(sheet,
                      face.glyphs[g].cell,
                      {margin + spot.x, y + spot.y},
                      {ink, g % 2 == 0 ? cell_ground : ground, samples[i].enlarged});
        }
        y += flows[i].height + between_samples;
    }
    return sheet;
}

}  // namespace dialplate
