#include "sim/check/report.hpp"

namespace dialplate {

Counts count(std::span<const Report> reports) {
    Counts counts;
    for (const Report& report : reports) {
        for (const Finding& finding : report.findings) {
            if (finding.waived) {
                ++counts.waived;
                continue;
            }
            switch (finding.severity) {
                case Severity::error:
                    ++counts.error;
                    break;
                case Severity::must:
                    ++counts.must;
                    break;
                case Severity::should:
                    ++counts.should;
                    break;
                case Severity::note:
                    ++counts.note;
                    break;
            }
        }
    }
    return counts;
}

int exit_status(std::span<const Report> reports) {
    const Counts counts = count(reports);
    if (counts.error > 0) return 2;
    return counts.must > 0 ? 1 : 0;
}

std::string report_lines(std::span<const Report> reports) {
    std::string text;
    for (const Report& report : reports) {
        for (const Finding& finding : report.findings) {
            text += gnu_line(report.file, finding);
            if (finding.waived) text += " (waived: " + *finding.waived + ")";
            text += '\n';
        }
    }
    const Counts counts = count(reports);
    if (counts.error > 0) text += std::to_string(counts.error) + " error, ";
    text += std::to_string(counts.must) + " must, " + std::to_string(counts.should) + " should, " +
            std::to_string(counts.note) + " note";
    if (counts.waived > 0) text += ", " + std::to_string(counts.waived) + " waived";
    return text + "\n";
}

}  // namespace dialplate
