#include "sim/commands/commands.hpp"
#include "sim/commands/terminal.hpp"

#include <cstdio>
#include <filesystem>
#include <iostream>
#include <memory>
#include <string>
#include <unistd.h>
#include <vector>

namespace dialplate {
namespace {

/// Beside this program, whatever name it was started by.
std::filesystem::path proving_program() {
    std::error_code trouble;
    const auto self = std::filesystem::read_symlink("/proc/self/exe", trouble);
    return self.parent_path() / "dialplate-prove";
}

/// This process becomes the proving program: exit status and output are then its own. Returns only if
/// it is not there.
void become(const std::filesystem::path& program, std::vector<std::string> words) {
    words.insert(words.begin(), "dialplate prove");  // what its help calls it
    std::vector<char*> arguments;
    for (std::string& word : words) {
        arguments.push_back(word.data());
    }
    arguments.push_back(nullptr);
    std::cout.flush();
    std::cerr.flush();
    std::fflush(nullptr);
    execv(program.c_str(), arguments.data());
}

}  // namespace

void add_prove(CLI::App& program, ExitStatus& status) {
    CLI::App* command = program.add_subcommand(
        "prove", "Run the emitted code on a simulated microcontroller and compare it with the PC.");
    // Only the separate program links libsimavr, which is under the GPL; all words are its business.
    command->prefix_command();
    command->set_help_flag();
    command->callback([command, &status] {
        become(proving_program(), command->remaining());
        complain(
            "a proof needs the program dialplate-prove beside this one; it is built with the rest "
            "where the packages gcc-avr, avr-libc and libsimavr-dev are installed");
        status.add(ExitStatus::unusable);
    });
}

}  // namespace dialplate
