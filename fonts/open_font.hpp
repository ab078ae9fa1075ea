// One font of SDL2_ttf, opened at one size for drawing in one bit or in tones.
#pragma once

#include "fonts/face.hpp"
#include "fonts/font_file.hpp"

#include <memory>
#include <mutex>
#include <optional>
#include <string>

struct _TTF_Font;

namespace dialplate::fonts {

/// A character as drawn: its ink relative to the pen, which stands at the left edge of column 0 on
/// the baseline, row 0 being the first row below it (y grows downwards).
struct Drawn {
    char32_t code = 0;
    int advance = 0;  ///< Columns to the next pen.
    int left = 0;     ///< Column of the first ink.
    int top = 0;      ///< Row of the first ink; negative above the baseline.
    Bitmap ink;       ///< Cropped; 0 x 0 for a blank.
};

/// Holds SDL2_ttf, which is not safe to use from two threads at once, until it goes.
class OpenFont {
public:
    /// @param file Stays alive and unchanged as long as this object.
    /// @param size Em size in pixels, or the strike's height; at least 1.
    /// @param smooth Draw in tones.
    OpenFont(const FontFile& file, const std::string& path, int size, bool smooth = false);
    ~OpenFont();
    OpenFont(const OpenFont&) = delete;
    OpenFont& operator=(const OpenFont&) = delete;

    /// One sentence, empty when the font is open. The rest is only for an open font.
    [[nodiscard]] const std::string& error() const { return error_; }

    [[nodiscard]] bool has(char32_t code) const;

    /// @return Nothing when there is no way to draw the character in one colour.
    [[nodiscard]] std::optional<Drawn> draw(char32_t code) const;

    /// Rows of a capital H, or of the font's ascender where it has none: the height of a blank.
    [[nodiscard]] int blank_height() const;

private:
    bool select_strike(const FontFile& file, const std::string& path, int size);

    std::unique_lock<std::mutex> alone_;
    _TTF_Font* font_ = nullptr;
    std::string error_;
    bool smooth_;
};

}  // namespace dialplate::fonts
