#include "sim/layout/reader.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

bool is_file(const fs::path& path) {
    std::error_code error;
    return fs::is_regular_file(path, error);
}

// Fonts that the system has installed, by file name alone. The alphabetically first path, so that the
// answer does not depend on the order in which a directory is stored.
std::string installed_font(const std::string& name) {
    const std::string ending = fs::path(name).extension().string();
    if (ending != ".ttf" && ending != ".otf" && ending != ".bdf") return {};
    std::string found;
    for (const char* root : {"/usr/local/share/fonts", "/usr/share/fonts"}) {
        std::error_code error;
        fs::recursive_directory_iterator each(
            root, fs::directory_options::skip_permission_denied, error);
        for (; !error && each != fs::recursive_directory_iterator(); each.increment(error)) {
            if (each->path().filename() != name || !is_file(each->path())) continue;
            const std::string path = each->path().string();
            if (found.empty() || path < found) found = path;
        }
        if (!found.empty()) break;
    }
    return found;
}

}  // namespace

std::string find_file(const std::string& directory, const std::string& name) {
    if (name.empty() || name.find('\0') != std::string::npos) return {};
    const fs::path written(name);
    if (written.is_absolute()) return is_file(written) ? name : std::string();
    const fs::path tree(DIALPLATE_TREE);
    for (const fs::path& root :
         {fs::path(directory.empty() ? "." : directory), tree / "fonts", tree / "layouts"}) {
        const fs::path path = root / written;
        if (is_file(path)) return path.lexically_normal().string();
    }
    return written.has_parent_path() ? std::string() : installed_font(name);
}

}  // namespace dialplate
