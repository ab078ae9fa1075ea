// Findings as JSON, in the order in which they are reported.
#include "sim/check/report.hpp"
#include "sim/layout/amend.hpp"

#include <nlohmann/json.hpp>

namespace dialplate {

namespace {

using Json = nlohmann::ordered_json;

template <class Number>
Json or_null(const std::optional<Number>& value) {
    return value ? Json(*value) : Json(nullptr);
}

/// The changes that cure a finding, as a JSON Patch (RFC 6902).
Json patch_of(const Finding& finding) {
    Json patch = Json::array();
    for (const Change& change : finding.cure) {
        Json operation{{"op", name_of(change.kind)}, {"path", change.pointer}};
        if (change.kind != Change::Kind::remove)
            operation["value"] = Json::parse(change.value, nullptr, false);
        patch.push_back(std::move(operation));
    }
    return patch;
}

}  // namespace

std::string report_json(std::span<const Report> reports) {
    Json findings = Json::array();
    for (const Report& report : reports) {
        for (const Finding& finding : report.findings) {
            findings.push_back({{"file", finding.file.empty() ? report.file : finding.file},
                                {"rule", finding.rule},
                                {"severity", name_of(finding.severity)},
                                {"item", finding.pointer},
                                {"line", finding.place.line},
                                {"column", finding.place.column},
                                {"measured", or_null(finding.measured)},
                                {"required", or_null(finding.required)},
                                {"unit", finding.unit},
                                {"message", finding.message},
                                {"source", finding.source},
                                {"waived", or_null(finding.waived)},
                                {"cure", patch_of(finding)}});
        }
    }
    const Counts counts = count(reports);
    const Json document{{"findings", std::move(findings)},
                        {"counts",
                         {{"error", counts.error},
                          {"must", counts.must},
                          {"should", counts.should},
                          {"note", counts.note},
                          {"waived", counts.waived}}}};
    // Names of files need not be UTF-8; what is not is replaced, so that the result always is.
    return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace dialplate
