#include "fonts/font_file.hpp"

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <string_view>

namespace dialplate::fonts {
namespace {

constexpr std::uintmax_t file_limit =
    64u << 20;  // bytes; the largest CJK collections have about 20 MiB

std::size_t number_at(std::string_view text, std::size_t at, int bytes) {
    std::size_t value = 0;
    for (int i = 0; i < bytes; ++i)
        value = value << 8 | static_cast<std::uint8_t>(text[at + static_cast<std::size_t>(i)]);
    return value;
}

// The table directory of one font: u32 version, u16 tables, 6 bytes, then 16 bytes a table that start
// with its tag. `at` is where it starts; a collection's first font starts elsewhere.
FontTraits read_table_directory(std::string_view text, std::size_t at) {
    FontTraits traits;
    if (at + 12 > text.size()) return traits;
    const std::size_t tables = number_at(text, at + 4, 2);
    for (std::size_t i = 0; i < tables && at + 12 + 16 * (i + 1) <= text.size(); ++i) {
        const std::string_view tag = text.substr(at + 12 + 16 * i, 4);
        if (tag == "glyf" || tag == "CFF " || tag == "CFF2") traits.outlines = true;
        if (tag == "CBDT" || tag == "sbix" || tag == "COLR" || tag == "SVG ")
            traits.coloured = true;
    }
    return traits;
}

FontTraits read_bdf(std::string_view text) {
    FontTraits traits;
    const std::string_view head = text.substr(0, text.find("\nCHARS "));
    constexpr std::string_view name = "\nPIXEL_SIZE ";
    const std::size_t at = head.find(name);
    if (at == std::string_view::npos) return traits;
    int size = 0;
    const char* number = head.data() + at + name.size();
    if (std::from_chars(number, head.data() + head.size(), size).ec == std::errc{})
        traits.pixel_size = size;
    return traits;
}

}  // namespace

FontTraits read_traits(const std::vector<std::uint8_t>& bytes) {
    const std::string_view text(reinterpret_cast<const char*>(bytes.data()), bytes.size());
    using namespace std::string_view_literals;
    if (text.starts_with("STARTFONT")) return read_bdf(text);
    if (text.starts_with("\0\1\0\0"sv) || text.starts_with("OTTO") || text.starts_with("true"))
        return read_table_directory(text, 0);
    if (text.starts_with("ttcf"))
        return text.size() < 16 ? FontTraits{} : read_table_directory(text, number_at(text, 12, 4));
    FontTraits traits;
    traits.outlines = text.starts_with("%!") || text.starts_with("\x80\x01");  // Type 1
    return traits;
}

FontFile read_font_file(const std::string& path) {
    FontFile file;
    std::error_code failure;
    const auto status = std::filesystem::status(path, failure);
    if (!std::filesystem::exists(status)) {
        file.error = "cannot read font \"" + path + "\": there is no such file";
        return file;
    }
    if (!std::filesystem::is_regular_file(status)) {
        file.error = "cannot read font \"" + path + "\": it is not a file";
        return file;
    }
    const std::uintmax_t size = std::filesystem::file_size(path, failure);
    if (failure || size == 0 || size > file_limit) {
        file.error = "cannot read font \"" + path + "\": " +
                     (failure     ? failure.message()
                      : size == 0 ? "it is empty"
                                  : "it has more than 64 MiB");
        return file;
    }
    file.bytes.resize(static_cast<std::size_t>(size));
    std::ifstream stream(path, std::ios::binary);
    errno = 0;
    if (!stream.read(reinterpret_cast<char*>(file.bytes.data()),
                     static_cast<std::streamsize>(size))) {
        file.error = "cannot read font \"" + path + "\"" +
                     (errno != 0 ? std::string(": ") + std::strerror(errno) : std::string());
        file.bytes.clear();
        return file;
    }
    file.traits = read_traits(file.bytes);
    return file;
}

}  // namespace dialplate::fonts
