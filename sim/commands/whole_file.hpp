// A file that is written whole or not at all.
#pragma once

#include <cstdint>
#include <span>
#include <string>

namespace dialplate {

/// Writes `bytes` to a file beside the target and renames it over the target, so that a reader sees
/// the old content or the new one and a failure leaves the old one. What is not a regular file
/// (a pipe, a device) is written directly; "-" is standard output.
/// @return Empty, or one sentence that says what went wrong.
std::string write_whole(const std::string& path, std::span<const std::uint8_t> bytes);

}  // namespace dialplate
