// behind-bezel: no pixel of an item is hidden by the front panel, seen straight on (must) or along the
// line of sight (should). What is modelled and what not: bezel_geometry.hpp.
#include "sim/check/bezel_geometry.hpp"
#include "sim/check/item_changes.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource behind_bezel_sources[] = {
    {"geometry of opening, depth and tilt: similar triangles", Trust::derived},
};

/// What an item loses at each edge, in pixels.
struct Hidden {
    int left = 0, top = 0, right = 0, bottom = 0;
    long long pixels = 0;
};

Hidden hidden_of(const Box& box, const SeenPixels& seen) {
    Hidden hidden{.left = std::clamp(seen.left - box.x, 0, box.width),
                  .top = std::clamp(seen.top - box.y, 0, box.height),
                  .right = std::clamp(box.right() - seen.right, 0, box.width),
                  .bottom = std::clamp(box.bottom() - seen.bottom, 0, box.height)};
    const long long width = std::max(0, box.width - hidden.left - hidden.right);
    const long long height = std::max(0, box.height - hidden.top - hidden.bottom);
    hidden.pixels = static_cast<long long>(box.width) * box.height - width * height;
    return hidden;
}

std::string losses(const Hidden& hidden) {
    std::string text;
    const auto lose = [&](int count, const char* one, const char* many, const char* edge) {
        if (count == 0) return;
        if (!text.empty()) text += ", ";
        text += counted(count, one, many) + " " + edge;
    };
    lose(hidden.left, "column", "columns", "at the left");
    lose(hidden.right, "column", "columns", "at the right");
    lose(hidden.top, "row", "rows", "at the top");
    lose(hidden.bottom, "row", "rows", "at the bottom");
    return text;
}

/// How far it has to go, each way; none when it is too large for what is seen.
std::optional<Way> way_out(const Hidden& hidden) {
    if ((hidden.left > 0 && hidden.right > 0) || (hidden.top > 0 && hidden.bottom > 0))
        return std::nullopt;
    return Way{.across = hidden.left - hidden.right, .down = hidden.top - hidden.bottom};
}

std::string advice(const std::optional<Way>& way) {
    return way ? "move it " + in_words(*way) : "make it smaller";
}

/// What the item's finding proposes, if moving it is enough.
void propose(Finding& finding, const Item& item, const std::optional<Way>& way) {
    if (way) finding.cure.push_back(moved(item, *way));
}

/// A frame without a line is ground; nothing is lost when its rim is hidden.
bool is_ground(const Item& item) {
    return item.kind == ItemKind::frame && item.frame.line == 0;
}

void find_behind_bezel(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    if (!layout.opening) return;
    const Opening& opening = *layout.opening;
    const SeenPixels straight = seen_pixels(layout, opening);
    const SeenPixels tilted = seen_pixels(layout, opening, shade_of(opening, layout.viewing));
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            if (is_ground(item)) continue;
            const Hidden now = hidden_of(item.box, straight);
            if (now.pixels > 0) {
                add_finding(found,
                            Severity::must,
                            item.pointer,
                            {static_cast<double>(now.pixels), 0, "px"},
                            called(item) + " is hidden in part by the front panel: " +
                                counted(now.pixels, "pixel", "pixels") + " (" + losses(now) +
                                "), allowed are 0: " + advice(way_out(now)));
                propose(found.back(), item, way_out(now));
                continue;
            }
            const Hidden then = hidden_of(item.box, tilted);
            if (then.pixels == 0) continue;
            add_finding(found,
                        Severity::should,
                        item.pointer,
                        {static_cast<double>(then.pixels), 0, "px"},
                        called(item) + " is hidden in part by the bezel when seen from " +
                            number(std::abs(layout.viewing.tilt.value), 1) + " degrees " +
                            (layout.viewing.tilt.value > 0 ? "above" : "below") + ": " +
                            counted(then.pixels, "pixel", "pixels") + " (" + losses(then) +
                            "), allowed are 0: " + advice(way_out(then)));
            propose(found.back(), item, way_out(then));
        }
    }
}

}  // namespace

const Rule behind_bezel{
    .name = "behind-bezel",
    .sentence =
        "No pixel of an item is hidden by the opening (must), nor by the bezel's depth along the "
        "line of sight (should).",
    .computed =
        "Pixels of an item that do not lie wholly in the opening, seen straight on, and those that "
        "the "
        "depth d of the bezel (`opening.depth_mm`) hides from an eye before the middle of the "
        "opening. "
        "e is the eye's height above that middle, z its distance from the plane of the glass, a "
        "half "
        "the opening's height; D and tilt are `viewing.distance_mm` and `viewing.tilt_deg`.",
    .formula =
        "hidden beside the upper edge = d (e - a) / (z - d), with e = D sin(tilt), z = D "
        "cos(tilt); "
        "0 where e <= a; beside the lower edge with -e",
    .sources = behind_bezel_sources,
    .figures = {},
    .find = find_behind_bezel,
};

}  // namespace dialplate::rule
