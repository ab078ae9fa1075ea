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

/// Of an affine map: glass = of_x * raw.x + of_y * raw.y + offset, in 1/65536.
/// Magnitudes: of_x and of_y together below 2 (131072), offset within 2000 pixels; a sheet of 12 bits
/// on glass up to 1023 pixels stays far below.
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

inline TouchAxis axis(
    const Differences& d, int16_t at1, int16_t at2, int16_t at3, const RawTouch& raw1) {
    const int32_t g13 = at1 - at3;
    const int32_t g23 = at2 - at3;
    const int32_t for_x = g13 * d.y23 - g23 * d.y13;
    const int32_t for_y = d.x13 * g23 - d.x23 * g13;
    TouchAxis result;
    result.of_x = quotient(d.turned ? -for_x : for_x, d.determinant);
    result.of_y = quotient(d.turned ? -for_y : for_y, d.determinant);
    result.offset = static_cast<int32_t>(at1) * 65536 - result.of_x * static_cast<int32_t>(raw1.x) -
                    result.of_y * static_cast<int32_t>(raw1.y);
    return result;
}

}  // namespace touch_solution

/// Twice the area of the triangle of three raw points below which they count as lying in a line: one
/// hundredth of that of targets at 10 and 90 % of a 10-bit sheet (0.8 * 1024)^2.
constexpr int32_t least_touch_triangle = 6710;

/// The map that takes three raw points to their three targets.
/// @return false, and `calibration` untouched, if the points lie in a line or the map is beyond the
///         magnitudes of TouchAxis.
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
    found.x =
        touch_solution::axis(d, samples[0].glass.x, samples[1].glass.x, samples[2].glass.x, a);
    found.y =
        touch_solution::axis(d, samples[0].glass.y, samples[1].glass.y, samples[2].glass.y, a);
    calibration = found;
    return true;
}

}  // namespace dialplate
