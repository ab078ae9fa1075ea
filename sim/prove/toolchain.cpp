#include "sim/prove/toolchain.hpp"

#include "sim/emit/compiler_flags.hpp"

#include <array>
#include <cmath>
#include <fcntl.h>
#include <iterator>
#include <spawn.h>
#include <sstream>
#include <sys/wait.h>
#include <unistd.h>

extern char** environ;

namespace dialplate {

ProgramResult run_program(const std::vector<std::string>& command) {
    int pipe_ends[2];
    if (pipe2(pipe_ends, O_CLOEXEC) != 0) return {127, "no pipe"};
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_adddup2(&actions, pipe_ends[1], STDOUT_FILENO);
    posix_spawn_file_actions_adddup2(&actions, pipe_ends[1], STDERR_FILENO);

    std::vector<std::string> words = command;
    std::vector<char*> arguments;
    for (std::string& word : words) {
        arguments.push_back(word.data());
    }
    arguments.push_back(nullptr);
    pid_t child = 0;
    const int failed =
        posix_spawnp(&child, arguments[0], &actions, nullptr, arguments.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    close(pipe_ends[1]);
    if (failed != 0) {
        close(pipe_ends[0]);
        return {127, command.front() + ": not found"};
    }

    ProgramResult result;
    std::array<char, 4096> part{};
    while (true) {
        const ssize_t got = read(pipe_ends[0], part.data(), part.size());
        if (got < 0 && errno == EINTR) continue;
        if (got <= 0) break;
        result.output.append(part.data(), static_cast<std::size_t>(got));
    }
    close(pipe_ends[0]);
    int status = 0;
    while (waitpid(child, &status, 0) < 0 && errno == EINTR) {
    }
    result.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    return result;
}

std::optional<Toolchain> find_toolchain() {
    const ProgramResult version = run_program({"avr-g++", "--version"});
    if (version.status != 0) return std::nullopt;
    // Without the C library the compiler alone is no use; it names the start file without a path then.
    const ProgramResult library =
        run_program({"avr-g++", "-mmcu=atmega328p", "-print-file-name=libc.a"});
    if (library.status != 0 || library.output.find('/') == std::string::npos) return std::nullopt;
    return Toolchain{"avr-g++", version.output.substr(0, version.output.find('\n'))};
}

const std::vector<std::string>& pinned_flags() {
    static const std::vector<std::string> flags = [] {
        std::istringstream words(compiler_flags);
        std::vector<std::string> all{std::istream_iterator<std::string>(words), {}};
        all.insert(all.end(), {"-Wall", "-Wextra", "-Werror"});
        return all;
    }();
    return flags;
}

std::string build_firmware(const Toolchain& toolchain, const FirmwareSources& what) {
    std::vector<std::string> command = {toolchain.compiler.string(), "-mmcu=" + what.mcu};
    command.push_back("-DF_CPU=" + std::to_string(std::llround(what.clock.value)) + "UL");
    command.insert(command.end(), pinned_flags().begin(), pinned_flags().end());
    for (const std::string& definition : what.definitions) {
        command.push_back("-D" + definition);
    }
    for (const auto& directory : what.include_directories) {
        command.push_back("-I" + directory.string());
    }
    for (const auto& source : what.sources) {
        command.push_back(source.string());
    }
    command.push_back("-o");
    command.push_back(what.output.string());
    const ProgramResult result = run_program(command);
    if (result.status == 0) return {};
    return result.output.empty() ? command.front() + " failed" : result.output;
}

}  // namespace dialplate
