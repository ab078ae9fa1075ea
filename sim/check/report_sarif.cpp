// Findings as a SARIF log. Source of the member names: OASIS Standard "Static Analysis Results
// Interchange Format (SARIF) Version 2.1.0".
#include "sim/check/check.hpp"
#include "sim/check/report.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace dialplate {

namespace {

using Json = nlohmann::ordered_json;

const char* level_of(Severity severity) {
    switch (severity) {
        case Severity::error:
        case Severity::must:
            return "error";
        case Severity::should:
            return "warning";
        case Severity::note:
            return "note";
    }
    return "none";
}

/// A file name as a URI reference: everything but the unreserved characters and the slash is escaped
/// (RFC 3986, 2.3), so that a colon cannot be taken for a scheme.
std::string as_uri(const std::string& file) {
    constexpr const char* digits = "0123456789ABCDEF";
    std::string uri;
    for (const char c : file) {
        const auto byte = static_cast<unsigned char>(c);
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                           (c >= '0' && c <= '9') || c == '-' || c == '.' || c == '_' || c == '~' ||
                           c == '/';
        if (plain) {
            uri += c;
        } else {
            uri += '%';
            uri += digits[byte >> 4];
            uri += digits[byte & 15u];
        }
    }
    return uri;
}

Json rule_list() {
    Json list = Json::array();
    for (const Rule& rule : rules()) {
        list.push_back(
            {{"id", rule.name},
             {"shortDescription", {{"text", rule.sentence}}},
             {"help", {{"text", std::string("Source: ") + rule.sources.front().text + "."}}}});
    }
    return list;
}

/// Place of a rule in the list, or none for mistakes of reading.
std::optional<std::size_t> index_of(const std::string& rule) {
    const auto all = rules();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Rule& r) { return rule == r.name; });
    if (found == all.end()) return std::nullopt;
    return static_cast<std::size_t>(found - all.begin());
}

Json location_of(const std::string& file, const Finding& finding) {
    Json physical{{"artifactLocation", {{"uri", as_uri(file)}}}};
    if (finding.place.line > 0) {
        physical["region"] = {{"startLine", finding.place.line},
                              {"startColumn", std::max(1, finding.place.column)}};
    }
    Json location{{"physicalLocation", std::move(physical)}};
    if (!finding.pointer.empty()) {
        location["logicalLocations"] =
            Json::array({{{"fullyQualifiedName", finding.pointer}, {"kind", "member"}}});
    }
    return location;
}

Json result_of(const std::string& file, const Finding& finding) {
    Json result{{"ruleId", finding.rule}};
    if (const auto index = index_of(finding.rule)) result["ruleIndex"] = *index;
    result["level"] = level_of(finding.severity);
    result["message"] = {{"text", finding.message}};
    result["locations"] = Json::array({location_of(file, finding)});
    if (finding.waived) {
        result["suppressions"] =
            Json::array({{{"kind", "inSource"}, {"justification", *finding.waived}}});
    }
    Json properties{{"severity", name_of(finding.severity)}, {"source", finding.source}};
    if (finding.measured) properties["measured"] = *finding.measured;
    if (finding.required) properties["required"] = *finding.required;
    if (!finding.unit.empty()) properties["unit"] = finding.unit;
    result["properties"] = std::move(properties);
    return result;
}

}  // namespace

std::string report_sarif(std::span<const Report> reports) {
    Json results = Json::array();
    for (const Report& report : reports)
        for (const Finding& finding : report.findings)
            results.push_back(
                result_of(finding.file.empty() ? report.file : finding.file, finding));
    Json run{{"tool", {{"driver", {{"name", "dialplate"}, {"rules", rule_list()}}}}},
             {"columnKind", "unicodeCodePoints"},
             {"results", std::move(results)}};
    const Json log{{"$schema",
                    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/"
                    "sarif-schema-2.1.0.json"},
                   {"version", "2.1.0"},
                   {"runs", Json::array({std::move(run)})}};
    return log.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace dialplate
