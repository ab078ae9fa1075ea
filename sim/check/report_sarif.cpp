// Findings as a SARIF log. Source of the member names: OASIS Standard "Static Analysis Results
// Interchange Format (SARIF) Version 2.1.0".
#include "sim/check/check.hpp"
#include "sim/check/explanation.hpp"
#include "sim/check/report.hpp"
#include "sim/layout/amend.hpp"
#include "sim/layout/source_text.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <optional>
#include <string_view>
#include <utility>

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
    constexpr int help_width = 100;
    Json list = Json::array();
    for (const Rule& rule : rules()) {
        list.push_back({{"id", rule.name},
                        {"shortDescription", {{"text", rule.sentence}}},
                        {"fullDescription", {{"text", rule.computed}}},
                        {"help", {{"text", explained(rule, nullptr, help_width)}}}});
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

/// The column in code points, from 1, of a place whose column counts bytes.
/// @return nullopt when the text has no such place.
std::optional<std::size_t> column_in_characters(std::string_view text, const Place& place) {
    for (int line = 1; line < place.line; ++line) {
        const std::size_t end = text.find('\n');
        if (end == std::string_view::npos) return std::nullopt;
        text.remove_prefix(end + 1);
    }
    const auto before = static_cast<std::size_t>(std::max(1, place.column)) - 1;
    if (text.empty() || before > text.size()) return std::nullopt;
    return characters(text.substr(0, before)) + 1;
}

Json location_of(const Report& report, const Finding& finding) {
    const std::string& file = finding.file.empty() ? report.file : finding.file;
    Json physical{{"artifactLocation", {{"uri", as_uri(file)}}}};
    if (finding.place.line > 0) {
        physical["region"] = {{"startLine", finding.place.line}};
        if (const auto column = finding.file.empty()
                                    ? column_in_characters(report.text, finding.place)
                                    : std::nullopt)
            physical["region"]["startColumn"] = *column;
    }
    Json location{{"physicalLocation", std::move(physical)}};
    if (!finding.pointer.empty()) {
        location["logicalLocations"] =
            Json::array({{{"fullyQualifiedName", finding.pointer}, {"kind", "value"}}});
    }
    return location;
}

/// A part of the text, which `value` points into, as a region with both its ends.
Json region_of(std::string_view text, std::string_view value) {
    const auto at = [&](const char* end) {
        const std::string_view before = text.substr(0, static_cast<std::size_t>(end - text.data()));
        const std::size_t feed = before.rfind('\n');
        const auto line = std::count(before.begin(), before.end(), '\n') + 1;
        const std::size_t begin = feed == std::string_view::npos ? 0 : feed + 1;
        return std::pair{line, characters(before.substr(begin)) + 1};
    };
    const auto [start_line, start_column] = at(value.data());
    const auto [end_line, end_column] = at(value.data() + value.size());
    return {{"startLine", start_line},
            {"startColumn", start_column},
            {"endLine", end_line},
            {"endColumn", end_column}};  // 3.30.8: one past the last character
}

/// What cures a finding, as replacements of text; null unless all of it replaces values that are there.
Json fixes_of(const Report& report, const Finding& finding) {
    Json replacements = Json::array();
    for (const Change& change : finding.cure) {
        const auto written = written_at(report.text, change.pointer);
        if (change.kind != Change::Kind::replace || !written) return nullptr;
        replacements.push_back({{"deletedRegion", region_of(report.text, *written)},
                                {"insertedContent", {{"text", change.value}}}});
    }
    if (replacements.empty()) return nullptr;
    const Json file{{"artifactLocation", {{"uri", as_uri(report.file)}}},
                    {"replacements", std::move(replacements)}};
    return Json::array({{{"artifactChanges", Json::array({file})}}});
}

Json result_of(const Report& report, const Finding& finding) {
    Json result{{"ruleId", finding.rule}};
    if (const auto index = index_of(finding.rule)) result["ruleIndex"] = *index;
    result["level"] = level_of(finding.severity);
    result["message"] = {{"text", finding.message}};
    result["locations"] = Json::array({location_of(report, finding)});
    if (finding.waived) {
        result["suppressions"] =
            Json::array({{{"kind", "inSource"}, {"justification", *finding.waived}}});
    }
    if (Json fixes = fixes_of(report, finding); !fixes.is_null())
        result["fixes"] = std::move(fixes);
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
            results.push_back(result_of(report, finding));
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
