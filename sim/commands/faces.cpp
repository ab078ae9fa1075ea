#include "fonts/face.hpp"
#include "sim/commands/commands.hpp"
#include "sim/commands/faces_report.hpp"
#include "sim/commands/faces_sheet.hpp"
#include "sim/commands/png.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/commands/weigh_fonts.hpp"
#include "sim/commands/whole_file.hpp"
#include "sim/layout/parts.hpp"
#include "sim/layout/reader.hpp"
#include "sim/layout/suggestion.hpp"

#include <algorithm>
#include <cstdio>
#include <iostream>
#include <memory>
#include <optional>
#include <string>
#include <unistd.h>
#include <vector>

namespace dialplate {
namespace {

constexpr const char* figures_face = "legend9.bdf";
constexpr int figures_size = 9;

struct FacesArguments {
    std::vector<std::string> fonts;
    std::vector<int> sizes;
    std::vector<std::string> sets = {"0123456789. "};
    std::string display = "2.8in-ILI9341";
    double distance_mm = 500.0;
    std::string picture;
    bool smooth = false;
    bool json = false;
};

/// Code points of UTF-8 text; empty when it is not UTF-8 (RFC 3629).
std::optional<std::u32string> code_points(const std::string& text) {
    std::u32string out;
    for (std::size_t at = 0; at < text.size();) {
        const auto lead = static_cast<unsigned char>(text[at]);
        const int more = lead < 0x80       ? 0
                         : lead >> 5 == 6  ? 1
                         : lead >> 4 == 14 ? 2
                         : lead >> 3 == 30 ? 3
                                           : -1;
        if (more < 0 || at + static_cast<std::size_t>(more) >= text.size()) {
            return std::nullopt;
        }
        char32_t code = more == 0 ? lead : lead & (0x3FU >> more);
        for (int i = 1; i <= more; ++i) {
            const auto next = static_cast<unsigned char>(text[at + static_cast<std::size_t>(i)]);
            if (next >> 6 != 2) {
                return std::nullopt;
            }
            code = code << 6 | (next & 0x3FU);
        }
        out += code;
        at += static_cast<std::size_t>(more) + 1;
    }
    return out;
}

/// The display of that name; nothing: there is none, which has been said.
std::optional<Display> display_named(const std::string& name) {
    std::vector<Finding> findings;
    const Shelf<Display> shelf = load_displays(".", findings);
    complain("displays.json", findings);
    std::vector<std::string_view> names;
    for (const Display& display : shelf.parts) {
        if (display.name == name) return display;
        names.emplace_back(display.name);
    }
    const std::string_view near = nearest(name, names);
    std::string all;
    for (const std::string_view each : names)
        all += (all.empty() ? "" : ", ") + std::string{each};
    complain("--display: there is no display \"" + name + "\"" +
             (near.empty() ? "" : "; did you mean \"" + std::string{near} + "\"?") +
             " Displays are " + all);
    return std::nullopt;
}

std::string draw_picture(const Weighing& weighing, const std::string& path) {
    std::u32string ascii;
    for (char32_t code = U' '; code <= U'~'; ++code)
        ascii += code;
    const std::string file = find_file(".", figures_face);
    const FaceResult labels = rasterise({.file = file, .size = figures_size, .characters = ascii});
    if (!labels.face)
        return "the face for the labels, " + std::string{figures_face} + ": " + labels.error;
    return write_whole(path, png_bytes(draw_sheet(weighing.faces, *labels.face)));
}

void weigh_faces(const FacesArguments& wish, ExitStatus& status) {
    WeighWish how{.fonts = wish.fonts,
                  .sizes = wish.sizes,
                  .sets = {},
                  .display = {},
                  .distance = Millimetres{wish.distance_mm},
                  .smooth = wish.smooth};
    for (const std::string& set : wish.sets) {
        const std::optional<std::u32string> characters = code_points(set);
        if (!characters || characters->empty()) {
            complain("--chars needs at least one character, written in UTF-8");
            status.add(ExitStatus::unusable);
            return;
        }
        how.sets.push_back(*characters);
    }
    const std::optional<Display> display = display_named(wish.display);
    if (!display) {
        status.add(ExitStatus::unusable);
        return;
    }
    how.display = *display;
    const bool shows_progress = ::isatty(STDERR_FILENO) != 0;
    if (shows_progress) {
        how.progress = [](std::size_t done, std::size_t all) {
            std::fprintf(stderr, "\r%zu of %zu faces ", done, all);
        };
    }
    const Weighing weighing = weigh_fonts(how);
    if (shows_progress) std::fputs("\r\x1b[K", stderr);  // ECMA-48 8.3.41, erase in line
    for (const std::string& mistake : weighing.mistakes) {
        complain(mistake);
        status.add(ExitStatus::unusable);
    }
    for (const WeighedFace& face : weighing.faces) {
        if (face.size != wish.sizes.front()) continue;  // a font lacks the same at every size
        for (const char32_t code : face.missing)
            complain("font \"" + face.file + "\" has no glyph for " + hexadecimal(code));
    }
    if (weighing.faces.empty()) return;
    if (!wish.picture.empty()) {
        const std::string trouble = draw_picture(weighing, wish.picture);
        if (!trouble.empty()) {
            complain(trouble);
            status.add(ExitStatus::unusable);
        }
    }
    if (wish.picture == "-") return;  // standard output is the picture
    std::cout << (wish.json ? faces_json(weighing, how) : faces_text(weighing, how));
}

}  // namespace

void add_faces(CLI::App& program, ExitStatus& status) {
    auto wish = std::make_shared<FacesArguments>();
    CLI::App* command = program.add_subcommand(
        "faces", "Weigh fonts: what each size and packing costs in flash and time.");
    command->add_option("FONT", wish->fonts, "TrueType, OpenType or BDF files")->required();
    command->add_option("--size", wish->sizes, "Sizes in pixels, separated by commas")
        ->delimiter(',')
        ->check(CLI::Range(1, 400))
        ->required();
    command
        ->add_option(
            "--chars", wish->sets, "The characters that are needed; repeated: several sets")
        ->allow_extra_args(false)
        ->capture_default_str();
    command->add_option("--display", wish->display, "The display they are seen on")
        ->capture_default_str();
    command->add_option("--distance", wish->distance_mm, "From the eye to the glass, in mm")
        ->check(CLI::Range(50.0, 10000.0))
        ->capture_default_str();
    command->add_flag("--smooth", wish->smooth, "Outlines in four tones as well");
    command->add_option("--picture", wish->picture, "Also draw them, into this PNG file");
    command->add_flag("--json", wish->json, "As JSON");
    command->callback([wish, &status] { weigh_faces(*wish, status); });
}

}  // namespace dialplate
