#include "sim/check/letterforms.hpp"

#include "fonts/measure.hpp"

#include <algorithm>
#include <utility>

namespace dialplate {

namespace {

bool is_digit(char32_t c) {
    return c >= U'0' && c <= U'9';
}
bool is_capital(char32_t c) {
    return c >= U'A' && c <= U'Z';
}
bool is_small(char32_t c) {
    return c >= U'a' && c <= U'z';
}

/// A glyph's ink, and where it lies in its cell.
class Ink {
public:
    /// @param least  A pixel of this value or more is ink: tones count from half of full on.
    Ink(const Bitmap& cell, int least) : cell_(cell), least_(least) {
        left_ = cell.width;
        top_ = cell.height;
        for (int y = 0; y < cell.height; ++y) {
            for (int x = 0; x < cell.width; ++x) {
                if (!at(x, y)) continue;
                left_ = std::min(left_, x);
                right_ = std::max(right_, x + 1);
                top_ = std::min(top_, y);
                bottom_ = std::max(bottom_, y + 1);
            }
        }
    }

    [[nodiscard]] bool at(int x, int y) const {
        if (x < 0 || y < 0 || x >= cell_.width || y >= cell_.height) return false;
        const auto index = static_cast<std::size_t>(y) * static_cast<std::size_t>(cell_.width) +
                           static_cast<std::size_t>(x);
        return cell_.pixels[index] >= least_;
    }
    [[nodiscard]] bool empty() const { return right_ <= left_; }
    [[nodiscard]] int left() const { return left_; }
    [[nodiscard]] int width() const { return right_ - left_; }
    [[nodiscard]] int height() const { return bottom_ - top_; }
    [[nodiscard]] int blank_right() const { return cell_.width - right_; }
    [[nodiscard]] int cell_width() const { return cell_.width; }
    [[nodiscard]] int cell_height() const { return cell_.height; }

private:
    const Bitmap& cell_;
    int least_;
    int left_ = 0, right_ = 0, top_ = 0, bottom_ = 0;
};

std::optional<double> median(std::vector<int> numbers) {
    if (numbers.empty()) return std::nullopt;
    std::sort(numbers.begin(), numbers.end());
    const std::size_t middle = numbers.size() / 2;
    if (numbers.size() % 2 == 1) return numbers[middle];
    return (numbers[middle - 1] + numbers[middle]) / 2.0;
}

/// Side of the largest square of pixels in which two glyphs differ, the second moved by `shift` pixels.
int largest_difference(const Ink& a, const Ink& b, int shift) {
    const int columns = std::max(a.cell_width(), b.cell_width()) + std::abs(shift);
    const int rows = std::max(a.cell_height(), b.cell_height());
    std::vector<int> above(static_cast<std::size_t>(columns) + 1, 0);
    int largest = 0;
    for (int y = 0; y < rows; ++y) {
        int corner = 0;  // of the square that ends up and left of here
        for (int x = 0; x < columns; ++x) {
            int& here = above[static_cast<std::size_t>(x) + 1];
            const int before = above[static_cast<std::size_t>(x)];
            const int up = here;
            here = a.at(x, y) == b.at(x - shift, y) ? 0 : std::min({before, up, corner}) + 1;
            corner = up;
            largest = std::max(largest, here);
        }
    }
    return largest;
}

int detail_between(const Ink& a, const Ink& b) {
    const int level = (2 * a.left() + a.width() - 2 * b.left() - b.width()) / 2;
    int least = a.cell_width() + a.cell_height();
    for (const int shift : {level - 1, level, level + 1})
        least = std::min(least, largest_difference(a, b, shift));
    return least;
}

Letterforms of_segments(const Face& face) {
    return {.capital = face.segment_height * face.scale,
            .width = face.segment_width * face.scale,
            .stroke = face.segment_stroke * face.scale,
            .gap = face.segment_gap * face.scale,
            .word_gap = std::nullopt,
            .small_letters = false};
}

const RasterFace* raster_of(const BuiltImage& image, FaceId face) {
    const auto index = static_cast<std::size_t>(face);
    if (index >= image.rasters.size() || image.rasters[index].glyphs.empty()) return nullptr;
    return &image.rasters[index];
}

int least_ink(const Face& face) {
    constexpr int half_of_four_tones = 2;
    return face.smooth ? half_of_four_tones : 1;
}

const Glyph* glyph_of(const RasterFace& raster, char32_t code) {
    const auto found = std::find_if(raster.glyphs.begin(),
                                    raster.glyphs.end(),
                                    [&](const Glyph& glyph) { return glyph.code == code; });
    return found == raster.glyphs.end() ? nullptr : &*found;
}

}  // namespace

Letterforms letterforms_of(const Layout& layout, const BuiltImage& image, FaceId id) {
    const Face& face = layout.faces.at(static_cast<std::size_t>(id));
    if (face.kind == FaceKind::segment) return of_segments(face);
    const RasterFace* const raster = raster_of(image, id);
    if (raster == nullptr) return {};

    Letterforms forms;
    std::vector<int> widths, lefts, rights;
    for (const Glyph& glyph : raster->glyphs) {
        const bool capital = is_capital(glyph.code) || is_digit(glyph.code);
        const bool small = is_small(glyph.code);
        if (!capital && !small) continue;
        const Ink ink(glyph.cell, least_ink(face));
        if (ink.empty()) continue;
        forms.small_letters = forms.small_letters || small;
        lefts.push_back(ink.left());
        rights.push_back(ink.blank_right());
        if (!capital) continue;
        if (glyph.code != U'I' && glyph.code != U'1') widths.push_back(ink.width());
    }
    const auto enlarged = [&](std::optional<double> pixels) {
        return pixels ? std::optional<double>(*pixels * face.scale) : std::nullopt;
    };
    for (const FaceMeasure& measure : image.measures)
        if (measure.face == id && measure.capital) forms.capital = *measure.capital;
    forms.width = enlarged(median(std::move(widths)));
    if (const std::optional<int> stem = stem_width(*raster)) forms.stroke = *stem * face.scale;
    const std::optional<double> left = median(std::move(lefts)), right = median(std::move(rights));
    if (left && right) forms.gap = enlarged(*left + *right);
    const Glyph* const blank = glyph_of(*raster, U' ');
    if (forms.gap && blank != nullptr) forms.word_gap = *forms.gap + blank->cell.width * face.scale;
    return forms;
}

std::vector<GlyphDifference> hard_pairs(const Layout& layout, const BuiltImage& image, FaceId id) {
    const Face& face = layout.faces.at(static_cast<std::size_t>(id));
    std::vector<GlyphDifference> found;
    const RasterFace* const raster = raster_of(image, id);
    constexpr std::pair<char, char> pairs[] = {
        {'0', '8'}, {'6', '8'}, {'3', '8'}, {'5', '6'}, {'1', '7'}, {'B', '8'}};
    for (const auto& [one, other] : pairs) {
        double detail = 0;
        if (face.kind == FaceKind::segment) {
            // Each of these pairs of digits differs by at least one whole segment.
            if (one == 'B') continue;
            detail = face.segment_stroke;
        } else {
            if (raster == nullptr) break;
            const Glyph* const a = glyph_of(*raster, static_cast<char32_t>(one));
            const Glyph* const b = glyph_of(*raster, static_cast<char32_t>(other));
            if (a == nullptr || b == nullptr) continue;
            const int least = least_ink(face);
            detail = detail_between(Ink(a->cell, least), Ink(b->cell, least));
        }
        found.push_back({.pair = {one, '/', other}, .detail = detail * face.scale});
    }
    std::stable_sort(
        found.begin(), found.end(), [](const GlyphDifference& a, const GlyphDifference& b) {
            return a.detail < b.detail;
        });
    return found;
}

}  // namespace dialplate
