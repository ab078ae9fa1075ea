#include "sim/layout/finding.hpp"

#include <algorithm>
#include <tuple>

namespace dialplate {

void sort_by_place(std::vector<Finding>& findings) {
    // Stable: of two findings with one place and one rule the first found stays first. The layout's own
    // (no file name) stand before those of a part file.
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
        return std::tie(a.file, a.place.line, a.place.column, a.rule) <
               std::tie(b.file, b.place.line, b.place.column, b.rule);
    });
}

std::string gnu_line(const std::string& file, const Finding& finding) {
    std::string line = finding.file.empty() ? file : finding.file;
    if (finding.place.line > 0) {
        line += ':' + std::to_string(finding.place.line);
        if (finding.place.column > 0) line += ':' + std::to_string(finding.place.column);
    }
    line += ": ";
    line += name_of(finding.severity);
    line += ": " + finding.message + " [" + finding.rule + ']';
    return line;
}

const char* name_of(Severity severity) {
    switch (severity) {
        case Severity::error:
            return "error";
        case Severity::must:
            return "must";
        case Severity::should:
            return "should";
        case Severity::note:
            return "note";
    }
    return "error";
}

}  // namespace dialplate
