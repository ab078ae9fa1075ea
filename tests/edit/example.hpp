// The examples as texts, trees and layouts, for the tests of this room.
#pragma once

#include "sim/edit/schema.hpp"
#include "sim/layout/mistakes.hpp"
#include "sim/layout/reader.hpp"

#include <fstream>
#include <iterator>
#include <string>

namespace dialplate {

inline const std::string layouts_folder = std::string{DIALPLATE_TREE} + "/layouts";

inline std::string layouts_text(const std::string& name) {
    std::ifstream in(layouts_folder + "/" + name, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

inline Node tree(const std::string& text) {
    std::vector<Finding> findings;
    Mistakes mistakes(findings);
    return parse_json(text, mistakes).value_or(Node{});
}

inline const Schema& layout_schema() {
    static const Schema read = *Schema::read(layouts_text("layout.schema.json"));
    return read;
}

/// The first mistake of a document, as a compiler writes it; empty if there is none.
inline std::string mistake_in(const std::string& text) {
    for (const Finding& finding : read_layout(text, "example.json", layouts_folder).findings)
        if (finding.severity == Severity::error) return gnu_line("example.json", finding);
    return {};
}

}  // namespace dialplate
