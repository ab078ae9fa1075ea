#include "sim/desk/screen.hpp"

#include <cstdio>

namespace dialplate {
namespace {

constexpr double mm_an_inch = 25.4;
/// What desktops assume where no monitor tells its size (CSS Values and Units: a pixel is 1/96 inch).
constexpr double usual_dots_per_inch = 96.0;

bool plausible(double pixels_per_mm) {
    return pixels_per_mm >= least_pixels_per_mm && pixels_per_mm <= most_pixels_per_mm;
}

}  // namespace

MeasuredScreen screen_on(const Monitor& monitor, const std::map<std::string, double>& measured) {
    MeasuredScreen screen;
    screen.monitor =
        monitor.name + " " + std::to_string(monitor.width) + "x" + std::to_string(monitor.height);
    if (const auto found = measured.find(screen.monitor); found != measured.end()) {
        screen.pixels_per_mm = found->second;
        screen.known = MeasuredScreen::Known::measured;
    } else if (monitor.dots_per_inch && plausible(*monitor.dots_per_inch / mm_an_inch)) {
        screen.pixels_per_mm = *monitor.dots_per_inch / mm_an_inch;
        screen.known = MeasuredScreen::Known::told;
    } else {
        screen.pixels_per_mm = usual_dots_per_inch / mm_an_inch;
    }
    return screen;
}

std::string words_of(const MeasuredScreen& screen) {
    char words[96];
    switch (screen.known) {
        case MeasuredScreen::Known::measured:
            std::snprintf(words,
                          sizeof words,
                          "%.3g pixels a mm, measured with a card",
                          screen.pixels_per_mm);
            break;
        case MeasuredScreen::Known::told:
            std::snprintf(words,
                          sizeof words,
                          "an estimate: the system says %.0f dots an inch",
                          screen.pixels_per_mm * mm_an_inch);
            break;
        case MeasuredScreen::Known::guessed:
            std::snprintf(words,
                          sizeof words,
                          "a guess: %.0f dots an inch, as is usual",
                          screen.pixels_per_mm * mm_an_inch);
            break;
    }
    return words;
}

}  // namespace dialplate
