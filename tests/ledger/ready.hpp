// A layout read, built and accounted for, for the tests of this room.
#pragma once

#include "sim/layout/reader.hpp"
#include "sim/ledger/ledger.hpp"

#include <gtest/gtest.h>

namespace dialplate {

struct Ready {
    Layout layout;
    BuiltImage built;
    Ledger ledger;
};

/// What is wrong with it fails the test.
inline Ready ready(const Reading& reading) {
    for (const Finding& finding : reading.findings) {
        ADD_FAILURE() << gnu_line("layout", finding);
    }
    Building building = build_image(reading.layout.value());
    for (const Finding& finding : building.findings) {
        ADD_FAILURE() << gnu_line("layout", finding);
    }
    Ready result{*reading.layout, building.image.value(), {}};
    result.ledger = account(result.layout, result.built);
    return result;
}

}  // namespace dialplate
