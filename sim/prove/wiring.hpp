// Which pin is wired to what.
#pragma once

#include "sim/layout/layout.hpp"

#include <array>
#include <optional>

namespace dialplate {

/// A pin of the microcontroller: port letter and bit, as PB5 is {'B', 5}.
struct PinPlace {
    char port = 'B';
    int bit = 0;
    friend bool operator==(const PinPlace&, const PinPlace&) = default;
};

/// The display's lines. Data and clock of the serial buses are where the microcontroller has them.
struct DisplayWiring {
    BusKind bus = BusKind::spi;
    PinPlace data_or_command{'B', 1};
    std::optional<PinPlace> select = PinPlace{'B', 0};  ///< Absent: wired to ground.
    PinPlace write{'B', 2};                             ///< parallel8: strobe.
    std::array<PinPlace, 8> data{{{'D', 0},
                                  {'D', 1},
                                  {'D', 2},
                                  {'D', 3},
                                  {'D', 4},
                                  {'D', 5},
                                  {'D', 6},
                                  {'D', 7}}};  ///< parallel8: data line n.
};

}  // namespace dialplate
