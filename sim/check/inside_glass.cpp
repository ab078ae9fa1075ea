// inside-glass: nothing is drawn beside the glass.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>

namespace dialplate::rule {

namespace {

constexpr RuleSource inside_glass_sources[] = {
    {"the pixels of the display, layouts/parts/displays.json", Trust::read},
};

struct Edge {
    int beyond = 0;  ///< Pixels past the edge; 0 or less: inside.
    const char* name = "";
    const char* cure = "";
};

void find_inside_glass(const Subject& subject, std::vector<Finding>& found) {
    const int width = subject.layout.glass_width(), height = subject.layout.glass_height();
    for (const Page& page : subject.layout.pages) {
        for (const Item& item : page.items) {
            const Edge edges[] = {
                {-item.box.x, "left", "right"},
                {-item.box.y, "top", "down"},
                {item.box.right() - width, "right", "left"},
                {item.box.bottom() - height, "bottom", "up"},
            };
            const Edge& worst = *std::max_element(
                std::begin(edges), std::end(edges), [](const Edge& a, const Edge& b) {
                    return a.beyond < b.beyond;
                });
            if (worst.beyond <= 0) continue;
            add_finding(found,
                        Severity::must,
                        item.pointer,
                        {static_cast<double>(worst.beyond), 0, "px"},
                        called(item) + " reaches " + std::to_string(worst.beyond) +
                            " px past the " + worst.name + " edge of the glass (" +
                            std::to_string(width) + " x " + std::to_string(height) +
                            " px), allowed is 0: move it " + std::to_string(worst.beyond) + " px " +
                            worst.cure + " or make it smaller");
        }
    }
}

}  // namespace

const Rule inside_glass{
    .name = "inside-glass",
    .sentence = "Every item lies on the glass.",
    .computed =
        "How far the box of an item reaches past each edge of the glass, in pixels; the worst edge "
        "is reported.",
    .formula = "beyond = max(-x, -y, x + width - glass width, y + height - glass height) <= 0",
    .sources = inside_glass_sources,
    .figures = {},
    .find = find_inside_glass,
};

}  // namespace dialplate::rule
