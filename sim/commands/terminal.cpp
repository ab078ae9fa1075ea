#include "sim/commands/terminal.hpp"

#include <cstdlib>
#include <iostream>
#include <unistd.h>

namespace dialplate {
namespace {

// Select Graphic Rendition, ECMA-48 8.3.117.
constexpr std::string_view plain = "\x1b[0m";
constexpr std::string_view bold_red = "\x1b[1;31m";
constexpr std::string_view bold_yellow = "\x1b[1;33m";
constexpr std::string_view bold_cyan = "\x1b[1;36m";

std::string_view tone_of(Severity severity) {
    switch (severity) {
        case Severity::error:
        case Severity::must:
            return bold_red;
        case Severity::should:
            return bold_yellow;
        case Severity::note:
            break;
    }
    return bold_cyan;
}

bool says_something(const char* variable) {
    const char* text = std::getenv(variable);
    return text != nullptr && *text != '\0';
}

}  // namespace

bool colour_on(Stream stream) {
    const int descriptor = stream == Stream::results ? STDOUT_FILENO : STDERR_FILENO;
    const char* terminal = std::getenv("TERM");
    return isatty(descriptor) == 1 && !says_something("NO_COLOR") && terminal != nullptr &&
           std::string_view{terminal} != "dumb";
}

void complain(std::string_view message) {
    if (colour_on(Stream::errors)) {
        std::cerr << "dialplate: " << bold_red << "error: " << plain << message << '\n';
    } else {
        std::cerr << "dialplate: error: " << message << '\n';
    }
}

void complain(const std::string& file, const std::vector<Finding>& findings) {
    const bool colour = colour_on(Stream::errors);
    for (const Finding& finding : findings) {
        std::string line = gnu_line(file, finding);
        const std::string word = std::string{name_of(finding.severity)} + ": ";
        const std::size_t at = line.find(word);
        if (colour && at != std::string::npos) {
            line.insert(at + word.size(), plain);
            line.insert(at, tone_of(finding.severity));
        }
        std::cerr << line << '\n';
    }
}

}  // namespace dialplate
