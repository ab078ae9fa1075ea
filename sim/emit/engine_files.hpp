// The engine and a driver as files of a sketch.
#pragma once

#include "sim/emit/emission.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

/// The folder of a sketch that they go to. Arduino's tools compile `src`, and look for a header in quotes
/// beside the file that includes it; so all files lie in one folder and name each other without one.
inline constexpr std::string_view engine_folder = "src/dialplate/";

/// The headers `roots` ("ui/screen.hpp") with all that they include, the page on the image, the licence.
std::vector<EmittedFile> engine_files(const std::vector<std::string>& roots);

/// Whether ui/mcu/controllers.hpp has a type of this name.
bool knows_controller(const std::string& type);

}  // namespace dialplate
