// The sources that the program carries: the engine, its bus drivers, the page on the image, the licence.
#pragma once

#include <string_view>
#include <vector>

namespace dialplate {

struct CarriedFile {
    std::string_view name;  ///< From the top of the tree: "ui/mcu/pin.hpp".
    std::string_view text;
};

/// In order of their names, the licence last.
const std::vector<CarriedFile>& carried_files();

}  // namespace dialplate
