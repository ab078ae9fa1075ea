#include "tests/firmware/compiled.hpp"

#include "sim/emit/compiler_flags.hpp"

#include <algorithm>
#include <atomic>
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

/// How to compile for a processor.
struct Target {
    const char* tools;  ///< "avr-": in front of g++, size, objdump.
    std::string flags;
    std::string sources;  ///< Besides engine_size.cpp; in `tree`.
    int return_address;  ///< On the stack for each call: 2 bytes on an AVR, 3 with more than 128 KiB.
};

/// For a Cortex-M.
constexpr const char* portable_flags =
    " -std=c++14 -Os -ffunction-sections -fdata-sections -fno-exceptions -fno-rtti "
    "-fno-threadsafe-statics -Wl,--gc-sections ";

Target target_for(const std::string& mcu, const std::string& tree) {
    const std::string portable = tree + "/tests/firmware/portable/";
    if (mcu.rfind("cortex-", 0) == 0) {
        return {"arm-none-eabi-",
                std::string{portable_flags} + "-mthumb -mcpu=" + mcu +
                    " -ffreestanding -nostartfiles -nostdlib -Wl,--defsym=GPIOR0=0x40000000"
                    " -Wl,--defsym=GPIOR1=0x40000001 -Wl,--defsym=GPIOR2=0x40000002"
                    " -Wl,--defsym=TCNT1=0x40000003 -T " +
                    portable + "cortex_m.ld ",
                portable + "outside_cortex_m.cpp -lgcc",
                0};
    }
    if (mcu == "avrxmega3") {
        // No -mshort-calls: they reach 4 KiB either way, and an engine is larger.
        return {"avr-",
                std::string{compiler_flags} +
                    " -DF_CPU=16000000UL -mmcu=avrxmega3 -nostartfiles -nostdlib -Wl,-ebegin "
                    "-Wl,-u,main"
                    " -Wl,--defsym=GPIOR0=0x80001C -Wl,--defsym=GPIOR1=0x80001D"
                    " -Wl,--defsym=GPIOR2=0x80001E -Wl,--defsym=TCNT1=0x800A20 -T " +
                    portable + "avr_mapped.ld ",
                portable + "outside_avr_mapped.cpp -lgcc",
                2};
    }
    return {"avr-",
            std::string{compiler_flags} + " -DF_CPU=16000000UL -mmcu=" + mcu + ' ',
            "",
            mcu == "atmega2560" ? 3 : 2};
}

// As in engine_size.cpp.
constexpr int arena = 64;
constexpr const char* service_function = "_ZL7servicev";

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

/// What a prologue as a call takes: libgcc's __prologue_saves__ pushes 18 registers, and is entered as many
/// instructions, of two bytes each, behind its beginning as there are registers to leave alone; it makes a
/// frame as large as X says. Source: libgcc, config/avr/lib1funcs.S.
constexpr const char* prologue = "__prologue_saves__";
int prologue_bytes(const std::string& target, int x) {
    constexpr int registers = 18;
    const std::size_t plus = target.find('+');
    const int skipped =
        plus == std::string::npos ? 0 : std::stoi(target.substr(plus + 1), nullptr, 16) / 2;
    return registers - skipped + x;
}

/// How many registers "{r4, r5, lr}" names.
int registers_in(const std::string& operands) {
    return 1 + static_cast<int>(
                   std::count(operands.begin() + static_cast<std::ptrdiff_t>(operands.find('{')),
                              operands.end(),
                              ','));
}

/// Adds what an instruction of Thumb takes from the stack.
void add_thumb(StackFrame& frame, const std::string& instruction, const std::string& operands) {
    const auto number = [&operands] {
        return std::abs(std::stoi(operands.substr(operands.find('#') + 1)));
    };
    const std::string base = instruction.substr(0, instruction.find('.'));
    if (base == "push" || (base == "stmdb" && operands.rfind("sp!", 0) == 0)) {
        frame.bytes += 4 * registers_in(operands);
    } else if (base == "str" && operands.find("[sp, #-") != std::string::npos) {
        frame.bytes += number();
    } else if ((base == "sub" || base == "subw") && operands.rfind("sp, ", 0) == 0 &&
               operands.find('#') != std::string::npos) {
        frame.bytes += number();
    }
}

