// Layout documents that the engine is timed with: every item kind, faces of each kind, packing and size, on
// glasses as large as real ones.
#pragma once

#include <cstdint>
#include <string>

namespace dialplate {

/// A document that the reader accepts. The same seed gives the same text on every machine; each seed draws
/// with only some of the faces and kinds, so that engines of many sets of parts are timed.
std::string timed_layout(std::uint32_t seed);

}  // namespace dialplate
