#include "sim/layout/mistakes.hpp"

#include <array>
#include <cstdio>
#include <string_view>

namespace dialplate {
namespace {

constexpr std::size_t longest_quotation = 60;

}  // namespace

void Mistakes::add(Mistake mistake) {
    Finding finding;
    finding.severity = Severity::error;
    finding.rule = std::move(mistake.rule);
    finding.pointer = std::move(mistake.pointer);
    finding.place = mistake.place;
    finding.file = file_;
    finding.message = std::move(mistake.message);
    findings_.push_back(std::move(finding));
}

std::string quote(std::string_view text) {
    std::string result = "\"";
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        const bool begins_character = (byte & 0xC0) != 0x80;
        if (i >= longest_quotation && begins_character) return result + "...\"";
        if (byte == '\n') {
            result += "\\n";
        } else if (byte < 0x20 || byte == 0x7F) {
            std::array<char, 8> escape{};
            std::snprintf(escape.data(), escape.size(), "\\u%04X", unsigned{byte});
            result += escape.data();
        } else {
            result += text[i];
        }
    }
    return result + '"';
}

}  // namespace dialplate
