#include "tests/house/include_direction.hpp"

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

/// A room, what of the house it may see besides itself, and the libraries that are its business.
struct Room {
    const char* folder;                  ///< From the top, without a final slash.
    std::vector<const char*> sees;       ///< Folders, or one file.
    std::vector<const char*> libraries;  ///< Beginnings of what stands between < and >.
};

/// Inner folders before outer ones: a file belongs to the first room whose folder it is in.
const std::vector<Room>& rooms() {
    static const std::vector<Room> table = {
        {"ui", {}, {"avr/", "util/"}},
        {"fonts", {"ui/image_format.hpp"}, {"SDL"}},
        {"sim/layout", {}, {"nlohmann/"}},
        {"sim/colour", {"sim/layout"}, {}},
        {"sim/edit", {"sim/layout"}, {"nlohmann/"}},
        {"sim/display", {"ui", "sim/layout"}, {}},
        {"sim/receiver", {"sim/layout"}, {}},
        {"sim/image", {"ui", "fonts", "sim/layout", "sim/colour"}, {"png.h"}},
        {"sim/prototype",
         {"ui", "fonts", "sim/layout", "sim/display", "sim/receiver", "sim/image"},
         {}},
        {"sim/emit",
         {"ui", "fonts", "sim/layout", "sim/display", "sim/receiver", "sim/image", "sim/prototype"},
         {}},
        {"sim/ledger",
         {"ui", "fonts", "sim/layout", "sim/display", "sim/receiver", "sim/image", "sim/prototype"},
         {}},
        {"sim/check",
         {"ui",
          "fonts",
          "sim/layout",
          "sim/colour",
          "sim/display",
          "sim/receiver",
          "sim/image",
          "sim/prototype",
          "sim/ledger"},
         {"nlohmann/"}},
        {"sim/look",
         {"ui",
          "fonts",
          "sim/layout",
          "sim/colour",
          "sim/display",
          "sim/receiver",
          "sim/image",
          "sim/prototype",
          "sim/ledger",
          "sim/check"},
         {}},
        {"sim/trial", {"sim/layout", "sim/receiver", "sim/edit"}, {}},
        {"sim/fit",
         {"ui",
          "fonts",
          "sim/layout",
          "sim/colour",
          "sim/display",
          "sim/receiver",
          "sim/image",
          "sim/prototype",
          "sim/ledger",
          "sim/check"},
         {"nlohmann/"}},
        {"sim/sheet", {"sim/layout", "sim/display", "sim/image", "sim/prototype"}, {"cairo"}},
        // A program of its own: libsimavr comes under another licence than the rest.
        {"sim/prove",
         {"ui",
          "fonts",
          "sim/layout",
          "sim/display",
          "sim/receiver",
          "sim/image",
          "sim/prototype",
          "sim/ledger",
          "sim/emit"},
         {"simavr/", "nlohmann/", "CLI/"}},
        {"sim/desk",
         {"ui",
          "fonts",
          "sim/layout",
          "sim/colour",
          "sim/display",
          "sim/receiver",
          "sim/image",
          "sim/prototype",
          "sim/ledger",
          "sim/check",
          "sim/look",
          "sim/edit",
          "sim/trial",
          "sim/emit"},
         {"SDL", "imgui", "backends/imgui_impl_sdl.h"}},
        // main.cpp and commands/: everything but the proof.
        {"sim",
         {"ui",
          "fonts",
          "sim/layout",
          "sim/colour",
          "sim/display",
          "sim/receiver",
          "sim/image",
          "sim/prototype",
          "sim/ledger",
          "sim/check",
          "sim/fit",
          "sim/look",
          "sim/edit",
          "sim/trial",
          "sim/emit",
          "sim/sheet",
          "sim/desk"},
         {"nlohmann/", "CLI/", "png.h", "SDL"}},
    };
    return table;
}

bool inside(const std::string& path, const std::string& folder) {
    return path == folder || path.rfind(folder + "/", 0) == 0;
}

const Room* room_of(const std::string& path) {
    for (const Room& room : rooms())
        if (inside(path, room.folder)) return &room;
    return nullptr;
}

