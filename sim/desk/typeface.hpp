// Words in the window, in the project's own faces (fonts/*.bdf), pixel for pixel.
#pragma once

#include "fonts/face.hpp"
#include "sim/desk/canvas.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

/// How a line of words is set.
struct Setting {
    Colour ink = 0;
    int spacing = 0;  ///< Extra columns between letters, unenlarged.
};

class Typeface {
public:
    /// @return An empty reason, or why there is no such face.
    std::string load(const std::string& file, int size);
    /// Screen pixels a face pixel, 1 or more.
    void enlarge(int times) { enlarged_ = times; }

    [[nodiscard]] int enlarged() const { return enlarged_; }
    /// By code point, not enlarged.
    [[nodiscard]] const std::map<char32_t, Bitmap>& letters() const { return letters_; }

    [[nodiscard]] int height() const { return height_ * enlarged_; }
    [[nodiscard]] int ascent() const { return ascent_ * enlarged_; }
    /// Columns that a line takes, without the blank after its last letter.
    [[nodiscard]] int width(std::string_view words, int spacing = 0) const;
    /// The beginning of `words` that fits into `room` columns, with three points where it was cut.
    [[nodiscard]] std::string fitted(std::string_view words, int room) const;

    /// Words on as many lines as they need in `room` columns: broken at spaces, and within a word only where it
    /// is longer than a line.
    [[nodiscard]] std::vector<std::string> lines(std::string_view words, int room) const;

    /// Draws one line with its top left corner at (x, y). A letter that the face lacks shows as "?".
    /// @return Columns that were taken.
    int draw(Canvas& canvas, int x, int y, std::string_view words, const Setting& setting) const;

private:
    [[nodiscard]] const Bitmap& letter(char32_t code) const;

    std::map<char32_t, Bitmap> letters_;
    Bitmap blank_;
    int height_ = 0;
    int ascent_ = 0;
    int enlarged_ = 1;
};

}  // namespace dialplate
