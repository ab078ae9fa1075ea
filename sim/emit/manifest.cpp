#include "sim/emit/manifest.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdio>

namespace dialplate {
namespace {

constexpr std::string_view first_line =
    "Written by dialplate: the files of this folder that it may write again, each with its "
    "fingerprint.";
constexpr std::size_t digits = 16;

/// A name that stays inside the directory.
bool is_inside(std::string_view name) {
    if (name.empty() || name.front() == '/') return false;
    for (std::size_t at = 0; at <= name.size();) {
        const std::size_t end = std::min(name.find('/', at), name.size());
        const std::string_view part = name.substr(at, end - at);
        if (part.empty() || part == "." || part == "..") return false;
        at = end + 1;
    }
    return true;
}

}  // namespace

std::string fingerprint(std::string_view bytes) {
    std::uint64_t hash = 0xCBF29CE484222325U;
    for (const char c : bytes) {
        hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001B3U;
    }
    char text[digits + 1];
    std::snprintf(text, sizeof text, "%016llx", static_cast<unsigned long long>(hash));
    return text;
}

std::string manifest_text(const Manifest& manifest) {
    std::string text = std::string(first_line) + '\n';
    for (const auto& [name, print] : manifest) {
        text += print + ' ' + name + '\n';
    }
    return text;
}

std::optional<Manifest> read_manifest(std::string_view text) {
    Manifest manifest;
    bool first = true;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        if (end == std::string_view::npos) return std::nullopt;
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(end + 1);
        if (first) {
            if (line != first_line) return std::nullopt;
            first = false;
            continue;
        }
        if (line.size() < digits + 2 || line[digits] != ' ' ||
            line.substr(0, digits).find_first_not_of("0123456789abcdef") !=
                std::string_view::npos ||
            !is_inside(line.substr(digits + 1))) {
            return std::nullopt;
        }
        manifest.emplace(line.substr(digits + 1), line.substr(0, digits));
    }
    if (first) return std::nullopt;
    return manifest;
}

}  // namespace dialplate