std::map<std::string, StackFrame> frames_of(const std::string& listing, int return_address) {
    std::map<std::string, StackFrame> frames;
    std::string function;
    std::istringstream in(listing);
    int low = 0;
    int x = 0;  // in registers 26 and 27, as far as constants go
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
        const bool thumb = return_address == 0;
        if (thumb) {
            add_thumb(frame, instruction, line.substr(line.find('\t', second + 1) + 1));
        }
        const bool jumps = instruction == "call" || instruction == "rcall" ||
                           instruction == "jmp" || instruction == "rjmp" || instruction == "bl" ||
                           instruction == "b.n" || instruction == "b.w";
        if (instruction == "push" && !thumb) {
            ++frame.bytes;
        } else if (instruction == "ldi" && a == "r26") {
            x = (x & ~0xFF) | std::stoi(b, nullptr, 0);
        } else if (instruction == "ldi" && a == "r27") {
            x = (x & 0xFF) | std::stoi(b, nullptr, 0) << 8;
        } else if (jumps && target_of(line).rfind(prologue, 0) == 0) {
            frame.bytes += prologue_bytes(target_of(line), x);
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
        } else if (opens && instruction == "sbc" && a == "r29" && b == "r1") {
            frame.bytes += low;
            opens = false;
        } else if (opens && instruction == "sbci" && a == "r29") {
            frame.bytes += low + 256 * std::stoi(b, nullptr, 0);
            opens = false;
        } else if (jumps) {
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

Build build_of(const DisplayProgram& program) {
    Build build;
    build.parts = program.parts;
    build.driver = program.bus ? 1 + static_cast<int>(*program.bus) : 0;
    build.bytes_per_pixel = program.bytes_per_pixel;
    build.touch = program.touch_sheet;
    build.context_columns = program.context_columns;
    return build;
}

bool Compiler::installed(const std::string& mcu) {
    const std::string tools = target_for(mcu, "").tools;
    return std::system(("command -v " + tools + "g++ >/dev/null && command -v " + tools +
                        "objdump >/dev/null")
                           .c_str()) == 0;
}

std::string Compiler::version(const std::string& mcu) {
    const std::string compiler = std::string{target_for(mcu, "").tools} + "g++";
    std::string number = output_of(compiler + " -dumpversion");
    while (!number.empty() && std::isspace(static_cast<unsigned char>(number.back())) != 0) {
        number.pop_back();
    }
    return compiler + ' ' + number;
}

Compiled Compiler::compile(const Build& build) const {
    const Target target = target_for(build.mcu, tree_);
    const std::string tools = target.tools;
    static std::atomic<int> number{0};
    const std::string elf =
        "/tmp/engine_size." + std::to_string(::getpid()) + '.' + std::to_string(number++) + ".elf";
    const std::string parts = build.engine ? std::to_string(build.parts.bits) : std::string{"-1"};
    output_of(tools + "g++ " + target.flags + "-I" + tree_ + " -DPARTS=" + parts + " -DDRIVER=" +
              std::to_string(build.driver) + " -DPIXEL=" + std::to_string(build.bytes_per_pixel) +
              " -DTOUCH=" + std::to_string(int{build.touch}) +
              " -DCONTEXT_COLUMNS=" + std::to_string(build.context_columns) + " " + tree_ +
              "/tests/firmware/engine_size.cpp " + target.sources + " -o " + elf);
    Compiled compiled;
    std::istringstream sizes(output_of(tools + "size " + elf + " | tail -n 1"));
    int text = 0;
    int data = 0;
    int bss = 0;
    sizes >> text >> data >> bss;
    compiled.flash = text + data;
    compiled.state = data + bss - arena;
    const std::map<std::string, StackFrame> frames =
        frames_of(output_of(tools + "objdump -d " + elf), target.return_address);
    std::map<std::string, int> known;
    // The linker may append to the name.
    const auto service = frames.lower_bound(service_function);
    if (service != frames.end() && service->first.rfind(service_function, 0) == 0) {
        compiled.stack = depth_of(service->first, frames, known);
    }
    ::unlink(elf.c_str());
    return compiled;
}

}  // namespace dialplate
