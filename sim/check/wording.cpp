#include "sim/check/wording.hpp"

#include <cstdio>
#include <utility>

namespace dialplate {

void add_finding(std::vector<Finding>& found,
                 Severity severity,
                 const std::string& pointer,
                 Figure figure,
                 std::string message,
                 const char* source) {
    add_finding(found, severity, pointer, std::move(message));
    Finding& finding = found.back();
    finding.measured = figure.measured;
    finding.required = figure.required;
    finding.unit = figure.unit;
    if (source != nullptr) finding.source = source;
}

void add_finding(std::vector<Finding>& found,
                 Severity severity,
                 const std::string& pointer,
                 std::string message) {
    Finding finding;
    finding.severity = severity;
    finding.pointer = pointer;
    finding.message = std::move(message);
    found.push_back(std::move(finding));
}

const char* word_of(ItemKind kind) {
    switch (kind) {
        case ItemKind::readout:
            return "readout";
        case ItemKind::key:
            return "key";
        case ItemKind::legend:
            return "legend";
        case ItemKind::lamp:
            return "lamp";
        case ItemKind::meter:
            return "meter";
        case ItemKind::scale:
            return "scale";
        case ItemKind::picture:
            return "picture";
        case ItemKind::frame:
            return "frame";
    }
    return "item";
}

std::string called(const Item& item) {
    const std::string kind = word_of(item.kind);
    if (item.name.empty()) return kind;
    if (item.name.starts_with(kind)) return item.name;
    return kind + " \"" + item.name + "\"";
}

std::string called(const Face& face) {
    return "face \"" + face.name + "\"";
}

std::string number(double value, int decimals) {
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", decimals, value);
    return text;
}

std::string short_number(double value) {
    std::string text = number(value, 3);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string with_unit(double value, std::string_view unit) {
    const bool close = unit.empty() || unit == "'" || unit == ":1";
    return short_number(value) + (close ? "" : " ") + std::string(unit);
}

std::string counted(long long count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

}  // namespace dialplate
