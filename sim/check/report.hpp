// Findings as text: lines for people and editors, JSON, and SARIF 2.1.0.
#pragma once

#include "sim/layout/finding.hpp"

#include <span>
#include <string>
#include <vector>

namespace dialplate {

/// The findings of one layout file: of reading, of building and of the rules.
struct Report {
    std::string file;  ///< As given on the command line.
    std::vector<Finding> findings;
    /// The document, for formats that count columns in characters; may be empty.
    std::string text{};
};

/// Findings that count, by severity: without the waived ones.
struct Counts {
    int error = 0, must = 0, should = 0, note = 0, waived = 0;
};
Counts count(std::span<const Report> reports);

/// The exit status: 2 when a file could not be used (`error`), 1 with a `must`, else 0.
int exit_status(std::span<const Report> reports);

/// One line a finding, `file:line:column: severity: message [rule]`, waived ones with their reason,
/// and at the end a line that counts them. Every line ends in a line feed.
std::string report_lines(std::span<const Report> reports);

/// {"findings": [{"file", "rule", "severity", "item", "line", "column", "measured", "required", "unit",
/// "message", "source", "waived", "cure"}], "counts": {"error", "must", "should", "note", "waived"}}. Figures
/// that a finding does not have are null; "cure" is a JSON Patch (RFC 6902), empty where there is none.
std::string report_json(std::span<const Report> reports);

/// A log for code-scanning tools: OASIS SARIF 2.1.0, with all rules of the list and every finding as
/// a result; a waived one is suppressed with its reason. Columns count characters (code points), for which
/// the report's text is needed: without it, and in part files, only the line is given. Cures that replace
/// values stand as fixes.
std::string report_sarif(std::span<const Report> reports);

}  // namespace dialplate
