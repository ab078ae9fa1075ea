// The bytes of a document before anything is made of them: how many, and whether they are UTF-8.
#pragma once

#include "sim/layout/mistakes.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace dialplate {

/// Greatest document that is read. A layout of 1,000 items has about 0.3 MiB.
constexpr std::size_t largest_document = std::size_t{4} << 20;

/// Reads a whole file, or standard input for "-". What prevents it (no such file, a folder, no
/// permission, more than largest_document bytes) becomes a mistake at the file as a whole.
std::optional<std::string> load_text(const std::string& path, Mistakes& mistakes);

/// Checks that `text` can be JSON at all: not too large, not empty, UTF-8 (RFC 3629: no overlong forms,
/// no surrogates, nothing above U+10FFFF), no byte-order mark.
/// @return the text behind a byte-order mark, if there is one; nullopt if parsing makes no sense.
std::optional<std::string_view> check_text(std::string_view text, Mistakes& mistakes);

/// Length of the well-formed UTF-8 sequence at the start of `text`, 1..4; 0 if there is none.
[[nodiscard]] std::size_t utf8_sequence(std::string_view text);

/// Number of characters in well-formed UTF-8.
[[nodiscard]] std::size_t characters(std::string_view text);

}  // namespace dialplate
