// How long the microcontroller is busy with what was sent: the bus, and what the engine does besides.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/ledger/draw_terms.hpp"
#include "sim/ledger/events.hpp"
#include "sim/ledger/ledger.hpp"

namespace dialplate {

/// What a call of the engine's service function takes on the receiver.
class ServiceTime {
public:
    /// @param layout  Must outlive this.
    /// @param parts   Of its engine.
    ServiceTime(const Layout& layout, PartSet parts);
    /// Linear: of several calls together, as much as of each.
    [[nodiscard]] double cycles(const EngineWork& work) const;

private:
    const Layout& layout_;
    DrawingEngine engine_;
    double
        factor_;  ///< Of this microcontroller's cycles for one of the ATmega328P, in the engine's own work.
};

/// Fills in bytes, cycles, times and their standing.
EventTime timed(const Happening& happening, const Layout& layout, PartSet parts);

}  // namespace dialplate
