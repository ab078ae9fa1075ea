// What can happen on the receiver, done once each to a running prototype.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"
#include "sim/ledger/ledger.hpp"
#include "sim/prototype/prototype.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace dialplate {

/// An event and what it sent to the display.
struct Happening {
    EventKind kind = EventKind::value;
    int page = 0;
    std::string event;
    std::string what;
    Update update;
    EngineWork longest;  ///< Of the service that takes longest.
};

/// Plays each event of a layout on every page that shows it and keeps, for each, the page where it
/// sends most. In order: tuning step, worst carry, band change, other values, key press, pages.
/// Work grows with the items times the choices of what they show.
std::vector<Happening> play_events(const Layout& layout, const BuiltImage& built);

}  // namespace dialplate
