// What several pages share: texts, tones and pictures, each stored once.
#pragma once

#include "fonts/face.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

namespace dialplate {

class Tables {
public:
    /// Number of a text given as glyph numbers.
    int text(const std::vector<std::uint8_t>& glyphs);
    /// Number of the first of these tones, which follow each other in the table.
    int tones(const std::vector<Tones>& wanted);
    /// Stores a picture, or reports why it cannot be had.
    void add_picture(const Layout& layout, const Item& item);
    /// Number of a picture; nullopt if it was not stored.
    [[nodiscard]] std::optional<int> picture(const Picture& picture) const;

    [[nodiscard]] const std::vector<std::vector<std::uint8_t>>& texts() const { return texts_; }
    [[nodiscard]] const std::vector<Tones>& tone_table() const { return tones_; }
    /// A picture as the image is to hold it, not packed yet.
    struct StoredPicture {
        std::string file;
        Bitmap bitmap;
        PackingWish packing;
    };
    [[nodiscard]] const std::vector<StoredPicture>& pictures() const { return pictures_; }
    std::vector<Finding> findings;

private:
    std::vector<std::vector<std::uint8_t>> texts_;
    std::map<std::vector<std::uint8_t>, int> text_numbers_;
    std::vector<Tones> tones_;
    std::vector<StoredPicture> pictures_;
    using PictureKey = std::tuple<std::string, PackingWish, std::vector<PaintId>>;
    std::map<PictureKey, int> picture_numbers_;
};

}  // namespace dialplate
