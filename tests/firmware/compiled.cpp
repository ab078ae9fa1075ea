#include "tests/firmware/compiled.hpp"

#include <cctype>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <set>
#include <sstream>
#include <stdexcept>
#include <unistd.h>
#include <vector>

namespace dialplate {
namespace {

constexpr const char* flags =
    " -DF_CPU=16000000UL -std=c++14 -Os -ffunction-sections -fdata-sections -fno-exceptions "
    "-fno-rtti"
    " -fno-threadsafe-statics -Wl,--gc-sections -mrelax -flto ";
constexpr int arena = 64;          // as in engine_size.cpp
constexpr int return_address = 2;  // on a part with up to 128 KiB

std::string output_of(const std::string& command) {
    std::string text;
    FILE* pipe = ::popen((command + " 2>&1").c_str(), "r");
    if (pipe == nullptr) {
        throw std::runtime_error("cannot run " + command);
    }
    char part[4096];
    for (std::size_t n = 0; (n = std::fread(part, 1, sizeof part, pipe)) > 0;) {
        text.append(part, n);
    }
    if (::pclose(pipe) != 0) {
        throw std::runtime_error(command + "\n" + text);
    }
    return text;
}

/// What one function does to the stack, as its instructions say.
struct StackFrame {
    int bytes = 0;
    std::set<std::string> calls;
};

std::string target_of(const std::string& line) {
    const std::size_t open = line.rfind('<');
    const std::size_t close = line.rfind('>');
    return open == std::string::npos || close < open ? std::string{}
                                                     : line.substr(open + 1, close - open - 1);
}

std::map<std::string, StackFrame> frames_of(const std::string& listing) {
    std::map<std::string, StackFrame> frames;
    std::string function;
    std::istringstream in(listing);
    int low = 0;
    bool opens = false;
    for (std::string line; std::getline(in, line);) {
        if (!line.empty() && line.back() == ':' && line.find(" <") != std::string::npos) {
            function = target_of(line);
            frames[function].bytes = return_address;
            opens = false;
            continue;
        }
        // address: bytes \t instruction \t operands
        const std::size_t first = line.find('\t');
        const std::size_t second = line.find('\t', first + 1);
        if (first == std::string::npos || second == std::string::npos || function.empty()) {
            continue;
        }
        std::string words = line.substr(second + 1);
        for (char& c : words) {
            c = c == '\t' || c == ',' ? ' ' : c;
        }
        std::istringstream parts(words);
        std::string instruction;
        std::string a;
        std::string b;
        parts >> instruction >> a >> b;
        StackFrame& frame = frames[function];
        if (instruction == "push") {
            ++frame.bytes;
        } else if (instruction == "rcall" && a == ".+0") {
            frame.bytes += return_address;  // makes room, calls nothing
        } else if (instruction == "in" && a == "r28" && b == "0x3d") {
            opens =
                true;  // the stack pointer goes to Y; what is subtracted next is room on the stack
        } else if (opens && instruction == "sbiw" && a == "r28") {
            frame.bytes += std::stoi(b, nullptr, 0);
            opens = false;
        } else if (opens && instruction == "subi" && a == "r28") {
            low = std::stoi(b, nullptr, 0);
        } else if (opens && instruction == "sbci" && a == "r29") {
            frame.bytes += low + 256 * std::stoi(b, nullptr, 0);
            opens = false;
        } else if (instruction == "call" || instruction == "rcall" || instruction == "jmp" ||
                   instruction == "rjmp") {
            const std::string target = target_of(line);
            if (!target.empty() && target.find('+') == std::string::npos && target != function) {
                frame.calls.insert(target);
            }
        }
    }
    return frames;
}

/// 0 for a function that is reached again on its own path.
int depth_of(const std::string& function,
             const std::map<std::string, StackFrame>& frames,
             std::map<std::string, int>& known) {
    const auto seen = known.find(function);
    if (seen != known.end()) {
        return seen->second;
    }
    known[function] = 0;
    const auto found = frames.find(function);
    if (found == frames.end()) {
        return 0;
    }
    int below = 0;
    for (const std::string& callee : found->second.calls) {
        below = std::max(below, depth_of(callee, frames, known));
    }
    return known[function] = found->second.bytes + below;
}

}  // namespace

bool Compiler::installed() {
    return std::system("command -v avr-g++ >/dev/null && command -v avr-objdump >/dev/null") == 0;
}

std::string Compiler::version() {
    std::string number = output_of("avr-g++ -dumpversion");
    while (!number.empty() && std::isspace(static_cast<unsigned char>(number.back())) != 0) {
        number.pop_back();
    }
    return "avr-g++ " + number;
}

Compiled Compiler::compile(const Build& build) const {
    const std::string elf = "/tmp/engine_size." + std::to_string(::getpid()) + ".elf";
    const std::string parts = build.engine ? std::to_string(build.parts.bits) : std::string{"-1"};
    output_of("avr-g++ -mmcu=" + std::string{build.mcu} + flags + "-I" + tree_ +
              " -DPARTS=" + parts + " -DDRIVER=" + std::to_string(build.driver) +
              " -DPIXEL=" + std::to_string(build.bytes_per_pixel) + " " + tree_ +
              "/tests/firmware/engine_size.cpp -o " + elf);
    Compiled compiled;
    std::istringstream sizes(output_of("avr-size " + elf + " | tail -n 1"));
    int text = 0;
    int data = 0;
    int bss = 0;
    sizes >> text >> data >> bss;
    compiled.flash = text + data;
    compiled.state = data + bss - arena;
    const std::map<std::string, StackFrame> frames = frames_of(output_of("avr-objdump -d " + elf));
    std::map<std::string, int> known;
    const auto main_frame = frames.find("main");
    if (main_frame != frames.end()) {
        compiled.stack = depth_of("main", frames, known);
    }
    ::unlink(elf.c_str());
    return compiled;
}

}  // namespace dialplate
