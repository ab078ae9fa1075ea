// press-feedback: a key looks different while it is pressed.
#include "sim/check/page_colours.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource sources[] = {
    {"common practice, no source", Trust::practice},
};

void find(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const std::size_t palettes = layout.palettes.empty() ? 1 : layout.palettes.size();
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::key) continue;
            const Look& look = layout.looks.at(static_cast<std::size_t>(item.key.look));
            for (std::size_t palette = 0; palette < palettes; ++palette) {
                const auto same = [&](PaintId a, PaintId b) {
                    return colour_in(layout, a, palette) == colour_in(layout, b, palette);
                };
                const bool differs =
                    !same(look.idle.fill, look.pressed.fill) ||
                    (!item.key.text.empty() && !same(look.idle.ink, look.pressed.ink)) ||
                    (item.key.edge > 0 && !same(look.idle.edge, look.pressed.edge));
                if (differs) continue;
                add_finding(found,
                            Severity::should,
                            item.pointer,
                            called(item) + " looks the same pressed and idle" +
                                in_palette(layout, palette) + ": give look \"" + look.name +
                                "\" another ink, fill or edge when pressed");
                break;
            }
        }
    }
}

}  // namespace

const Rule press_feedback{
    .name = "press-feedback",
    .sentence = "A key looks different while it is pressed.",
    .computed =
        "Whether fill, ink or edge of a key differ between idle and pressed, as the display holds "
        "them, in every palette.",
    .formula = "RGB565 of fill, ink or edge: idle != pressed",
    .sources = sources,
    .figures = {},
    .find = find,
};

}  // namespace dialplate::rule
