// From counts of a touch sheet to pixels of the glass: an affine map, so that offset, scale, mirrored
// axes, exchanged axes and a sheet that was glued on askew are all one thing (standards RES-03).
#pragma once

#include "ui/touch_reading.hpp"

#include <stdint.h>

namespace dialplate {

/// A point of the glass, in pixels; may lie outside it, as the sheet is larger than the glass.
struct GlassPoint {
    int16_t x;
    int16_t y;
};

/// Where a target was drawn and what the sheet gave when it was touched.
struct TouchSample {
    RawTouch raw;      ///< 0..4095.
    GlassPoint glass;  ///< 0..1023.
};

constexpr int32_t steepest_touch = 131072;  // 2 pixels a count.

/// Of an affine map: glass = of_x * raw.x + of_y * raw.y + offset, in 1/65536.
/// The magnitudes of of_x and of_y together are below `steepest_touch`, so that with 12 bits and glass of
/// 1023 pixels no sum leaves 32 bits; 480 pixels on a whole 10-bit sheet are 0.47 a count.
struct TouchAxis {
    int32_t of_x;
    int32_t of_y;
    int32_t offset;
};

/// Six numbers, 24 bytes: what a sketch keeps in EEPROM.
struct TouchCalibration {
    TouchAxis x;
    TouchAxis y;
};

/// @return Nearest pixel, half upwards; within 0.57 of the map in real numbers: half a pixel of
///         rounding, and 4095 counts on each axis times half a unit of the coefficients.
inline int16_t map_axis(const TouchAxis& axis, const RawTouch& raw) {
    const int32_t sum = axis.of_x * static_cast<int32_t>(raw.x) +
                        axis.of_y * static_cast<int32_t>(raw.y) + axis.offset;
    return static_cast<int16_t>((sum + 32768) >> 16);
}

/// @param raw  Each 0..4095.
inline GlassPoint map_touch(const TouchCalibration& calibration, const RawTouch& raw) {
    return GlassPoint{map_axis(calibration.x, raw), map_axis(calibration.y, raw)};
}

namespace touch_solution {

/// numerator / denominator in 1/65536, rounded to the nearest; by long division, since 64-bit division is
/// dear on an 8-bit machine.
/// @pre 0 < denominator < 2^30, |numerator / denominator| < 16384.
inline int32_t quotient(int32_t numerator, int32_t denominator) {
    const bool negative = numerator < 0;
    const uint32_t by = static_cast<uint32_t>(denominator);
    uint32_t rest =
        negative ? 0u - static_cast<uint32_t>(numerator) : static_cast<uint32_t>(numerator);
    uint32_t result = rest / by;
    rest %= by;
    for (uint8_t bit = 0; bit < 16; ++bit) {
        rest <<= 1;
        result <<= 1;
        if (rest >= by) {
            rest -= by;
            result |= 1;
        }
    }
    if (rest >= by - rest) {
        ++result;
    }
    return negative ? -static_cast<int32_t>(result) : static_cast<int32_t>(result);
}

struct Differences {
    int32_t x13, y13, x23, y23;  // Raw, point 3 subtracted.
    int32_t determinant;         // Positive: both sides are turned over where it is not.
    bool turned;
};

inline int32_t magnitude(int32_t number) {
    return number < 0 ? -number : number;
}

/// @return false if the axis is too steep.
inline bool solve(const Differences& d,
                  const int16_t (&at)[3],
                  const RawTouch& first,
                  TouchAxis& result) {
    const int32_t g13 = at[0] - at[2];
    const int32_t g23 = at[1] - at[2];
    const int32_t for_x = g13 * d.y23 - g23 * d.y13;
    const int32_t for_y = d.x13 * g23 - d.x23 * g13;
    result.of_x = quotient(d.turned ? -for_x : for_x, d.determinant);
    result.of_y = quotient(d.turned ? -for_y : for_y, d.determinant);
    if (magnitude(result.of_x) + magnitude(result.of_y) >= steepest_touch) {
        return false;
    }
    result.offset = static_cast<int32_t>(at[0]) * 65536 -
                    result.of_x * static_cast<int32_t>(first.x) -
                    result.of_y * static_cast<int32_t>(first.y);
    return true;
}

}  // namespace touch_solution

/// Twice the area of the triangle of three raw points below which they count as lying in a line: one
/// hundredth of that of targets at 10 and 90 % of a 10-bit sheet (0.8 * 1024)^2.
constexpr int32_t least_touch_triangle = 6710;

/// The map that takes three raw points to their three targets.
/// @return false, and `calibration` untouched, if the points lie in a line or the map is steeper than a
///         TouchAxis holds.
/// Source: standards RES-04 (layout from memory), checked by RES-05: TI Analog Applications Journal,
///         Fang and Chang, "Calibration in touch-screen systems", SLYT277.
inline bool calibrate_touch(const TouchSample (&samples)[3], TouchCalibration& calibration) {
    const RawTouch& a = samples[0].raw;
    const RawTouch& b = samples[1].raw;
    const RawTouch& c = samples[2].raw;
    touch_solution::Differences d;
    d.x13 = static_cast<int32_t>(a.x) - static_cast<int32_t>(c.x);
    d.y13 = static_cast<int32_t>(a.y) - static_cast<int32_t>(c.y);
    d.x23 = static_cast<int32_t>(b.x) - static_cast<int32_t>(c.x);
    d.y23 = static_cast<int32_t>(b.y) - static_cast<int32_t>(c.y);
    d.determinant = d.x13 * d.y23 - d.x23 * d.y13;
    d.turned = d.determinant < 0;
    if (d.turned) {
        d.determinant = -d.determinant;
    }
    if (d.determinant < least_touch_triangle) {
        return false;
    }
    TouchCalibration found;
    const int16_t xs[3] = {samples[0].glass.x, samples[1].glass.x, samples[2].glass.x};
    const int16_t ys[3] = {samples[0].glass.y, samples[1].glass.y, samples[2].glass.y};
    if (!touch_solution::solve(d, xs, a, found.x) || !touch_solution::solve(d, ys, a, found.y)) {
        return false;
    }
    calibration = found;
    return true;
}

}  // namespace dialplate
