// The faces of a layout with just the glyphs that its items can show.
#pragma once

#include "fonts/face.hpp"
#include "sim/image/packing_choice.hpp"
#include "sim/layout/layout.hpp"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace dialplate {

/// A character that an item asks of a face.
struct GlyphWish {
    FaceId face;
    char32_t code;
    std::string pointer;  ///< Of the member that asks.
};

class FaceSet {
public:
    explicit FaceSet(const Layout& layout);

    /// Finds what every item can show, rasterises, reports what cannot be had, and packs; pictures as well, which
    /// share the table with the faces.
    void prepare(std::vector<Finding>& findings, const std::vector<PictureToPack>& pictures = {});

    [[nodiscard]] bool usable(FaceId face) const { return prepared(face).usable; }
    /// Number of a glyph in its face; the face has it, or a finding says that it does not (then 0).
    [[nodiscard]] int index(FaceId face, char32_t code) const;
    [[nodiscard]] bool has(FaceId face, char32_t code) const;
    /// Columns and rows of cells, enlarged.
    [[nodiscard]] int advance(FaceId face, char32_t code) const;
    [[nodiscard]] int digit_advance(FaceId face) const { return prepared(face).digit_advance; }
    [[nodiscard]] int height(FaceId face) const { return prepared(face).height; }
    [[nodiscard]] int ascent(FaceId face) const { return prepared(face).ascent; }
    /// Ink height of a capital or digit, for centring; enlarged.
    [[nodiscard]] int capital(FaceId face) const { return prepared(face).capital; }
    [[nodiscard]] int width(FaceId face, const std::u32string& text) const;
    /// Rows from one line to the next: with half a capital's height between lines where so many rows have room for
    /// that (NUREG-0700 Rev. 3, 11.4.1.7; LEG-19), at least the height of cells and a third of a capital.
    [[nodiscard]] int line_pitch(FaceId face, int lines, int room) const;
    /// Blank columns to the right of each character that the author added; enlarged.
    [[nodiscard]] int spacing(FaceId face) const;

    struct Packed {
        std::vector<std::uint8_t> bytes;
        std::string packing;
        Bytes plain, runs, context;  ///< What each packing takes; 0: none, or it does not fit.
        int glyphs = 0;
        bool changed_runs = false;  ///< Its digits become each other by what differs.
    };
    /// The faces as the image stores them, by FaceId; those that are not usable are empty. And the pictures.
    struct AllPacked {
        std::vector<Packed> faces, pictures;
        std::vector<std::uint8_t> contexts;  ///< The table; empty: nothing needs it.
    };
    [[nodiscard]] const AllPacked& packed() const { return packed_; }
    /// Glyphs by number.
    [[nodiscard]] const RasterFace& raster(FaceId face) const { return prepared(face).raster; }

private:
    struct Prepared {
        std::set<char32_t> codes;
        bool even_digits = false;
        std::optional<Milliseconds> within;  ///< What a change of a digit may take.
        bool counted_digits = false;  ///< Digits are drawn by counting from the glyph of "0".
        bool usable = false;
        RasterFace raster;
        int height = 0, ascent = 0, capital = 0, digit_advance = 0;
    };
    [[nodiscard]] const Prepared& prepared(FaceId face) const {
        return prepared_[static_cast<std::size_t>(face)];
    }
    void wish(FaceId face, const std::u32string& text, const std::string& pointer);
    void collect(const Item& item);
    void rasterise_face(FaceId face, std::vector<Finding>& findings);
    void pack_all(const std::vector<PictureToPack>& pictures);
    void choose_changed_runs(FaceId face, Packed& packed) const;

    const Layout& layout_;
    std::vector<Prepared> prepared_;
    std::vector<GlyphWish> wishes_;
    AllPacked packed_;
};

/// The digits that a whole number between `low` and `high` can show, without its last `drop` ones.
std::u32string digits_between(std::int64_t low, std::int64_t high, int drop);

/// The labels at the major ticks of a scale whose pointer moves, by scale pixel from the left.
struct ScaleLabel {
    int column;
    std::u32string text;
};
std::vector<ScaleLabel> scale_labels(const Item& item);

}  // namespace dialplate
