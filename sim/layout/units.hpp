// Quantities with a unit. Each is one number behind an explicit constructor, so that a length cannot
// be handed over as an angle, nor pixels as millimetres.
#pragma once

#include <compare>
#include <cstdint>

namespace dialplate {

/// A number that names its unit: adds to its own kind, scales by a plain number, compares; nothing
/// else compiles.
template <class Unit, class Number>
struct Quantity {
    Number value{};

    constexpr Quantity() = default;
    constexpr explicit Quantity(Number v) : value(v) {}

    friend constexpr auto operator<=>(const Quantity&, const Quantity&) = default;
    friend constexpr Quantity operator+(Quantity a, Quantity b) {
        return Quantity{static_cast<Number>(a.value + b.value)};
    }
    friend constexpr Quantity operator-(Quantity a, Quantity b) {
        return Quantity{static_cast<Number>(a.value - b.value)};
    }
    friend constexpr Quantity operator*(Quantity a, Number k) {
        return Quantity{static_cast<Number>(a.value * k)};
    }
    /// How often `b` goes into `a`; a plain number.
    friend constexpr double operator/(Quantity a, Quantity b) {
        return static_cast<double>(a.value) / static_cast<double>(b.value);
    }
    constexpr Quantity& operator+=(Quantity b) {
        value = static_cast<Number>(value + b.value);
        return *this;
    }
};

using Millimetres = Quantity<struct MillimetreUnit, double>;
using ArcMinutes = Quantity<struct ArcMinuteUnit, double>;
using Degrees = Quantity<struct DegreeUnit, double>;
using Lux = Quantity<struct LuxUnit, double>;
using Milliseconds = Quantity<struct MillisecondUnit, double>;
using Hertz = Quantity<struct HertzUnit, double>;
using Bytes = Quantity<struct ByteUnit, std::int64_t>;
using Cycles = Quantity<struct CycleUnit, std::int64_t>;
using Pixels = Quantity<struct PixelUnit, int>;

}  // namespace dialplate
