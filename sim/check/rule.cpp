#include "sim/check/rule.hpp"

#include "sim/check/wording.hpp"
#include "sim/layout/mistakes.hpp"
#include "sim/layout/suggestion.hpp"

#include <algorithm>
#include <cassert>
#include <string>

namespace dialplate {

namespace {

/// A number without needless zeros: `9.2`, `15`.
std::string plain(double value) {
    std::string text = number(value, 3);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

/// `9.2 mm`, `4.5:1`, `16'`.
std::string with_unit(double value, std::string_view unit) {
    const bool close = unit.empty() || unit == "'" || unit == ":1";
    return plain(value) + (close ? "" : " ") + std::string(unit);
}

const RuleFigure* figure_of(const Rule& rule, std::string_view name) {
    const auto found = std::find_if(rule.figures.begin(),
                                    rule.figures.end(),
                                    [&](const RuleFigure& each) { return name == each.name; });
    return found == rule.figures.end() ? nullptr : &*found;
}

template <class List>
std::vector<std::string_view> names_of(const List& list) {
    std::vector<std::string_view> names;
    for (const auto& each : list)
        names.push_back(each.name);
    return names;
}

std::string did_you_mean(std::string_view wrong, const std::vector<std::string_view>& names) {
    const std::string_view meant = nearest(wrong, names);
    return meant.empty() ? "" : "; did you mean " + quote(meant) + "?";
}

std::string listed(const std::vector<std::string_view>& names) {
    std::string text;
    for (const std::string_view name : names)
        text += (text.empty() ? "" : ", ") + std::string(name);
    return text;
}

Finding mistake(const char* kind, const Threshold& threshold, std::string message) {
    Finding finding;
    finding.severity = Severity::error;
    finding.rule = kind;
    finding.pointer = threshold.pointer;
    finding.message = std::move(message);
    return finding;
}

}  // namespace

const char* name_of(Trust trust) {
    switch (trust) {
        case Trust::read:
            return "read";
        case Trust::second_hand:
            return "read, second-hand";
        case Trust::memory:
            return "memory";
        case Trust::derived:
            return "derived";
        case Trust::practice:
            return "common practice, no source";
    }
    return "";
}

double ByProfile::in(std::string_view profile) const {
    if (profile == "gloved") return gloved;
    if (profile == "mobile") return mobile;
    return bench;
}

const Rule* rule_named(std::string_view name) {
    for (const Rule& rule : rules())
        if (name == rule.name) return &rule;
    return nullptr;
}

double figure(const Layout& layout, const Rule& rule, std::string_view name) {
    const RuleFigure* const found = figure_of(rule, name);
    assert(found != nullptr);
    // The last one holds, as with members of the same name in a document.
    for (auto set = layout.thresholds.rbegin(); set != layout.thresholds.rend(); ++set)
        if (set->figure == name && set->rule == rule.name) return set->value;
    return found->value.in(layout.profile);
}

std::vector<Finding> mistaken_thresholds(const Layout& layout) {
    std::vector<Finding> mistakes;
    for (const Threshold& threshold : layout.thresholds) {
        const Rule* const rule = rule_named(threshold.rule);
        if (rule == nullptr) {
            const std::string suggestion = did_you_mean(threshold.rule, names_of(rules()));
            mistakes.push_back(mistake("unknown-rule",
                                       threshold,
                                       "\"thresholds\" names the rule " + quote(threshold.rule) +
                                           ", which there is not" + suggestion));
            continue;
        }
        const RuleFigure* const of_rule = figure_of(*rule, threshold.figure);
        if (of_rule == nullptr) {
            const auto names = names_of(rule->figures);
            const std::string suggestion = did_you_mean(threshold.figure, names);
            mistakes.push_back(
                mistake("unknown-figure",
                        threshold,
                        "rule " + quote(threshold.rule) + " has no figure " +
                            quote(threshold.figure) + (suggestion.empty() ? ";" : suggestion) +
                            (names.empty() ? " it has none" : " there are " + listed(names))));
            continue;
        }
        if (threshold.value >= of_rule->lowest && threshold.value <= of_rule->highest) continue;
        mistakes.push_back(mistake("out-of-range",
                                   threshold,
                                   quote(threshold.figure) + " of rule " + quote(threshold.rule) +
                                       " is " + plain(threshold.value) + "; allowed are " +
                                       plain(of_rule->lowest) + " to " +
                                       with_unit(of_rule->highest, of_rule->unit)));
    }
    return mistakes;
}

}  // namespace dialplate
