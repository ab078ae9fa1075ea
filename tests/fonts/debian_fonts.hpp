// Fonts of three Debian packages to test with.
#pragma once

#include "tests/fonts/drawings.hpp"

#include <string>
#include <vector>

namespace dialplate {

// Sans, serif and fixed, regular, bold, narrow and slanted.
inline std::vector<std::string> debian_fonts() {
    return {dejavu + "DejaVuSans.ttf",
            dejavu + "DejaVuSans-Bold.ttf",
            dejavu + "DejaVuSansMono.ttf",
            dejavu + "DejaVuSansMono-Bold.ttf",
            dejavu + "DejaVuSerif.ttf",
            dejavu + "DejaVuSerif-Bold.ttf",
            liberation + "LiberationSans-Regular.ttf",
            liberation + "LiberationSans-Bold.ttf",
            liberation + "LiberationSans-Italic.ttf",
            liberation + "LiberationSansNarrow-Regular.ttf",
            liberation + "LiberationSansNarrow-Bold.ttf",
            liberation + "LiberationSerif-Regular.ttf",
            liberation + "LiberationSerif-Bold.ttf",
            liberation + "LiberationSerif-Italic.ttf",
            liberation + "LiberationSerif-BoldItalic.ttf",
            liberation + "LiberationMono-Regular.ttf",
            liberation + "LiberationMono-Bold.ttf",
            liberation + "LiberationMono-Italic.ttf",
            b612 + "B612-Regular.otf",
            b612 + "B612-Bold.otf",
            b612 + "B612Mono-Regular.otf",
            b612 + "B612Mono-Bold.otf"};
}

}  // namespace dialplate
