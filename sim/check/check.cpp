#include "sim/check/check.hpp"

#include "sim/check/waivers.hpp"

namespace dialplate {

namespace {

/// Where a pointer stands in the file; a member that was not written stands where its item does.
Place place_of(const Layout& layout, std::string pointer) {
    while (true) {
        const auto found = layout.places.find(pointer);
        if (found != layout.places.end()) return found->second;
        const std::size_t cut = pointer.rfind('/');
        if (cut == std::string::npos) return {};
        pointer.erase(cut);
    }
}

std::vector<Finding> judged(const Subject& subject) {
    std::vector<Finding> found;
    for (const Rule& rule : rules()) {
        const std::size_t before = found.size();
        rule.find(subject, found);
        for (std::size_t i = before; i < found.size(); ++i) {
            found[i].rule = rule.name;
            if (found[i].source.empty()) found[i].source = rule.sources.front().text;
        }
    }
    apply_waivers(subject.layout, found);
    return found;
}

}  // namespace

std::vector<Finding> check(const Subject& subject) {
    std::vector<Finding> found = mistaken_thresholds(subject.layout);
    if (found.empty()) found = judged(subject);
    for (Finding& finding : found)
        finding.place = place_of(subject.layout, finding.pointer);
    sort_by_place(found);
    return found;
}

}  // namespace dialplate
