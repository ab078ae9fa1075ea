// From a font file to a packed face. Shapes are 1-bit; a face holds just the glyphs that a layout can
// show, each as a cell: advance wide, face height high, background included.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// Of a bitmap, either way; px. ui/image.md, "Drawbacks".
inline constexpr int greatest_glass = 1023;

/// A picture, row-major, one byte a pixel: 0 ground, 1 ink; or in tones, 0 ground to 3 ink.
struct Bitmap {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> pixels;
    bool tones = false;  ///< Two bits a pixel.

    /// Whether anything but ground is there.
    [[nodiscard]] bool ink(int x, int y) const { return at(x, y) != 0; }
    [[nodiscard]] std::uint8_t at(int x, int y) const {
        return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                      static_cast<std::size_t>(x)];
    }
};

/// One glyph as a cell. The ink lies inside: a glyph that overhangs its advance gets a wider cell.
struct Glyph {
    char32_t code = 0;
    Bitmap cell;  ///< advance x face height.
};

/// A face before packing: glyphs in order of code point until order_for_contexts(), all cells of one height.
struct RasterFace {
    std::string file;
    int size = 0;
    int height = 0;  ///< Rows from the highest to the lowest ink of the set.
    int ascent = 0;  ///< Rows of the cell above the baseline.
    std::vector<Glyph> glyphs;
    bool smooth = false;  ///< Its cells are in tones.
};

/// What is asked of a font file.
struct FaceRequest {
    std::string file;           ///< Path of a TrueType, OpenType or BDF file.
    int size = 0;               ///< Em size in pixels; for a BDF file the strike's height.
    std::u32string characters;  ///< Any order, repeats allowed.
    bool even_digits = false;   ///< Give "0".."9", "-" and U+2212 one advance, the widest of those
                                ///< asked for; the ink of the others is centred in it.
    bool smooth = false;        ///< In four tones; from outlines only.
};

/// A face, or why there is none.
struct FaceResult {
    std::optional<RasterFace> face;
    std::string error;  ///< One sentence, empty when there is a face.
    std::vector<char32_t>
        missing;  ///< Characters the font lacks, or has without any width; in order
                  ///< of code point. The face is then without them.
};

/// Rasterises through SDL2_ttf with mono hinting and solid rendering; a smooth face with light hinting and
/// shaded rendering, each pixel in the nearest of the tones 0, 1/3, 2/3 and 1 of how much of it is covered. May
/// be called from any thread; calls wait for each other.
FaceResult rasterise(const FaceRequest& request);

/// The packings a raster face can have.
enum class Packing { plain, runs, context };

/// The chance of ground in 1/256, 2 to 254, for each context of the packing `context` (ui/image.md,
/// "Contexts"); those from context_model::middle on are for bitmaps in tones only.
using ContextTable = std::array<std::uint8_t, 263>;

/// The chances that the decisions of these bitmaps have on the whole.
ContextTable train_contexts(const std::vector<const Bitmap*>& bitmaps);

/// A face as the image holds it (ui/image.md, "Face"), header included.
struct PackedFace {
    Packing packing = Packing::plain;
    std::vector<std::uint8_t> bytes;
};

/// Packs a face in `plain` or `runs`, enlarged 1..4 times when drawn (no effect on the glyph data). Glyphs that look the
/// same share their bytes.
/// @return No bytes if it does not fit: more than 65,535 bytes, more than 255 glyphs, columns or rows;
///         in `runs` or enlarged, a row with more than 12 strokes, or tones.
PackedFace pack(const RasterFace& face, Packing packing, int enlarged);

/// Puts the glyphs of a face in an order in which `context` takes few bytes: digits first, from the least, if they
/// are to follow each other, then the rest so that each can borrow from the next.
void order_for_contexts(RasterFace& face, bool digits_first, const ContextTable& table);

/// Packs a face in `context`, for an image that has this table, its glyphs in the order they have.
/// @return No bytes if it does not fit; see pack().
PackedFace pack_context(const RasterFace& face, const ContextTable& table, int enlarged);

/// The smaller of the two packings of `face`, data alone; `plain` among equals. No bytes if neither
/// fits.
PackedFace pack_smallest(const RasterFace& face, int enlarged);

/// A picture as the image holds it (ui/image.md, "Picture").
/// @param table  Of the image; for `context` only.
/// @return No bytes if it has no pixels or does not fit: more than 1,023 columns or rows, or
///         more than 65,535 bytes; in `runs`, a row with more than 12 strokes, or tones; in `context`, more
///         than most_context_columns.
std::vector<std::uint8_t> pack_picture(const Bitmap& picture,
                                       Packing packing,
                                       const ContextTable& table = {});

/// Columns of a bitmap in `context` at most: the engine keeps the rows above in a byte for each.
inline constexpr int most_context_columns = 253;

/// The pieces that a picture is packed in, from the top.
std::vector<Bitmap> strips_of(const Bitmap& picture);

/// What a set of cropped glyphs costs without any packing: cropped bits of each glyph rounded up to
/// bytes, plus 7 bytes of metrics each. The yardstick for every ratio that is printed.
std::size_t cropped_bytes(const RasterFace& face);

/// Glyphs of a packed face, decoded again on the PC: for tests and pictures.
/// @return Nothing at all if the bytes are cut short or contradict themselves.
std::vector<Bitmap> unpack(const PackedFace& face);

/// The same for a face in `context`.
std::vector<Bitmap> unpack_context(const PackedFace& face, const ContextTable& table);

/// A packed picture, decoded again on the PC.
/// @return Nothing if the bytes are cut short or contradict themselves.
std::optional<Bitmap> unpack_picture(const std::vector<std::uint8_t>& picture,
                                     const ContextTable& table = {});

}  // namespace dialplate
