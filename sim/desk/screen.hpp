// How fine the screen is that the window stands on: what true size is reckoned from.
#pragma once

#include <map>
#include <optional>
#include <string>

namespace dialplate {

/// A monitor as the operating system describes it.
struct Monitor {
    std::string name;
    int width = 0, height = 0;  ///< Screen pixels.
    std::optional<double> dots_per_inch;
};

struct MeasuredScreen {
    enum class Known {
        measured,  ///< With a card held to it.
        told,      ///< By the operating system, which believes what the monitor says of itself.
        guessed,   ///< 96 dots an inch: nobody says anything.
    };
    std::string monitor;         ///< Name and pixels: what a measurement is remembered by.
    double pixels_per_mm = 1.0;  ///< Of screen pixels, which are taken as square.
    Known known = Known::guessed;
    friend bool operator==(const MeasuredScreen&, const MeasuredScreen&) = default;
};

constexpr double least_pixels_per_mm = 1.5;  ///< 38 dots an inch: a wall of lamps.
constexpr double most_pixels_per_mm = 40.0;  ///< 1016 dots an inch: finer than any screen.

/// @param measured  Pixels a millimetre, by MeasuredScreen::monitor.
[[nodiscard]] MeasuredScreen screen_on(const Monitor& monitor,
                                       const std::map<std::string, double>& measured);

/// "3.78 pixels a mm, measured with a card"
[[nodiscard]] std::string words_of(const MeasuredScreen& screen);

}  // namespace dialplate
