// From a layout to the image that the engine reads, with what every part of it costs.
#pragma once

#include "fonts/face.hpp"
#include "sim/layout/layout.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// What one face costs, chosen and otherwise.
struct FaceCost {
    FaceId face = 0;
    int glyphs = 0;
    std::string packing;         ///< "plain", "runs", "context", "segment"
    Bytes bytes;                 ///< Whole face as stored.
    Bytes plain, runs, context;  ///< What each packing would take; 0 for segment faces.
    int height = 0;              ///< Rows of a cell, enlarged.
    int digit_advance = 0;
    bool changed_runs = false;  ///< Its digits become each other by what differs.
};

struct PictureCost {
    std::string file;
    int width = 0, height = 0;
    std::string packing;
    Bytes bytes;
    Bytes plain, runs, context;  ///< What each packing would take.
    bool tones = false;          ///< In four paints.
};

/// The ink that a text can show, at its widest.
struct TextExtent {
    int page = 0, item = 0;  ///< Indices into the layout.
    std::string what;        ///< The text, or the widest number.
    FaceId face = 0;
    int width = 0, height = 0;            ///< Pixels needed.
    int room_width = 0, room_height = 0;  ///< Pixels there are, inside edges.
    PaintId ink = 0, ground = 0;
    char kind = 't';  ///< 't' words, 'd' digits
    int pitch = 0;    ///< Rows from one line to the next as they are set; 0: it has one line.
};

/// Heights of a rasterised face, measured on its pixels, enlarged.
struct FaceMeasure {
    FaceId face = 0;
    std::optional<int> capital;   ///< Ink height of a flat capital or digit of the set.
    std::optional<int> x_height;  ///< Of a lower-case letter without ascender, if the set has one.
};

/// An image and its account.
struct BuiltImage {
    std::vector<std::uint8_t> bytes;
    int arena_values = 0;  ///< Bytes of engine memory for values.
    int arena_shown = 0;   ///< Bytes for what is on the glass, of the greatest page, in an engine
                           ///< with just the parts that the layout uses.
    int arena_shown_by_all_parts = 0;  ///< The same in an engine with every part, as on the PC.
    Bytes header, pages, texts, paints,
        values;      ///< Shares of `bytes`; with faces and pictures they sum.
    Bytes contexts;  ///< Table of the packing `context`, if a face has it; part of `bytes` too.
    std::vector<FaceCost> faces;
    std::vector<PictureCost> pictures;
    std::vector<TextExtent> texts_shown;
    std::vector<FaceMeasure> measures;
    std::vector<RasterFace> rasters;  ///< By FaceId; empty glyphs for segment faces.
    std::vector<std::string> keys;    ///< Item names in order of key number.

    /// Columns of the widest glyph or picture in the packing `context`, not enlarged; at least 1.
    [[nodiscard]] int context_columns() const;
};

struct Building {
    std::optional<BuiltImage> image;  ///< Present when no finding has severity `error`.
    std::vector<Finding>
        findings;  ///< Missing fonts and glyphs, unreadable pictures, an image too big.
};

Building build_image(const Layout& layout);

}  // namespace dialplate
