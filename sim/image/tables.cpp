#include "sim/image/tables.hpp"

#include "sim/image/picture_file.hpp"
#include "sim/layout/reader.hpp"
#include "ui/image_format.hpp"

#include <algorithm>

namespace dialplate {

int Tables::text(const std::vector<std::uint8_t>& glyphs) {
    const auto [it, added] = text_numbers_.emplace(glyphs, static_cast<int>(texts_.size()));
    if (added) texts_.push_back(glyphs);
    return it->second;
}

int Tables::tones(const std::vector<Tones>& wanted) {
    const auto same = [](const Tones& a, const Tones& b) {
        return a.ink == b.ink && a.fill == b.fill && a.edge == b.edge;
    };
    const auto found =
        std::search(tones_.begin(), tones_.end(), wanted.begin(), wanted.end(), same);
    const auto first = static_cast<int>(found - tones_.begin());
    if (found == tones_.end()) tones_.insert(tones_.end(), wanted.begin(), wanted.end());
    return first;
}

std::optional<int> Tables::picture(const Layout& layout,
                                   const Item& item,
                                   std::vector<Finding>& out) {
    const Picture& wish = item.picture;
    const std::pair key{wish.file, static_cast<int>(wish.packing)};
    if (const auto it = picture_numbers_.find(key); it != picture_numbers_.end()) return it->second;
    const auto fail = [&](const std::string& message) {
        Finding f;
        f.rule = "picture-file";
        f.pointer = item.pointer + "/file";
        f.message = message;
        out.push_back(f);
        return std::nullopt;
    };
    const std::string path = find_file(layout.directory, wish.file);
    if (path.empty()) return fail("picture file \"" + wish.file + "\" is not there");
    const PictureFile file = read_picture(path);
    if (!file.picture)
        return fail("picture file \"" + wish.file + "\" cannot be read: " + file.error);
    const std::vector<std::uint8_t> plain = pack_picture(*file.picture, Packing::plain);
    const std::vector<std::uint8_t> runs = pack_picture(*file.picture, Packing::runs);
    if (plain.empty() && runs.empty()) {
        return fail(
            "picture file \"" + wish.file +
            "\" is too large for the image: at most 1,023 x 1,023 px and 65,535 bytes packed");
    }
    if (wish.packing == PackingWish::runs && runs.empty()) {
        return fail("picture file \"" + wish.file +
                    "\" has more than 12 strokes in a row, too many for runs; leave the packing to "
                    "the tool, or name plain");
    }
    const bool take_plain = wish.packing == PackingWish::plain || runs.empty() ||
                            (wish.packing == PackingWish::automatic && plain.size() <= runs.size());
    const int number = static_cast<int>(pictures_.size());
    pictures_.push_back(take_plain && !plain.empty() ? plain : runs);
    picture_costs_.push_back(
        {wish.file,
         file.picture->width,
         file.picture->height,
         pictures_.back()[picture::packing] == packing::plain ? "plain" : "runs",
         Bytes{static_cast<std::int64_t>(pictures_.back().size())}});
    picture_numbers_[key] = number;
    return number;
}

}  // namespace dialplate
