// The shapes of a face as they are drawn: how wide, how thick, how far apart, and by how little two
// characters differ. Measured on the pixels, never taken from the font's nominal figures.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"

#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// Lengths in pixels of the glass, enlargement counted. Absent: the face has nothing to measure it on.
struct Letterforms {
    std::optional<double> capital;  ///< Height of a flat capital or digit.
    /// Median ink width of capitals and digits without I and 1, which are narrow everywhere (LEG-14).
    std::optional<double> width;
    std::optional<double> stroke;  ///< Median run of ink in the rows of letters and digits.
    /// Blank between the ink of two neighbours: median to the right of a character and median to the left
    /// of the next one, over letters and digits.
    std::optional<double> gap;
    /// Blank between the ink of two words: the blank's advance and `gap`.
    std::optional<double> word_gap;
    bool small_letters = false;  ///< The face is used with letters that are not capitals.
};
Letterforms letterforms_of(const Layout& layout, const BuiltImage& image, FaceId face);

/// Two characters and the greatest thing that one has where the other has none.
struct GlyphDifference {
    std::string pair;   ///< "3/8"
    double detail = 0;  ///< Side of the largest square of pixels that differ, enlargement counted.
};

/// The pairs that are hardest to tell apart, of those that the face has: 0/8, 6/8, 3/8, 5/6, 1/7, B/8. The
/// least difference first. Two characters are laid over each other where they differ least: middle on
/// middle, or one pixel beside that.
std::vector<GlyphDifference> hard_pairs(const Layout& layout, const BuiltImage& image, FaceId face);

}  // namespace dialplate
