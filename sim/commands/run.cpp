#include "sim/commands/commands.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/layout/mistakes.hpp"
#include "sim/layout/suggestion.hpp"

#include <filesystem>
#include <string>
#include <string_view>
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

std::string unknown_command(const CLI::App& program, const std::string& word) {
    std::vector<std::string_view> names;
    for (const CLI::App* command : program.get_subcommands([](const CLI::App*) { return true; })) {
        names.emplace_back(command->get_name());
    }
    const std::string_view near = nearest(word, names);
    return "there is no command " + quote(word) +
           (near.empty() ? "; dialplate --help lists them" : ", did you mean " + quote(near) + "?");
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
    if (!first.empty() && first.front() != '-' && !is_command(program, first)) {
        complain(unknown_command(program, first));
        return ExitStatus::unusable;
    }
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
