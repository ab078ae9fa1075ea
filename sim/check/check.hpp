// The checks: rules that measure a layout and hold it against a published figure. One file for each rule,
// one list of them (rules.cpp); a rule named "touch-size" is computed in touch_size.cpp.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/finding.hpp"
#include "sim/layout/layout.hpp"
#include "sim/ledger/ledger.hpp"

#include <span>
#include <string>
#include <vector>

namespace dialplate {

/// What is checked: a layout that has been read without errors, its image and its account.
struct Subject {
    const Layout& layout;
    const BuiltImage& image;
    const Ledger& ledger;
};

/// One rule.
struct Rule {
    const char* name;      ///< "touch-size"; with underscores also the name of its file.
    const char* sentence;  ///< What it asks for, for people.
    const char*
        source;  ///< Where the figure comes from; findings without a source of their own get it.
    /// Appends what it finds. Fills severity, pointer, figures and message; `check` adds the rest.
    void (*find)(const Subject&, std::vector<Finding>&);
};

/// All rules, in the order of the list.
std::span<const Rule> rules();

/// Applies every rule, then the layout's waivers: a finding that a waiver accepts has `waived` filled
/// with the author's reason; a waiver that accepts nothing is itself a finding.
/// @return Sorted by place, then by rule.
std::vector<Finding> check(const Subject& subject);

/// Whether a finding counts: it was not waived.
[[nodiscard]] inline bool counts(const Finding& finding) {
    return !finding.waived.has_value();
}

}  // namespace dialplate
