#include "sim/commands/faces_sheet.hpp"

#include "sim/check/wording.hpp"
#include "sim/commands/faces_report.hpp"

#include <algorithm>
#include <filesystem>
#include <string>

namespace dialplate {
namespace {

constexpr int margin = 12;
constexpr int most_width = 640;
constexpr int under_line = 4;
constexpr int under_labels = 8;
constexpr int between_rows = 2;
constexpr int between_samples = 22;
constexpr int packing_column = 160;  // of a packing's figures

constexpr std::uint32_t ground = 0x101418;
constexpr std::uint32_t cell_ground = 0x181E24;  // shows where a cell begins and ends
constexpr std::uint32_t ink = 0xF2EFE6;
constexpr std::uint32_t title_ink = 0xFFB84D;
constexpr std::uint32_t figure_ink = 0x9AA4AE;
constexpr std::uint32_t smallest_ink = 0x7FD67F;
constexpr std::uint32_t rule_ink = 0x2A323A;

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

/// A tone of four on its way from ground to ink, in coded values as the engine mixes them.
std::uint32_t mixed(const CellInk& in, int tone) {
    constexpr int most = 3;
    std::uint32_t colour = 0;
    for (const int shift : {16, 8, 0}) {
        const int from = static_cast<int>(in.ground >> shift & 255U);
        const int to = static_cast<int>(in.ink >> shift & 255U);
        colour |= static_cast<std::uint32_t>(from + (to - from) * tone / most) << shift;
    }
    return colour;
}

void draw_cell(Rgb888& sheet, const Bitmap& cell, Flow::Spot at, const CellInk& in) {
    for (int y = 0; y < cell.height * in.enlarged; ++y) {
        for (int x = 0; x < cell.width * in.enlarged; ++x) {
            const int tone = cell.at(x / in.enlarged, y / in.enlarged);
            sheet.at(at.x + x, at.y + y) = mixed(in, cell.tones ? tone : 3 * tone);
        }
    }
}

void write_words(Rgb888& sheet,
                 const RasterFace& labels,
                 const std::string& words,
                 Flow::Spot at,
                 std::uint32_t colour) {
    for (const char c : words) {
        const Glyph* glyph = glyph_of(labels, static_cast<unsigned char>(c));
        if (glyph == nullptr || at.x + glyph->cell.width > sheet.width) continue;
        draw_cell(sheet, glyph->cell, at, {colour, ground});
        at.x += glyph->cell.width;
    }
}

int words_width(const RasterFace& labels, const std::string& words) {
    int width = 0;
    for (const char c : words) {
        const Glyph* glyph = glyph_of(labels, static_cast<unsigned char>(c));
        width += glyph == nullptr ? 0 : glyph->cell.width;
    }
    return width;
}

std::string title_of(const WeighedFace& face) {
    return std::filesystem::path(face.file).filename().string() + "  " + std::to_string(face.size) +
           " px" + enlargement_words(face) + (face.face.smooth ? ", smoothed" : "");
}

std::string angle_of(const WeighedFace& face) {
    return face.angle ? number(face.angle->value, 1) + "'" : "";
}

std::string figures_of(const char* packing, const PackedWeight& packed) {
    if (packed.bytes == 0) return std::string{packing} + "  -";
    return std::string{packing} + "  " + std::to_string(packed.bytes) + " bytes" +
           (packed.digit ? "  " + number(packed.digit->value, 1) + " ms" : "");
}

}  // namespace

Rgb888 draw_sheet(const std::vector<WeighedFace>& faces, const RasterFace& labels) {
    static constexpr const char* packings[] = {"plain", "runs", "context"};
    const int above = 2 * labels.height + under_line + under_labels;
    int width = 3 * packing_column;
    int height = margin;
    std::vector<Flow> flows;
    for (const WeighedFace& face : faces) {
        flows.push_back(flow_of(face.face, face.enlarged));
        width = std::max({width,
                          flows.back().width,
                          words_width(labels, title_of(face) + "    " + angle_of(face))});
        height += above + flows.back().height + between_samples;
    }
    Rgb888 sheet(width + 2 * margin, height - between_samples + margin, ground);
    int y = margin;
    for (std::size_t i = 0; i < faces.size(); ++i) {
        const WeighedFace& face = faces[i];
        if (i > 0) {
            for (int x = margin; x < margin + width; ++x)
                sheet.at(x, y - between_samples / 2) = rule_ink;
        }
        write_words(sheet, labels, title_of(face), {margin, y}, title_ink);
        const std::string angle = angle_of(face);
        write_words(
            sheet, labels, angle, {margin + width - words_width(labels, angle), y}, title_ink);
        y += labels.height + under_line;
        for (std::size_t p = 0; p < face.packings.size(); ++p) {
            const PackedWeight& packed = face.packings[p];
            write_words(
                sheet,
                labels,
                figures_of(packings[p], packed),
                {margin + static_cast<int>(p) * packing_column, y},
                packed.bytes != 0 && packed.bytes == face.smallest() ? smallest_ink : figure_ink);
        }
        y += labels.height + under_labels;
        for (std::size_t g = 0; g < face.face.glyphs.size(); ++g) {
            const Flow::Spot spot = flows[i].spots[g];
            draw_cell(sheet,
                      face.face.glyphs[g].cell,
                      {margin + spot.x, y + spot.y},
                      {ink, g % 2 == 0 ? cell_ground : ground, face.enlarged});
        }
        y += flows[i].height + between_samples;
    }
    return sheet;
}

}  // namespace dialplate
