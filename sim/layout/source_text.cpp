#include "sim/layout/source_text.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>
#include <system_error>

namespace dialplate {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
// One wrong encoding spoils every accent of a file; the first few tell it all.
constexpr int most_bad_bytes = 20;

std::string megabytes() {
    return std::to_string(largest_document >> 20) + " MiB";
}

void too_large(Mistakes& mistakes) {
    mistakes.add({.rule = "too-large",
                  .message = "the file has more than " + megabytes() + "; a layout has at most " +
                             std::to_string(largest_document) + " bytes"});
}

std::string hexadecimal(unsigned char byte) {
    std::array<char, 8> text{};
    std::snprintf(text.data(), text.size(), "0x%02X", unsigned{byte});
    return text.data();
}

bool continues(char c) {
    return (static_cast<unsigned char>(c) & 0xC0) == 0x80;
}

void check_utf8(std::string_view text, Mistakes& mistakes) {
    Place place{1, 1};
    int bad = 0;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t length = utf8_sequence(text.substr(at));
        if (length == 0) {
            length = 1;
            if (++bad > most_bad_bytes) break;
            mistakes.add(
                {.rule = "utf8",
                 .place = place,
                 .message = "byte " + std::to_string(at + 1) + " of the file, " +
                            hexadecimal(static_cast<unsigned char>(text[at])) +
                            ", is not UTF-8; save the file as UTF-8" +
                            (bad == most_bad_bytes ? " (further bytes are not listed)" : "")});
        }
        if (text[at] == '\n') {
            ++place.line;
            place.column = 1;
        } else {
            place.column += static_cast<int>(length);
        }
        at += length;
    }
}

}  // namespace

std::optional<std::string> load_text(const std::string& path, Mistakes& mistakes) {
    const bool from_input = path == "-";
    const auto refuse = [&](const char* rule,
                            const std::string& why) -> std::optional<std::string> {
        mistakes.add({.rule = rule, .message = why});
        return std::nullopt;
    };
    std::error_code error;
    if (!from_input && std::filesystem::is_directory(path, error)) {
        return refuse("unreadable-file", "this is a folder; a layout is a JSON file");
    }
    std::FILE* const opened = from_input ? stdin : std::fopen(path.c_str(), "rb");
    if (opened == nullptr) {
        const bool missing = errno == ENOENT || errno == ENOTDIR;
        return refuse(missing ? "missing-file" : "unreadable-file",
                      missing ? "there is no such file"
                              : std::string("cannot open the file: ") + std::strerror(errno));
    }
    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> closer(
        from_input ? nullptr : opened, [](std::FILE* file) { return std::fclose(file); });
    std::string text;
    std::array<char, 65536> block{};
    while (text.size() <= largest_document) {
        const std::size_t count = std::fread(block.data(), 1, block.size(), opened);
        text.append(block.data(), count);
        if (count < block.size()) break;
    }
    if (std::ferror(opened) != 0) {
        return refuse("unreadable-file",
                      std::string("cannot read the file: ") + std::strerror(errno));
    }
    if (text.size() > largest_document) {
        too_large(mistakes);
        return std::nullopt;
    }
    return text;
}

std::optional<std::string_view> check_text(std::string_view text, Mistakes& mistakes) {
    if (text.size() > largest_document) {
        too_large(mistakes);
        return std::nullopt;
    }
    if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
        mistakes.add({.rule = "byte-order-mark",
                      .place = {1, 1},
                      .message = "the file begins with the byte-order mark of UTF-16; save it as "
                                 "UTF-8 without a mark"});
        return std::nullopt;
    }
    const std::size_t before = mistakes.count();
    check_utf8(text, mistakes);
    const bool readable = mistakes.count() == before;
    if (text.starts_with(byte_order_mark)) {
        mistakes.add({.rule = "byte-order-mark",
                      .place = {1, 1},
                      .message =
                          "the file begins with a byte-order mark (bytes EF BB BF); JSON has "
                          "none (RFC 8259, 8.1): save it as UTF-8 without a mark"});
        text.remove_prefix(byte_order_mark.size());
    }
    if (!readable) return std::nullopt;
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
        mistakes.add({.rule = "empty-file",
                      .place = {1, 1},
                      .message = "the file is empty; a layout is a JSON object { ... }"});
        return std::nullopt;
    }
    return text;
}

std::size_t utf8_sequence(std::string_view text) {
    if (text.empty()) return 0;
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char first = byte(0);
    if (first < 0x80) return 1;
    // RFC 3629, section 4: the second byte's range depends on the first.
    std::size_t length = 0;
    unsigned char least = 0x80, most = 0xBF;
    if (first >= 0xC2 && first <= 0xDF) {
        length = 2;
    } else if (first >= 0xE0 && first <= 0xEF) {
        length = 3;
        if (first == 0xE0) least = 0xA0;
        if (first == 0xED) most = 0x9F;
    } else if (first >= 0xF0 && first <= 0xF4) {
        length = 4;
        if (first == 0xF0) least = 0x90;
        if (first == 0xF4) most = 0x8F;
    } else {
        return 0;
    }
    if (text.size() < length || byte(1) < least || byte(1) > most) return 0;
    for (std::size_t i = 2; i < length; ++i) {
        if (!continues(text[i])) return 0;
    }
    return length;
}

std::size_t characters(std::string_view text) {
    std::size_t count = 0;
    for (const char c : text)
        count += continues(c) ? 0 : 1;
    return count;
}

}  // namespace dialplate
