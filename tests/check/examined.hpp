// A layout document examined as the program does it: read, built, accounted for and checked.
#pragma once

#include "sim/check/check.hpp"
#include "sim/layout/reader.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace dialplate::sample {

/// Everything that is found in a document; mistakes of the document fail the test.
inline std::vector<Finding> examined(const std::string& document) {
    const Reading reading = read_layout(document, "sample.json", DIALPLATE_TREE "/layouts");
    for (const Finding& finding : reading.findings)
        ADD_FAILURE() << gnu_line("sample.json", finding);
    if (!reading.layout) return {};
    const Building building = build_image(*reading.layout);
    for (const Finding& finding : building.findings)
        ADD_FAILURE() << gnu_line("sample.json", finding);
    if (!building.image) return {};
    const Ledger ledger = account(*reading.layout, *building.image);
    return check({.layout = *reading.layout, .image = *building.image, .ledger = ledger});
}

/// What one rule finds in a document.
inline std::vector<Finding> examined_by(const std::string& rule, const std::string& document) {
    std::vector<Finding> kept;
    for (const Finding& finding : examined(document))
        if (finding.rule == rule) kept.push_back(finding);
    return kept;
}

}  // namespace dialplate::sample
