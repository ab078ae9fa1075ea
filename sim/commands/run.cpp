#include "sim/commands/commands.hpp"
#include "sim/commands/terminal.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {
namespace {

bool is_command(const CLI::App& program, const std::string& word) {
    return !program
                .get_subcommands(
                    [&](const CLI::App* command) { return command->get_name() == word; })
                .empty();
}

/// `dialplate receiver.json`: a layout where a command could stand.
bool is_layout(const std::string& word) {
    const std::filesystem::path path{word};
    std::error_code trouble;
    return word == "-" || path.extension() == ".json" || std::filesystem::exists(path, trouble);
}

}  // namespace

int run(CLI::App& program, int argc, char** argv, ExitStatus& status) {
    program.require_subcommand(0, 1);
    program.failure_message([](const CLI::App*, const CLI::Error&) { return std::string{}; });
    // CLI11 takes the words last first.
    std::vector<std::string> words(argv + 1, argv + argc);
    if (words.empty() || (!is_command(program, words.front()) && is_layout(words.front()))) {
        words.insert(words.begin(), "try");
    }
    const std::string first = words.front();
    try {
        program.parse(std::vector<std::string>(words.rbegin(), words.rend()));
    } catch (const CLI::Success& asked) {  // --help and its kin
        program.exit(asked);
        return ExitStatus::fine;
    } catch (const CLI::ParseError& error) {
        complain(error.what());
        return ExitStatus::unusable;
    }
    return status.code;
}

}  // namespace dialplate
