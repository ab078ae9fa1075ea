#include "sim/commands/views.hpp"

#include "sim/check/wording.hpp"
#include "sim/look/colour_vision.hpp"
#include "sim/look/eye.hpp"
#include "sim/look/finger.hpp"
#include "sim/look/front_panel.hpp"
#include "sim/look/room_light.hpp"
#include "sim/look/strokes.hpp"
#include "sim/look/words.hpp"

#include <algorithm>
#include <utility>

namespace dialplate {
namespace {

constexpr double acuities[] = {1.0, 0.5};

Vision vision_named(const std::string& word) {
    if (word == "protan") return Vision::protan;
    return word == "deutan" ? Vision::deutan : Vision::tritan;
}

void copy_into(Rgb888& sheet, const Rgb888& picture, int left) {
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            sheet.at(left + x, y) = picture.at(x, y);
}

/// Two eyes' pictures beside each other, a line of words below each.
Rgb888 side_by_side(const Rgb888 (&pictures)[2],
                    const std::string (&words)[2],
                    int scale,
                    const RasterFace& labels) {
    constexpr std::uint32_t ground = 0x24282C, ink = 0xE8ECEE;
    const int enlarged = std::max(1, scale / 2);
    const int gap = 8 * enlarged;
    const int strip = (labels.height + 6) * enlarged;
    const Rgb888& first = pictures[0];
    Rgb888 sheet(2 * first.width + gap, first.height + strip, ground);
    for (int i = 0; i < 2; ++i) {
        const int left = i * (first.width + gap);
        copy_into(sheet, pictures[i], left);
        write_words(sheet,
                    labels,
                    {left + 4 * enlarged, first.height + 3 * enlarged, ink, enlarged},
                    words[i]);
    }
    return sheet;
}

}  // namespace

void add_view_options(CLI::App& command, ViewWish& wish) {
    command.add_option("--lux", wish.lux, "In a room with so much light on the glass")
        ->check(CLI::Range(0.0, 150000.0));
    command.add_option("--vision", wish.vision, "As an eye without one kind of cone sees it")
        ->check(CLI::IsMember({"protan", "deutan", "tritan"}));
    CLI::Option* eye =
        command
            .add_option("--eye",
                        wish.eye_mm,
                        "From so many mm, as eyes of acuity 1.0 and 0.5 see it, side by side")
            ->check(CLI::Range(50.0, 10000.0));
    command.add_option("--acuity", wish.acuity, "With --eye: as one eye of this acuity sees it")
        ->check(CLI::Range(0.05, 3.0))
        ->needs(eye);
    command.add_flag("--bezel", wish.bezel, "With what the front panel hides");
    command.add_flag("--finger", wish.finger, "With fingertips on the keys and their chances");
}

Rgb888 viewed(Rgb888 picture,
              int scale,
              const Layout& layout,
              int page,
              const ViewWish& wish,
              const RasterFace* labels) {
    if (wish.lux) picture = in_room_light(picture, glass_light(layout, Lux{*wish.lux}));
    if (!wish.vision.empty()) picture = seen_with(vision_named(wish.vision), picture);
    const auto marked = [&](Rgb888 seen) {
        if (wish.bezel) seen = behind_panel({seen, scale}, layout, page);
        if (wish.finger) seen = with_finger({seen, scale}, layout, page, *labels);
        return seen;
    };
    if (!wish.eye_mm) return marked(std::move(picture));

    const PixelSize pixel{.across = layout.pitch_x() * (1.0 / scale),
                          .down = layout.pitch_y() * (1.0 / scale)};
    const auto through = [&](double acuity) {
        return marked(
            seen_by({.acuity = acuity, .distance = Millimetres{*wish.eye_mm}}, picture, pixel));
    };
    if (wish.acuity) return through(*wish.acuity);
    const auto words = [&](double acuity) {
        return "eye of " + number(acuity, 1) + " at " + number(*wish.eye_mm) + " mm";
    };
    return side_by_side({through(acuities[0]), through(acuities[1])},
                        {words(acuities[0]), words(acuities[1])},
                        scale,
                        *labels);
}

}  // namespace dialplate
