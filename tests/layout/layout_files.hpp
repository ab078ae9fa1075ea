// The fixtures of these tests, and where things are in them.
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/reader.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace dialplate {

inline const std::filesystem::path fixtures =
    std::filesystem::path(DIALPLATE_TREE) / "tests" / "layout" / "fixtures";

inline std::string contents(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

/// What was found, a line each.
inline std::string lines_of(const Reading& reading, const std::string& file = "x.json") {
    std::string lines;
    for (const Finding& finding : reading.findings)
        lines += gnu_line(file, finding) + '\n';
    return lines;
}

/// Line and column of a byte, both from 1: counted the plain way, from the start.
inline Place place_of(const std::string& text, std::size_t offset) {
    Place place{1, 1};
    for (std::size_t i = 0; i < offset && i < text.size(); ++i) {
        ++place.column;
        if (text[i] == '\n') place = {place.line + 1, 1};
    }
    return place;
}

}  // namespace dialplate
