// How long a digit of a readout takes to become another, estimated from what the engine does for it: for choices
// that are made before there is an image. The ledger has the times that are told.
#pragma once

#include "sim/layout/layout.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace dialplate {

/// The digits of a face as the image stores it, one glyph after the other from "0" on.
struct StoredDigits {
    const std::vector<std::uint8_t>& face;
    int zero = 0;  ///< Number of the glyph "0".
    int count = 10;
};

/// Weighs all pairs of digits on the engine's own code.
/// @return  True if they take less by what differs (ui/changed_runs.hpp) on the whole, and none takes an eighth
///          more than its cell. Only for faces in plain, runs or segment.
bool changed_runs_pay(const StoredDigits& digits);

/// What a pixel takes on the layout's bus, in cycles.
struct PixelTimes {
    double sent = 0.0;
    /// Of a glyph in `context`, where the driver decides it while it sends.
    std::optional<double> decided{};
    /// Rows of what differs go out by their edges: a run takes nothing beside its pixels.
    bool by_edges = false;
};
PixelTimes pixel_times(const Layout& layout);

/// Half of the pairs take so long or less, drawn whole or by what differs: cycles of the ATmega328P.
/// Of a face of one bit; by what differs where changed_runs_pay(), but not of segments.
double median_change(const StoredDigits& digits, const PixelTimes& pixel, bool by_what_differs);

}  // namespace dialplate
