// The file emitted.txt: what was written into a directory, so that another emit knows its own files from
// others, and those that were changed from those that were not.
#pragma once

#include "sim/emit/emission.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace dialplate {

inline constexpr std::string_view manifest_name = "emitted.txt";

/// A fingerprint by file name.
using Manifest = std::map<std::string, std::string, std::less<>>;

/// Sixteen hexadecimal digits. Tells a changed file from an unchanged one, no more.
/// Source: FNV-1a, 64 bits (Fowler, Noll, Vo; constants as in RFC 9923).
std::string fingerprint(std::string_view bytes);

std::string manifest_text(const Manifest& manifest);

/// Empty: the text is no manifest.
std::optional<Manifest> read_manifest(std::string_view text);

}  // namespace dialplate
