#include "sim/image/tables.hpp"

#include "sim/image/picture_file.hpp"
#include "sim/layout/colour.hpp"
#include "sim/layout/reader.hpp"

#include <algorithm>
#include <array>

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

namespace {

Bitmap reduced(const ColourPicture& picture, const Layout& layout, const Picture& wish) {
    std::array<std::uint32_t, 4> paints{};
    if (wish.tones.size() != paints.size()) return reduce_to_ink(picture);
    std::transform(wish.tones.begin(), wish.tones.end(), paints.begin(), [&](PaintId paint) {
        return expand_rgb565(layout.paints[static_cast<std::size_t>(paint)].rgb565);
    });
    return reduce_to_tones(picture, paints);
}

}  // namespace

std::optional<int> Tables::picture(const Picture& wish) const {
    const auto found = picture_numbers_.find({wish.file, wish.packing, wish.tones});
    return found == picture_numbers_.end() ? std::nullopt : std::optional(found->second);
}

void Tables::add_picture(const Layout& layout, const Item& item) {
    const Picture& wish = item.picture;
    if (picture(wish)) return;
    const auto fail = [&](const std::string& message) {
        Finding f;
        f.rule = "picture-file";
        f.pointer = item.pointer + "/file";
        f.message = message;
        findings.push_back(f);
    };
    const std::string path = find_file(layout.directory, wish.file);
    if (path.empty()) return fail("picture file \"" + wish.file + "\" is not there");
    const PictureFile file = read_picture(path);
    if (!file.picture)
        return fail("picture file \"" + wish.file + "\" cannot be read: " + file.error);
    Bitmap bitmap = reduced(*file.picture, layout, wish);
    const bool no_runs = pack_picture(bitmap, Packing::runs).empty();
    if (pack_picture(bitmap, Packing::plain).empty() && no_runs) {
        return fail(
            "picture file \"" + wish.file +
            "\" is too large for the image: at most 1,023 x 1,023 px and 65,535 bytes packed");
    }
    if (wish.packing == PackingWish::runs && no_runs) {
        return fail("picture file \"" + wish.file +
                    "\" has more than 12 strokes in a row, too many for runs; leave the packing to "
                    "the tool, or name plain or context");
    }
    if (wish.packing == PackingWish::context && bitmap.width > most_context_columns) {
        return fail("picture file \"" + wish.file + "\" is " + std::to_string(bitmap.width) +
                    " px wide, context packs at most " + std::to_string(most_context_columns) +
                    "; leave the packing to the tool, or name plain or runs");
    }
    picture_numbers_[{wish.file, wish.packing, wish.tones}] = static_cast<int>(pictures_.size());
    pictures_.push_back({wish.file, std::move(bitmap), wish.packing});
}

}  // namespace dialplate
