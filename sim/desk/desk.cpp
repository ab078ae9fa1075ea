#include "sim/desk/desk.hpp"

#include <cstdio>

namespace dialplate {

int open_window(const std::string& layout_file, const WindowWish&) {
    std::fprintf(stderr, "%s: error: the window is not built yet\n", layout_file.c_str());
    return 2;
}

}  // namespace dialplate
