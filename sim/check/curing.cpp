#include "sim/check/curing.hpp"

#include "sim/layout/amend.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

namespace dialplate {
namespace {

/// What a finding is about, whatever its figures say now.
using Matter = std::tuple<std::string, std::string>;

Matter matter_of(const Finding& finding) {
    return {finding.rule, finding.pointer};
}

bool curable(const Finding& finding) {
    return !finding.waived && !finding.cure.empty();
}

bool has_error(const std::vector<Finding>& findings) {
    return std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.severity == Severity::error;
    });
}

bool has(const std::vector<Finding>& findings, const Finding& wanted) {
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& finding) {
        return !finding.waived && finding.severity == wanted.severity &&
               matter_of(finding) == matter_of(wanted);
    });
}

/// Findings that count, by severity from `error` to `note`: compared in this order.
std::array<int, 4> weight_of(const std::vector<Finding>& findings) {
    std::array<int, 4> weight{};
    for (const Finding& finding : findings)
        if (!finding.waived) ++weight.at(static_cast<std::size_t>(finding.severity));
    return weight;
}

/// The first finding that the change made, worse than what it cures: none means it may stay.
const Finding* new_trouble(const std::vector<Finding>& before, const std::vector<Finding>& after) {
    for (const Finding& finding : after) {
        const bool grave =
            finding.severity == Severity::error || finding.severity == Severity::must;
        if (grave && !finding.waived && !has(before, finding)) return &finding;
    }
    return nullptr;
}

/// Why a change is not kept; empty when it is.
std::string objection(const Finding& cured,
                      const std::vector<Finding>& before,
                      const std::vector<Finding>& after) {
    if (const Finding* trouble = new_trouble(before, after))
        return "then " + trouble->message + " [" + trouble->rule + "]";
    // Removed elements of a list make room for others: what is gone is told by the count as well.
    if (weight_of(after) >= weight_of(before))
        return has(after, cured) ? "it would still be found" : "as much else would be found";
    return {};
}

const Finding* next_of(const std::vector<Finding>& findings, const std::set<Matter>& tried) {
    for (const Severity severity : {Severity::must, Severity::should, Severity::note})
        for (const Finding& finding : findings)
            if (finding.severity == severity && curable(finding) &&
                !tried.contains(matter_of(finding)))
                return &finding;
    return nullptr;
}

}  // namespace

Cured cure(std::string document, const Examine& examine) {
    Cured result;
    result.document = std::move(document);
    result.left = examine(result.document);
    if (has_error(result.left)) return result;
    std::set<Matter> tried;
    while (const Finding* next = next_of(result.left, tried)) {
        const Finding finding = *next;
        Amended amended = amend(result.document, finding.cure);
        if (!amended.text) {
            tried.insert(matter_of(finding));
            result.refused.push_back({finding, amended.mistake});
            continue;
        }
        std::vector<Finding> after = examine(*amended.text);
        if (std::string why = objection(finding, result.left, after); !why.empty()) {
            tried.insert(matter_of(finding));
            result.refused.push_back({finding, std::move(why)});
            continue;
        }
        result.cured.push_back(finding);
        result.document = std::move(*amended.text);
        result.left = std::move(after);
    }
    // What a later change cured on the way is not refused any more.
    std::erase_if(result.refused,
                  [&](const NotCured& refused) { return !has(result.left, refused.finding); });
    return result;
}

}  // namespace dialplate
