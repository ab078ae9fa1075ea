#include "sim/colour/colour_space.hpp"

#include <cmath>
#include <numbers>

namespace dialplate {

namespace {

// White of sRGB: D65, 2-degree observer, as the matrix below gives it for equal parts of 1.
constexpr Xyz white{0.95047, 1.0, 1.08883};

constexpr double full_turn = 360.0;

double radians(double degrees) {
    return degrees * std::numbers::pi / 180.0;
}

/// Hue angle in degrees, 0 up to 360; 0 for a grey.
double hue(double a, double b) {
    if (a == 0.0 && b == 0.0) return 0.0;
    const double degrees = std::atan2(b, a) * 180.0 / std::numbers::pi;
    return degrees < 0.0 ? degrees + full_turn : degrees;
}

/// A lightness or chroma to the power 7, against 25 to that power: what makes greys and blues special.
double seventh_power_share(double chroma) {
    const double c7 = std::pow(chroma, 7.0);
    return std::sqrt(c7 / (c7 + std::pow(25.0, 7.0)));
}

/// Difference of two hues in degrees, the short way round; 0 when one of them is grey.
double hue_step(double from, double to, bool grey) {
    if (grey) return 0.0;
    const double step = to - from;
    if (step > 180.0) return step - full_turn;
    if (step < -180.0) return step + full_turn;
    return step;
}

/// Middle of two hues in degrees, the short way round; their sum when one of them is grey.
double hue_middle(double one, double other, bool grey) {
    if (grey) return one + other;
    const double sum = one + other;
    if (std::abs(one - other) <= 180.0) return sum / 2.0;
    return sum < full_turn ? (sum + full_turn) / 2.0 : (sum - full_turn) / 2.0;
}

double lab_curve(double t) {
    constexpr double edge = 6.0 / 29.0;
    return t > edge * edge * edge ? std::cbrt(t) : t / (3.0 * edge * edge) + 4.0 / 29.0;
}

}  // namespace

Xyz tristimulus(const LinearRgb& light) {
    return {.x = 0.4124564 * light.red + 0.3575761 * light.green + 0.1804375 * light.blue,
            .y = 0.2126729 * light.red + 0.7151522 * light.green + 0.0721750 * light.blue,
            .z = 0.0193339 * light.red + 0.1191920 * light.green + 0.9503041 * light.blue};
}

Chromaticity chromaticity(const LinearRgb& light) {
    const bool black = light.red <= 0.0 && light.green <= 0.0 && light.blue <= 0.0;
    const Xyz c = black ? white : tristimulus(light);
    const double sum = c.x + 15.0 * c.y + 3.0 * c.z;
    return {.u = 4.0 * c.x / sum, .v = 9.0 * c.y / sum};
}

double apart(const Chromaticity& a, const Chromaticity& b) {
    return std::hypot(a.u - b.u, a.v - b.v);
}

Lab lab(const LinearRgb& light) {
    const Xyz c = tristimulus(light);
    const double fx = lab_curve(c.x / white.x), fy = lab_curve(c.y / white.y);
    const double fz = lab_curve(c.z / white.z);
    return {.l = 116.0 * fy - 16.0, .a = 500.0 * (fx - fy), .b = 200.0 * (fy - fz)};
}

double ciede2000(const Lab& first, const Lab& second) {
    // Equations (2) to (22) of the paper, in its order; a prime there is an `s` for "stretched" here.
    const double c1 = std::hypot(first.a, first.b), c2 = std::hypot(second.a, second.b);
    const double stretch = 1.0 + 0.5 * (1.0 - seventh_power_share((c1 + c2) / 2.0));
    const double a1s = stretch * first.a, a2s = stretch * second.a;
    const double c1s = std::hypot(a1s, first.b), c2s = std::hypot(a2s, second.b);
    const double h1s = hue(a1s, first.b), h2s = hue(a2s, second.b);
    const bool grey = c1s * c2s == 0.0;

    const double dl = second.l - first.l;
    const double dc = c2s - c1s;
    const double dh =
        2.0 * std::sqrt(c1s * c2s) * std::sin(radians(hue_step(h1s, h2s, grey)) / 2.0);

    const double l_mean = (first.l + second.l) / 2.0;
    const double c_mean = (c1s + c2s) / 2.0;
    const double h_mean = hue_middle(h1s, h2s, grey);
    const double t = 1.0 - 0.17 * std::cos(radians(h_mean - 30.0)) +
                     0.24 * std::cos(radians(2.0 * h_mean)) +
                     0.32 * std::cos(radians(3.0 * h_mean + 6.0)) -
                     0.20 * std::cos(radians(4.0 * h_mean - 63.0));
    const double from_middle = (l_mean - 50.0) * (l_mean - 50.0);
    const double sl = 1.0 + 0.015 * from_middle / std::sqrt(20.0 + from_middle);
    const double sc = 1.0 + 0.045 * c_mean;
    const double sh = 1.0 + 0.015 * c_mean * t;
    const double around_blue = (h_mean - 275.0) / 25.0;
    const double turn = 30.0 * std::exp(-around_blue * around_blue);
    const double rt = -std::sin(radians(2.0 * turn)) * 2.0 * seventh_power_share(c_mean);

    const double l = dl / sl, c = dc / sc, h = dh / sh;
    return std::sqrt(l * l + c * c + h * h + rt * c * h);
}

}  // namespace dialplate
