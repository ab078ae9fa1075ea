#include "sim/emit/engine_files.hpp"

#include "sim/emit/carried_files.hpp"

#include <algorithm>
#include <cassert>
#include <set>

namespace dialplate {
namespace {

const CarriedFile& carried(std::string_view name) {
    const auto& files = carried_files();
    const auto found = std::find_if(
        files.begin(), files.end(), [name](const CarriedFile& f) { return f.name == name; });
    assert(found != files.end());
    return *found;
}

std::string_view base_of(std::string_view name) {
    return name.substr(name.rfind('/') + 1);
}

/// The headers of the tree that a text includes.
std::vector<std::string_view> includes_of(std::string_view text) {
    constexpr std::string_view start = "\n#include \"";
    std::vector<std::string_view> names;
    for (std::size_t at = text.find(start); at != std::string_view::npos;
         at = text.find(start, at)) {
        at += start.size();
        names.push_back(text.substr(at, text.find('"', at) - at));
    }
    return names;
}

void replace_all(std::string& text, std::string_view from, std::string_view to) {
    for (std::size_t at = text.find(from); at != std::string::npos;
         at = text.find(from, at + to.size())) {
        text.replace(at, from.size(), to);
    }
}

/// Every mention of a file of the tree, in includes and comments, becomes its bare name.
std::string without_folders(std::string_view text) {
    std::string flat(text);
    for (const CarriedFile& file : carried_files()) {
        if (file.name.find('/') != std::string_view::npos) {
            replace_all(flat, file.name, base_of(file.name));
        }
    }
    return flat;
}

}  // namespace

std::vector<EmittedFile> engine_files(const std::vector<std::string>& roots) {
    std::set<std::string_view> wanted = {"LICENSE", "ui/image.md"};
    std::vector<std::string_view> left(roots.begin(), roots.end());
    while (!left.empty()) {
        const CarriedFile& file = carried(left.back());
        left.pop_back();
        if (!wanted.insert(file.name).second) continue;
        const std::vector<std::string_view> more = includes_of(file.text);
        left.insert(left.end(), more.begin(), more.end());
    }
    std::vector<EmittedFile> files;
    for (const std::string_view name : wanted) {
        files.push_back({.name = std::string(engine_folder) + std::string(base_of(name)),
                         .text = without_folders(carried(name).text)});
    }
    return files;
}

bool knows_controller(const std::string& type) {
    return carried("ui/mcu/controllers.hpp").text.find("struct " + type + " ") !=
           std::string_view::npos;
}

}  // namespace dialplate
