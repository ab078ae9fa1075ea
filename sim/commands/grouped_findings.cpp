#include "sim/commands/grouped_findings.hpp"

#include "sim/check/check.hpp"
#include "sim/check/folding.hpp"
#include "sim/commands/terminal.hpp"

#include <algorithm>
#include <vector>

namespace dialplate {
namespace {

using Findings = std::vector<const Finding*>;

/// The rules of some findings in the order of the list, others (mistakes of reading) behind them.
std::vector<std::string> rules_in(const Findings& findings) {
    std::vector<std::string> names;
    const auto add = [&](const std::string& name) {
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    };
    for (const Rule& rule : rules())
        for (const Finding* finding : findings)
            if (finding->rule == rule.name) add(finding->rule);
    for (const Finding* finding : findings)
        add(finding->rule);
    return names;
}

const char* sentence_of(const std::string& name) {
    for (const Rule& rule : rules())
        if (name == rule.name) return rule.sentence;
    return "";
}

std::string place_of(const Finding& finding) {
    std::string place = finding.file.empty() ? "" : finding.file + ":";
    if (finding.place.line > 0)
        place += std::to_string(finding.place.line) + ":" + std::to_string(finding.place.column);
    return place;
}

std::string by_rule(const Findings& findings, const Sheet& sheet) {
    int place_width = 0;
    for (const Finding* finding : findings)
        place_width = std::max(place_width, static_cast<int>(place_of(*finding).size()));
    const int indent = 4 + place_width + 2;
    std::string text;
    for (const std::string& name : rules_in(findings)) {
        // Folded as one text, so that the name takes its room on the first line.
        const std::string heading = folded(name + " " + sentence_of(name), sheet.width - 4, 4);
        const std::string sentence = heading.substr(name.size());
        text += "\n  " + emphasised(name, sheet.colour) + (sentence.empty() ? "" : " ") + sentence +
                '\n';
        for (const Finding* finding : findings) {
            if (finding->rule != name) continue;
            text += up_to(indent, "    " + place_of(*finding));
            text += folded(finding->message, sheet.width - indent, indent) + '\n';
            if (finding->waived)
                text += std::string(static_cast<std::size_t>(indent), ' ') +
                        folded("accepted: " + *finding->waived, sheet.width - indent, indent) +
                        '\n';
        }
    }
    return text;
}

std::string counts_in_words(const Report& report) {
    const Counts counts = count({&report, 1});
    std::string text;
    const auto add = [&](int number, const char* word) {
        if (number > 0) text += (text.empty() ? "" : ", ") + std::to_string(number) + " " + word;
    };
    add(counts.error, "error");
    add(counts.must, "must");
    add(counts.should, "should");
    add(counts.note, "note");
    add(counts.waived, "waived");
    return text.empty() ? "nothing found" : text;
}

}  // namespace

std::string grouped_findings(std::span<const Report> reports, const Sheet& sheet) {
    std::string text;
    for (const Report& report : reports) {
        text += (text.empty() ? "" : "\n") + emphasised(report.file, sheet.colour) + "  " +
                counts_in_words(report) + '\n';
        for (const Severity severity :
             {Severity::error, Severity::must, Severity::should, Severity::note}) {
            Findings group;
            for (const Finding& finding : report.findings)
                if (finding.severity == severity && counts(finding)) group.push_back(&finding);
            if (group.empty()) continue;
            text += '\n' + toned(severity, name_of(severity), sheet.colour) + '\n' +
                    by_rule(group, sheet).substr(1);
        }
        Findings accepted;
        for (const Finding& finding : report.findings)
            if (!counts(finding)) accepted.push_back(&finding);
        if (!accepted.empty())
            text += '\n' + emphasised("waived", sheet.colour) + '\n' +
                    by_rule(accepted, sheet).substr(1);
    }
    return text;
}

}  // namespace dialplate
