#include "sim/commands/loaded.hpp"

#include "sim/commands/terminal.hpp"
#include "sim/layout/reader.hpp"

#include <utility>

namespace dialplate {

std::optional<Loaded> load_and_build(const std::string& file) {
    Reading reading = load_layout(file);
    complain(file, reading.findings);
    if (!reading.layout) {
        return std::nullopt;
    }
    Building building = build_image(*reading.layout);
    complain(file, building.findings);
    if (!building.image) {
        return std::nullopt;
    }
    std::vector<Finding> findings = std::move(reading.findings);
    findings.insert(findings.end(), building.findings.begin(), building.findings.end());
    sort_by_place(findings);
    return Loaded{.layout = std::move(*reading.layout),
                  .built = std::move(*building.image),
                  .findings = std::move(findings)};
}

}  // namespace dialplate
