#include "sim/fit/fit.hpp"

#include "sim/commands/commands.hpp"
#include "sim/commands/fit_report.hpp"
#include "sim/commands/loaded.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/commands/whole_file.hpp"
#include "sim/layout/amend.hpp"

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <iterator>
#include <memory>
#include <optional>
#include <string>
#include <unistd.h>
#include <vector>

namespace dialplate {
namespace {

struct FitArguments {
    std::string layout;
    std::int64_t flash = 0;
    std::vector<std::string> keep;
    std::string output;
    bool json = false;
};

/// Faces by name; nothing: one of them is not in the layout, which has been said.
std::optional<std::vector<FaceId>> faces_named(const std::vector<std::string>& names,
                                               const Layout& layout) {
    std::vector<FaceId> faces;
    for (const std::string& name : names) {
        const auto found = std::find_if(layout.faces.begin(),
                                        layout.faces.end(),
                                        [&](const Face& face) { return face.name == name; });
        if (found == layout.faces.end()) {
            std::string known;
            for (const Face& face : layout.faces)
                known += (known.empty() ? "" : ", ") + face.name;
            complain("--keep: the layout has no face \"" + name + "\"; its faces are " + known);
            return std::nullopt;
        }
        faces.push_back(static_cast<FaceId>(found - layout.faces.begin()));
    }
    return faces;
}

/// Writes the layout as fitted; says what is wrong.
/// @return Whether it worked.
bool write_fitted(const FitArguments& wish,
                  const Layout& layout,
                  const Fitting& chosen,
                  const FitWish& how) {
    std::ifstream in(wish.layout, std::ios::binary);
    const std::string document{std::istreambuf_iterator<char>(in), {}};
    const std::vector<Change> changes = changes_for(layout, chosen, how);
    const Amended amended = amend(document, changes);
    if (!amended.text) {
        complain(wish.layout + ": " + amended.mistake);
        return false;
    }
    const auto* bytes = reinterpret_cast<const std::uint8_t*>(amended.text->data());
    const std::string trouble = write_whole(wish.output, {bytes, amended.text->size()});
    if (!trouble.empty()) complain(trouble);
    return trouble.empty();
}

void fit_layout(const FitArguments& wish, ExitStatus& status) {
    if (wish.layout == "-" && !wish.output.empty()) {
        complain("-o needs a layout file: of standard input there is no document to change");
        status.add(ExitStatus::unusable);
        return;
    }
    const std::optional<Loaded> loaded = load_and_build(wish.layout);
    if (!loaded) {
        status.add(ExitStatus::unusable);
        return;
    }
    const Layout& layout = loaded->layout;
    const auto keep = faces_named(wish.keep, layout);
    if (!keep) {
        status.add(ExitStatus::unusable);
        return;
    }
    FitWish how{.flash = Bytes{wish.flash}, .keep = *keep};
    const bool shows_progress = ::isatty(STDERR_FILENO) != 0;
    if (shows_progress) {
        how.progress = [](int tried) { std::fprintf(stderr, "\r%d ways tried ", tried); };
    }
    const Fit fitted = fit(layout, how);
    if (shows_progress) std::fputs("\r\x1b[K", stderr);  // ECMA-48 8.3.41, erase in line

    if (wish.output != "-") {
        std::cout << (wish.json ? fit_json(layout, fitted, how) : fit_text(layout, fitted, how));
    }
    if (!fitted.chosen) {
        status.add(ExitStatus::findings);
        return;
    }
    if (!wish.output.empty() && !write_fitted(wish, layout, *fitted.chosen, how)) {
        status.add(ExitStatus::unusable);
    }
}

}  // namespace

void add_fit(CLI::App& program, ExitStatus& status) {
    auto wish = std::make_shared<FitArguments>();
    CLI::App* command = program.add_subcommand(
        "fit", "Choose fonts, sizes and packings that read best within a flash budget.");
    command->add_option("LAYOUT", wish->layout, "Layout file; - is standard input")->required();
    command->add_option("--flash", wish->flash, "Bytes that the whole display may take")
        ->check(CLI::Range(std::int64_t{1}, std::int64_t{1} << 40))
        ->required();
    command->add_option("--keep", wish->keep, "A face to be left just as it is; may be repeated");
    command->add_option(
        "-o", wish->output, "Write the layout with the chosen faces; - is standard output");
    command->add_flag("--json", wish->json, "As JSON");
    command->footer(
        "Faces change only as their \"may\" in the layout allows: \"may\": {\"files\": [...], "
        "\"size\": [16, 40], \"smooth\": true}.\n"
        "Exit status: 0 it fits, 1 nothing fits, 2 unusable input or wrong usage.");
    command->callback([wish, &status] { fit_layout(*wish, status); });
}

}  // namespace dialplate
