// waiver-unused: a waiver accepts something. Here: those that name no rule at all; `apply_waivers` adds
// those that name a rule that had nothing to say.
#include "sim/check/rule_list.hpp"
#include "sim/check/waivers.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>

namespace dialplate {

namespace {

bool is_rule(const std::string& name) {
    const auto all = rules();
    return std::any_of(all.begin(), all.end(), [&](const Rule& r) { return name == r.name; });
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
        found.back().rule = "waiver-unused";
        found.back().source = "common practice, no source";
    }
}

void rule::waiver_unused(const Subject& subject, std::vector<Finding>& found) {
    for (const Waiver& waiver : subject.layout.waived) {
        if (is_rule(waiver.rule)) continue;
        add_finding(found,
                    Severity::should,
                    waiver.pointer,
                    "the waiver names the rule \"" + waiver.rule + "\", which there is not");
    }
}

}  // namespace dialplate
