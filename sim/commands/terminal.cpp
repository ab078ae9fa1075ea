#include "sim/commands/terminal.hpp"

#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <sstream>
#include <sys/ioctl.h>
#include <unistd.h>
#include <utility>

namespace dialplate {
namespace {

// Select Graphic Rendition, ECMA-48 8.3.117.
constexpr std::string_view plain = "\x1b[0m";
constexpr std::string_view bold = "\x1b[1m";
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

bool on_terminal(Stream stream) {
    return isatty(stream == Stream::results ? STDOUT_FILENO : STDERR_FILENO) == 1;
}

bool colour_on(Stream stream) {
    const char* terminal = std::getenv("TERM");
    return on_terminal(stream) && !says_something("NO_COLOR") && terminal != nullptr &&
           std::string_view{terminal} != "dumb";
}

int columns_of_results() {
    constexpr int usual = 100, least = 60, most = 160;  // beyond that, lines are hard to follow
    winsize size{};
    if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return usual;
    return std::clamp(static_cast<int>(size.ws_col), least, most);
}

std::string toned(Severity severity, const std::string& words, bool colour) {
    return colour ? std::string{tone_of(severity)} + words + std::string{plain} : words;
}

std::string emphasised(const std::string& words, bool colour) {
    return colour ? std::string{bold} + words + std::string{plain} : words;
}

void complain(std::string_view message) {
    if (colour_on(Stream::errors)) {
        std::cerr << "dialplate: " << bold_red << "error: " << plain << message << '\n';
    } else {
        std::cerr << "dialplate: error: " << message << '\n';
    }
}

std::string tinted(std::string lines, bool colour) {
    if (!colour) {
        return lines;
    }
    std::string out;
    std::istringstream in(lines);
    for (std::string line; std::getline(in, line);) {
        for (const Severity severity :
             {Severity::error, Severity::must, Severity::should, Severity::note}) {
            // Behind the place and before the message, both of which end in a colon.
            const std::string word = std::string{": "} + name_of(severity) + ": ";
            const std::size_t at = line.find(word);
            if (at != std::string::npos) {
                line.insert(at + word.size() - 1, plain);
                line.insert(at + 2, tone_of(severity));
                break;
            }
        }
        out += line + '\n';
    }
    return out;
}

void complain(const std::string& file, const std::vector<Finding>& findings) {
    std::string lines;
    for (const Finding& finding : findings) {
        lines += gnu_line(file, finding) + '\n';
    }
    std::cerr << tinted(std::move(lines), colour_on(Stream::errors));
}

}  // namespace dialplate
