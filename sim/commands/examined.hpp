// Everything that can be found out about one layout: as far as it can be used.
#pragma once

#include "sim/check/report.hpp"

#include <string>

namespace dialplate {

/// Reads, builds and checks a layout file; "-" is standard input. Findings are sorted by place.
Report examine(const std::string& file);

/// The same of a document in memory.
/// @param file  Name for messages; files named in the document are looked up beside it.
Report examine_text(const std::string& text, const std::string& file);

}  // namespace dialplate
