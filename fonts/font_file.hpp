// A font file in memory and what its first bytes say about it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace dialplate::fonts {

/// What SDL2_ttf cannot be asked about a font.
struct FontTraits {
    bool outlines = false;  ///< Can be drawn at any size; else it holds strikes of fixed sizes.
    bool coloured = false;  ///< Holds coloured pictures of characters.
    std::optional<int> pixel_size;  ///< PIXEL_SIZE of a BDF file.
};

/// Reads the table directory of a TrueType or OpenType file, or the head of a BDF file. Anything may be
/// in `bytes`.
/// Source: OpenType specification 1.9, "Organization of an OpenType font"; Glyph Bitmap Distribution
///         Format 2.2 (Adobe, 5005), section 3.
FontTraits read_traits(const std::vector<std::uint8_t>& bytes);

/// A font file as a whole, or why there is none.
struct FontFile {
    std::vector<std::uint8_t> bytes;
    FontTraits traits;
    std::string error;  ///< One sentence, empty when the file was read.
};

FontFile read_font_file(const std::string& path);

}  // namespace dialplate::fonts
