#include "sim/commands/commands.hpp"
#include "sim/commands/loaded.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/emit/emission.hpp"
#include "sim/emit/write_directory.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <iostream>
#include <memory>
#include <string>

namespace dialplate {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* own_driver = "own-driver";

struct EmitArguments {
    std::string layout, directory, example;
    bool force = false, json = false;
};

void report(const EmitArguments& wish, const Emission& emission, const DirectoryWritten& done) {
    if (wish.json) {
        Json files = Json::array();
        for (const EmittedFile& file : emission.files) {
            files.push_back({{"name", file.name}, {"bytes", file.text.size()}});
        }
        const Json result = {
            {"directory", wish.directory},
            {"sketch", emission.sketch + ".ino"},
            {"example", emission.example == Example::own_driver ? own_driver : "driver"},
            {"image", emission.image.value},
            {"memory", emission.memory_bytes},
            {"files", files},
            {"written", done.written},
            {"unchanged", done.unchanged},
            {"kept", done.kept},
            {"removed", done.removed}};
        std::cout << result.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
        return;
    }
    std::cout << wish.directory << ": " << done.written.size() << " files written, "
              << done.unchanged.size() << " unchanged";
    if (!done.removed.empty()) std::cout << ", " << done.removed.size() << " removed";
    std::cout << "; image " << emission.image.value << " bytes, memory " << emission.memory_bytes
              << " bytes\n";
    for (const std::string& name : done.kept) {
        std::cout << "kept: " << name
                  << ", which you have changed; delete it to have it written anew\n";
    }
    const auto folder =
        std::filesystem::weakly_canonical(std::filesystem::absolute(wish.directory));
    const std::string name =
        (folder.has_filename() ? folder : folder.parent_path()).filename().string();
    if (name != emission.sketch) {
        std::cout << "note: Arduino's tools want the folder of " << emission.sketch << ".ino named "
                  << emission.sketch << '\n';
    }
}

void emit_into(const EmitArguments& wish, ExitStatus& status) {
    if (wish.directory.empty() || wish.directory == "-") {
        complain("--output: emit writes a directory, and not to standard output");
        status.add(ExitStatus::unusable);
        return;
    }
    const std::optional<Loaded> loaded = load_and_build(wish.layout);
    if (!loaded) {
        status.add(ExitStatus::unusable);
        return;
    }
    const Example example =
        wish.example == own_driver ? Example::own_driver : usual_example(loaded->layout.mcu);
    if (const auto refusal = cannot_emit(loaded->layout, loaded->built, example)) {
        complain(refusal->why);
        status.add(ExitStatus::findings);
        return;
    }
    const Emission emission = emit(loaded->layout, loaded->built, example);
    const DirectoryWritten done = write_directory(wish.directory, emission, wish.force);
    if (!done.error.empty()) {
        complain(done.error);
        status.add(ExitStatus::unusable);
        return;
    }
    report(wish, emission, done);
}

}  // namespace

void add_emit(CLI::App& program, ExitStatus& status) {
    auto wish = std::make_shared<EmitArguments>();
    CLI::App* command = program.add_subcommand(
        "emit", "Write the code for the sketch: image, engine, bus driver, an example.");
    command->add_option("LAYOUT", wish->layout, "Layout file; - is standard input")->required();
    command->add_option("-o,--output", wish->directory, "Directory to write into")
        ->required()
        ->type_name("DIR");
    command
        ->add_option(
            "--example",
            wish->example,
            "Sketch to write: own-driver has the sketch's own display driver supply the two "
            "functions that the engine needs")
        ->check(CLI::IsMember({own_driver}));
    command->add_flag("--force",
                      wish->force,
                      "Write although the directory holds other files, or files that were changed");
    command->add_flag("--json", wish->json, "Report as JSON");
    command->footer(
        "Exit status: 0 written, 1 this layout cannot be emitted as it is, 2 unusable input or "
        "output, or wrong usage.");
    command->callback([wish, &status] { emit_into(*wish, status); });
}

}  // namespace dialplate
