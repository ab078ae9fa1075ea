// Texts as JSON writes them.
#pragma once

#include <string>
#include <string_view>

namespace dialplate {

/// A text with its quotes and escapes (RFC 8259, section 7). Bytes that are not UTF-8 become U+FFFD.
[[nodiscard]] std::string json_text(std::string_view text);

}  // namespace dialplate
