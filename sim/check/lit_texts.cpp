#include "sim/check/lit_texts.hpp"

#include "sim/check/contrast.hpp"

#include <algorithm>
#include <limits>
#include <set>
#include <tuple>

namespace dialplate {

std::vector<LitText> texts_in(const Layout& layout) {
    std::vector<LitText> texts;
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            std::set<std::tuple<FaceId, PaintId, PaintId>> known;
            for (const ShownText& text : texts_of(item, layout))
                if (known.insert({text.face, text.ink, text.ground}).second)
                    texts.push_back({.item = &item, .text = text});
        }
    }
    return texts;
}

InkAndGround luminances(const Layout& layout,
                        const GlassLight& light,
                        const ShownText& text,
                        std::size_t palette) {
    const auto of = [&](PaintId paint) {
        return light.of(relative_luminance(expand_rgb565(colour_in(layout, paint, palette))));
    };
    return {.ink = of(text.ink), .ground = of(text.ground)};
}

std::size_t palette_for_light(const Layout& layout,
                              const GlassLight& light,
                              const std::vector<LitText>& texts) {
    const std::size_t palettes = std::max<std::size_t>(1, layout.palettes.size());
    std::size_t best = 0;
    double best_ratio = 0.0;
    for (std::size_t palette = 0; palette < palettes; ++palette) {
        double least = std::numeric_limits<double>::infinity();
        for (const LitText& each : texts) {
            const InkAndGround seen = luminances(layout, light, each.text, palette);
            least = std::min(least, luminance_ratio(seen.ink, seen.ground));
        }
        if (least <= best_ratio) continue;
        best = palette;
        best_ratio = least;
    }
    return best;
}

}  // namespace dialplate
