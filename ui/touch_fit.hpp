// The affine map that fits more than three touches best: least squares. Done once, at bring-up, so it is
// the one place of this folder that computes in floating point; the engine does not include it, and a
// sketch that prints its raw touches can leave the sum to the PC.
#pragma once

#include "ui/touch_calibration.hpp"

#include <stdint.h>

namespace dialplate {

/// glass = of_x * raw.x + of_y * raw.y + offset, in real numbers.
template <class Number>
struct FittedAxis {
    Number of_x, of_y, offset;
};

template <class Number>
struct FittedTouch {
    FittedAxis<Number> x, y;
};

/// Minimises the sum of the squared distances between the mapped touches and their targets.
/// @param samples  `count` of them, count 3..255.
/// @tparam Number  double on the PC; float on a microcontroller, where double is no wider.
/// @return false, and `fitted` untouched, if all points lie (nearly) in a line.
/// Source: standards RES-06, RES-08 (Analog Devices AN-1021). Normal equations on coordinates from
///         their means, so that 24 bits of mantissa are enough.
template <class Number>
bool fit_touch(const TouchSample* samples, uint8_t count, FittedTouch<Number>& fitted) {
    Number mean_x = 0, mean_y = 0, mean_u = 0, mean_v = 0;
    for (uint8_t i = 0; i < count; ++i) {
        mean_x += static_cast<Number>(samples[i].raw.x);
        mean_y += static_cast<Number>(samples[i].raw.y);
        mean_u += static_cast<Number>(samples[i].glass.x);
        mean_v += static_cast<Number>(samples[i].glass.y);
    }
    const Number n = static_cast<Number>(count);
    mean_x /= n;
    mean_y /= n;
    mean_u /= n;
    mean_v /= n;

    Number xx = 0, xy = 0, yy = 0, xu = 0, yu = 0, xv = 0, yv = 0;
    for (uint8_t i = 0; i < count; ++i) {
        const Number x = static_cast<Number>(samples[i].raw.x) - mean_x;
        const Number y = static_cast<Number>(samples[i].raw.y) - mean_y;
        const Number u = static_cast<Number>(samples[i].glass.x) - mean_u;
        const Number v = static_cast<Number>(samples[i].glass.y) - mean_v;
        xx += x * x;
        xy += x * y;
        yy += y * y;
        xu += x * u;
        yu += y * u;
        xv += x * v;
        yv += y * v;
    }
    // 1 - (correlation of x and y) squared, times xx * yy: a thousandth of it is a line for a finger.
    const Number determinant = xx * yy - xy * xy;
    if (!(determinant > xx * yy / 1000)) {
        return false;
    }
    fitted.x.of_x = (xu * yy - yu * xy) / determinant;
    fitted.x.of_y = (yu * xx - xu * xy) / determinant;
    fitted.x.offset = mean_u - fitted.x.of_x * mean_x - fitted.x.of_y * mean_y;
    fitted.y.of_x = (xv * yy - yv * xy) / determinant;
    fitted.y.of_y = (yv * xx - xv * xy) / determinant;
    fitted.y.offset = mean_v - fitted.y.of_x * mean_x - fitted.y.of_y * mean_y;
    return true;
}

template <class Number>
bool round_axis(const FittedAxis<Number>& axis, TouchAxis& result) {
    const Number steep =
        (axis.of_x < 0 ? -axis.of_x : axis.of_x) + (axis.of_y < 0 ? -axis.of_y : axis.of_y);
    // The offset follows from the slopes; 9000 pixels is what the steepest map of a 12-bit sheet needs.
    if (!(steep < 2) || !(axis.offset < 9000) || !(axis.offset > -9000)) {
        return false;
    }
    const Number half = static_cast<Number>(0.5);
    const Number scaled[3] = {axis.of_x * 65536, axis.of_y * 65536, axis.offset * 65536};
    int32_t rounded[3];
    for (uint8_t i = 0; i < 3; ++i) {
        rounded[i] = static_cast<int32_t>(scaled[i] < 0 ? scaled[i] - half : scaled[i] + half);
    }
    result.of_x = rounded[0];
    result.of_y = rounded[1];
    result.offset = rounded[2];
    return true;
}

/// The fitted map as the integers that map_touch() takes.
/// @return false, and `calibration` untouched, if the map is steeper than a TouchAxis holds.
template <class Number>
bool round_touch(const FittedTouch<Number>& fitted, TouchCalibration& calibration) {
    TouchCalibration rounded;
    if (!round_axis(fitted.x, rounded.x) || !round_axis(fitted.y, rounded.y)) {
        return false;
    }
    calibration = rounded;
    return true;
}

}  // namespace dialplate
