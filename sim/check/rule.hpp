// What a rule is, and what it says of itself: what it computes, by which formula, where its figures come
// from and how far that can be trusted, and which of them a layout may set for itself.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/finding.hpp"
#include "sim/layout/layout.hpp"
#include "sim/ledger/ledger.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace dialplate {

/// What is checked: a layout that has been read without errors, its image and its account.
struct Subject {
    const Layout& layout;
    const BuiltImage& image;
    const Ledger& ledger;
};

/// How far a source can be trusted.
enum class Trust {
    read,         ///< Its text was seen.
    second_hand,  ///< An account of it was seen, not the text itself.
    memory,       ///< General knowledge; no text was seen. Not to be quoted as its author's words.
    derived,      ///< Arithmetic from other figures, or geometry.
    practice,     ///< Common practice; there is no source.
};

/// "read", "read, second-hand", "memory", "derived", "common practice, no source".
const char* name_of(Trust trust);

/// Where a figure or a formula comes from.
struct RuleSource {
    const char* text;  ///< "NUREG-0700 Rev. 2 (2002), 1.3.1-4: minimum height (LEG-05)"
    Trust trust = Trust::read;
};

/// A figure as the layout's profile has it: at the bench, with gloves on, or while moving.
struct ByProfile {
    double bench = 0, gloved = 0, mobile = 0;

    /// The same in every profile; a plain number stands for that.
    constexpr ByProfile(double all) : bench(all), gloved(all), mobile(all) {}
    constexpr ByProfile(double at_bench, double with_gloves, double on_the_move)
        : bench(at_bench), gloved(with_gloves), mobile(on_the_move) {}

    /// @param profile  "bench", "gloved" or "mobile"; empty: "bench".
    [[nodiscard]] double in(std::string_view profile) const;
};

/// A figure of a rule that a layout may set for itself: `"thresholds": {"touch-size": {"least_mm": 15}}`.
struct RuleFigure {
    const char* name;     ///< "least_mm": unique in its rule.
    const char* unit;     ///< "mm", "'" for minutes of arc, ":1"; empty for a plain number.
    const char* meaning;  ///< What it is the least or the most of; no full stop.
    ByProfile value;
    double lowest;  ///< What a layout may set it to, ends included.
    double highest;
};

/// One rule.
struct Rule {
    const char* name;      ///< "touch-size"; with underscores also the name of its file.
    const char* sentence;  ///< What it asks for, for people.
    const char* computed;  ///< What is measured, and on what; one to three sentences.
    const char* formula;   ///< In symbols that `computed` explains or that speak for themselves.
    /// At least one. Findings without a source of their own get the text of the first.
    std::span<const RuleSource> sources;
    std::span<const RuleFigure> figures;  ///< May be empty.
    /// Appends what it finds. Fills severity, pointer, figures and message; `check` adds the rest.
    void (*find)(const Subject&, std::vector<Finding>&);
};

/// All rules, in the order of the list.
std::span<const Rule> rules();

/// The rule of that name; null if there is none.
const Rule* rule_named(std::string_view name);

/// A figure of a rule, as it holds for a layout: what its "thresholds" say, else what its profile does.
/// Every rule reads its figures here.
/// @pre The rule has a figure of that name.
[[nodiscard]] double figure(const Layout& layout, const Rule& rule, std::string_view name);

/// What is wrong with the "thresholds" of a layout: rules and figures that there are not, with the one
/// probably meant, and values out of range. Of severity `error`.
std::vector<Finding> mistaken_thresholds(const Layout& layout);

}  // namespace dialplate
