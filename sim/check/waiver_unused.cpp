// waiver-unused: a waiver accepts something. Here: those that name no rule at all; `apply_waivers` adds
// those that name a rule that had nothing to say.
#include "sim/check/rule_list.hpp"
#include "sim/check/waivers.hpp"
#include "sim/check/wording.hpp"

namespace dialplate {

namespace {

bool is_rule(const std::string& name) {
    return rule_named(name) != nullptr;
}

constexpr RuleSource waiver_unused_sources[] = {
    {"common practice, no source", Trust::practice},
};

void find_waiver_unused(const Subject& subject, std::vector<Finding>& found) {
    for (const Waiver& waiver : subject.layout.waived) {
        if (is_rule(waiver.rule)) continue;
        add_finding(found,
                    Severity::should,
                    waiver.pointer,
                    "the waiver names the rule \"" + waiver.rule + "\", which there is not");
    }
}

}  // namespace

bool accepts(const Waiver& waiver, const Finding& finding) {
    if (finding.severity == Severity::error || waiver.rule != finding.rule) return false;
    if (!finding.pointer.starts_with(waiver.item)) return false;
    const std::size_t length = waiver.item.size();
    return length == 0 || finding.pointer.size() == length || finding.pointer[length] == '/';
}

void apply_waivers(const Layout& layout, std::vector<Finding>& found) {
    std::vector<bool> used(layout.waived.size(), false);
    for (Finding& finding : found) {
        for (std::size_t i = 0; i < layout.waived.size(); ++i) {
            if (!accepts(layout.waived[i], finding)) continue;
            used[i] = true;
            if (!finding.waived) finding.waived = layout.waived[i].reason;
        }
    }
    for (std::size_t i = 0; i < layout.waived.size(); ++i) {
        const Waiver& waiver = layout.waived[i];
        if (used[i] || !is_rule(waiver.rule)) continue;
        add_finding(found,
                    Severity::should,
                    waiver.pointer,
                    "the waiver of rule \"" + waiver.rule + "\"" +
                        (waiver.item.empty() ? "" : " for " + waiver.item) +
                        " accepts nothing: the rule finds nothing there; leave it out");
        found.back().rule = rule::waiver_unused.name;
        found.back().source = waiver_unused_sources[0].text;
        found.back().cure.push_back({.kind = Change::Kind::remove, .pointer = waiver.pointer});
    }
}

const Rule rule::waiver_unused{
    .name = "waiver-unused",
    .sentence = "Every waiver accepts something.",
    .computed =
        "Waivers whose rule finds nothing at their item, or that name a rule that there is not.",
    .formula = "findings accepted > 0",
    .sources = waiver_unused_sources,
    .figures = {},
    .find = find_waiver_unused,
};

}  // namespace dialplate
