// The layouts that are run through the prototype: the examples, and the fixture that uses everything.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {

inline std::vector<std::string> example_files() {
    const std::filesystem::path tree = DIALPLATE_TREE;
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(tree / "layouts")) {
        const std::string name = entry.path().filename().string();
        if (name.ends_with(".json") && !name.ends_with(".schema.json"))
            files.push_back(entry.path());
    }
    files.push_back(tree / "tests/layout/fixtures/good/everything.json");
    std::sort(files.begin(), files.end());
    return files;
}

/// A name for a parameterised test.
inline std::string test_name(const testing::TestParamInfo<std::string>& info) {
    std::string name = std::filesystem::path(info.param).stem();
    std::replace_if(
        name.begin(),
        name.end(),
        [](char c) { return std::isalnum(static_cast<unsigned char>(c)) == 0; },
        '_');
    return name;
}

struct LoadedExample {
    Layout layout;
    BuiltImage image;
};

/// Reads and builds, or fails the test with what is wrong.
inline LoadedExample load_example(const std::string& file) {
    const Reading reading = load_layout(file);
    for (const Finding& f : reading.findings)
        ADD_FAILURE() << gnu_line(file, f);
    if (!reading.layout) return {};
    const Building building = build_image(*reading.layout);
    for (const Finding& f : building.findings)
        ADD_FAILURE() << gnu_line(file, f);
    if (!building.image) return {};
    return {*reading.layout, *building.image};
}

/// Whether two items of a page share pixels, frames aside: then pixels are written twice, as the rule
/// `overlap` says.
inline bool overlaps(const Layout& layout, int page) {
    const std::vector<Item>& items = layout.pages[static_cast<std::size_t>(page)].items;
    for (std::size_t a = 0; a < items.size(); ++a) {
        for (std::size_t b = a + 1; b < items.size(); ++b) {
            if (items[a].kind == ItemKind::frame || items[b].kind == ItemKind::frame) continue;
            const Box &p = items[a].box, &q = items[b].box;
            if (p.x < q.right() && q.x < p.right() && p.y < q.bottom() && q.y < p.bottom())
                return true;
        }
    }
    return false;
}

}  // namespace dialplate