/// A C or C++ library header has no folder and no capital: <vector>, <stdint.h>. POSIX brings sys/.
bool of_the_language(const std::string& name) {
    if (name.rfind("sys/", 0) == 0) return true;
    return std::all_of(name.begin(), name.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '.';
    });
}

std::string fault_of_library(const Room& room, const std::string& name) {
    for (const char* beginning : room.libraries)
        if (name.rfind(beginning, 0) == 0) return {};
    if (std::string{room.folder} == "ui") {
        if (name == "stdint.h" || name == "stddef.h") return {};
        return "ui/ has no library but <stdint.h>, <stddef.h>, <avr/...> and <util/...>, found <" +
               name + ">";
    }
    // png.h looks like a header of the language; only the rooms that list it may have it.
    if (of_the_language(name) && name != "png.h") return {};
    return "<" + name + "> is no business of " + room.folder + "/";
}

std::string fault_of_own(const fs::path& tree,
                         const Room& room,
                         const std::string& from,
                         const std::string& target) {
    const Room* other = room_of(target);
    if (other == nullptr)
        return "\"" + target + "\" is not written from the top of the tree (ui/, fonts/, sim/)";
    if (!fs::exists(tree / target)) return "\"" + target + "\" does not exist";
    if (other == &room) return {};
    for (const char* seen : room.sees)
        if (target == seen || std::string{other->folder} == seen) return {};
    return room_of(from)->folder + std::string{"/ may not see \""} + target + "\"";
}

bool is_source(const fs::path& path) {
    static const std::set<std::string> endings = {".hpp", ".h", ".cpp", ".c", ".ino"};
    return endings.count(path.extension().string()) != 0;
}

/// Follows text literals that run over several lines, R"x(...)x": what stands in them is no code.
class LongLiterals {
public:
    /// Whether a line begins inside one; looks at the line for where the next begin and end.
    bool begins_inside(const std::string& line) {
        const bool inside = !closing_.empty();
        for (std::size_t at = 0; at != std::string::npos;) {
            if (!closing_.empty()) {
                at = line.find(closing_, at);
                if (at == std::string::npos) break;
                at += closing_.size();
                closing_.clear();
            }
            at = line.find("R\"", at);
            if (at == std::string::npos) break;
            const std::size_t open = line.find('(', at + 2);
            if (open == std::string::npos) break;
            closing_ = ")" + line.substr(at + 2, open - at - 2) + "\"";
            at = open + 1;
        }
        return inside;
    }

private:
    std::string closing_;  ///< What ends the literal that is open; empty: none is.
};

}  // namespace

std::string gnu_line(const StrayInclude& stray) {
    return stray.file + ":" + std::to_string(stray.line) + ": error: " + stray.why +
           " [include-direction]";
}

std::vector<StrayInclude> stray_includes(const fs::path& tree) {
    std::vector<std::string> files;
    for (const char* top : {"ui", "fonts", "sim"}) {
        if (!fs::exists(tree / top)) continue;
        for (const fs::directory_entry& entry : fs::recursive_directory_iterator(tree / top))
            if (entry.is_regular_file() && is_source(entry.path()))
                files.push_back(fs::relative(entry.path(), tree).generic_string());
    }
    std::sort(files.begin(), files.end());

    std::vector<StrayInclude> strays;
    for (const std::string& file : files) {
        const Room& room = *room_of(file);
        std::ifstream in(tree / file);
        LongLiterals literals;
        std::string text;
        for (int line = 1; std::getline(in, text); ++line) {
            if (literals.begins_inside(text)) continue;
            std::size_t at = text.find_first_not_of(" \t");
            if (at == std::string::npos || text[at] != '#') continue;
            at = text.find_first_not_of(" \t", at + 1);
            if (at == std::string::npos || text.compare(at, 7, "include") != 0) continue;
            at = text.find_first_not_of(" \t", at + 7);
            if (at == std::string::npos) continue;
            const char closing = text[at] == '<' ? '>' : '"';
            const std::size_t end = text.find(closing, at + 1);
            if (end == std::string::npos) continue;
            const std::string name = text.substr(at + 1, end - at - 1);
            std::string why = closing == '>' ? fault_of_library(room, name)
                                             : fault_of_own(tree, room, file, name);
            if (!why.empty()) strays.push_back({file, line, std::move(why)});
        }
    }
    return strays;
}

}  // namespace dialplate
