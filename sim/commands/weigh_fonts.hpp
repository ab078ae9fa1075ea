// Fonts at sizes with sets of characters: what each packing takes, how large it is at the eye, how long a digit takes.
#pragma once

#include "fonts/face.hpp"
#include "sim/layout/layout.hpp"

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// What is to be weighed: every font at every size with every set.
struct WeighWish {
    std::vector<std::string> fonts;
    std::vector<int> sizes;            ///< As drawn, in pixels.
    std::vector<std::u32string> sets;  ///< Characters, at least one each.
    Display display;
    Millimetres distance{500.0};  ///< Eye to glass.
    bool smooth = false;          ///< Outlines in four tones as well.
    unsigned threads = 0;         ///< 0: one for each core.
    std::function<void(std::size_t done, std::size_t all)> progress{};
};

/// A face in one packing.
struct PackedWeight {
    std::size_t bytes = 0;              ///< With metrics; 0: it does not fit that packing.
    std::optional<Milliseconds> digit;  ///< One digit of a read-out changes to another.
};

/// One font at one size with one set.
struct WeighedFace {
    std::string file;
    int size = 0;      ///< As drawn.
    int enlarged = 1;  ///< From a face of size / enlarged.
    std::size_t set = 0;
    RasterFace face;
    std::vector<char32_t> missing;
    std::size_t cropped = 0;               ///< The yardstick: cropped_bytes() in one bit.
    std::array<PackedWeight, 3> packings;  ///< By Packing.
    std::optional<ArcMinutes> angle;       ///< Of a capital or digit.

    /// Of the packings that it fits.
    [[nodiscard]] std::size_t smallest() const;
};

struct Weighing {
    std::vector<WeighedFace> faces;     ///< In the order asked for; what cannot be had is left out.
    std::vector<std::string> mistakes;  ///< One sentence each.
};

/// The receiver whose time a digit takes is an ATmega328P of 16 MHz with hardware SPI of 8 MHz, timed.
Weighing weigh_fonts(const WeighWish& wish);

}  // namespace dialplate
