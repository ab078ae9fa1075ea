#include "sim/commands/commands.hpp"
#include "sim/commands/label_face.hpp"
#include "sim/commands/loaded.hpp"
#include "sim/commands/pictures_sheet.hpp"
#include "sim/commands/png.hpp"
#include "sim/commands/terminal.hpp"
#include "sim/commands/views.hpp"
#include "sim/commands/whole_file.hpp"
#include "sim/layout/colour.hpp"
#include "sim/prototype/assignment.hpp"
#include "sim/prototype/play.hpp"
#include "sim/prototype/prototype.hpp"

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace dialplate {
namespace {

struct ShotArguments {
    std::string layout;
    std::string output;
    std::string page;
    std::string palette;
    std::vector<std::string> settings;
    std::string play;
    int zoom = 1;
    ViewWish view;
    bool pictures = false;
};

/// The wishes with their names resolved.
struct Scene {
    int page = 0;
    int palette = 0;
    std::vector<Assignment> settings;
    std::vector<PlayStep> steps;
};

std::optional<Scene> scene_of(const ShotArguments& wish, const Layout& layout) {
    Scene scene;
    bool good = true;
    const auto say = [&good](const std::string& option, const std::string& why) {
        complain(option + ": " + why);
        good = false;
    };
    if (!wish.page.empty()) {
        const Meant<int> page = page_named(layout, wish.page);
        page.it ? void(scene.page = *page.it) : say("--page", page.why);
    }
    if (!wish.palette.empty()) {
        const Meant<int> palette = palette_named(layout, wish.palette);
        palette.it ? void(scene.palette = *palette.it) : say("--palette", palette.why);
    }
    for (const std::string& written : wish.settings) {
        const Meant<Assignment> setting = assignment(layout, written);
        setting.it ? scene.settings.push_back(*setting.it) : say("--set", setting.why);
    }
    if (!wish.play.empty()) {
        PlayReading play = load_play(wish.play, layout);
        complain(wish.play, play.findings);
        good = good && play.steps.has_value();
        if (play.steps) {
            scene.steps = std::move(*play.steps);
        }
    }
    return good ? std::optional{scene} : std::nullopt;
}

Rgb888 glass_picture(const Prototype& prototype) {
    const Layout& layout = prototype.layout();
    Rgb888 picture(layout.glass_width(), layout.glass_height(), 0);
    const std::vector<std::uint16_t> glass = prototype.glass();
    for (std::size_t i = 0; i < picture.pixels.size(); ++i) {
        picture.pixels[i] = expand_rgb565(glass[i]);
    }
    return picture;
}

/// @param status  Unusable until the picture is written.
void shoot_pictures(const Loaded& loaded,
                    int palette,
                    const std::string& output,
                    ExitStatus& status) {
    const FaceResult labels = load_label_face();
    if (!labels.face) {
        complain(labels.error);
        return;
    }
    const Rgb888 sheet = draw_pictures(loaded, palette, *labels.face);
    if (sheet.pixels.empty()) {
        complain("--pictures: no page of \"" + loaded.layout.title + "\" has a picture");
        return;
    }
    const std::string trouble = write_whole(output, png_bytes(sheet));
    if (!trouble.empty()) {
        complain(trouble);
        return;
    }
    status.code = ExitStatus::fine;
}

void shoot(const ShotArguments& wish, ExitStatus& status) {
    status.add(ExitStatus::unusable);  // until the picture is written
    const std::optional<Loaded> loaded = load_and_build(wish.layout);
    if (!loaded) {
        return;
    }
    const std::optional<Scene> scene = scene_of(wish, loaded->layout);
    if (!scene) {
        return;
    }
    if (wish.pictures) {
        shoot_pictures(*loaded, scene->palette, wish.output, status);
        return;
    }
    Prototype prototype(loaded->layout, loaded->built);
    prototype.use_palette(scene->palette);
    prototype.show_page(scene->page);
    for (const Assignment& setting : scene->settings) {
        prototype.set(setting.value, setting.to);
    }
    prototype.settle();
    if (const std::optional<Finding> finding = perform(prototype, scene->steps)) {
        complain(wish.play, {*finding});
        return;
    }
    std::optional<RasterFace> labels;
    if (wish.view.needs_words()) {
        FaceResult face = load_label_face();
        if (!face.face) {
            complain(face.error);
            return;
        }
        labels = std::move(face.face);
    }
    const Rgb888 picture = viewed(enlarged(glass_picture(prototype), wish.zoom),
                                  wish.zoom,
                                  loaded->layout,
                                  prototype.page(),
                                  wish.view,
                                  labels ? &*labels : nullptr);
    const std::string trouble = write_whole(wish.output, png_bytes(picture));
    if (!trouble.empty()) {
        complain(trouble);
        return;
    }
    status.code = ExitStatus::fine;
}

}  // namespace

void add_shot(CLI::App& program, ExitStatus& status) {
    auto wish = std::make_shared<ShotArguments>();
    CLI::App* command =
        program.add_subcommand("shot", "Photograph the glass into a PNG file; needs no display.");
    command->add_option("LAYOUT", wish->layout, "Layout file; - is standard input")->required();
    command->add_option("-o,--output", wish->output, "PNG file; - is standard output")->required();
    command->add_option("--page", wish->page, "Page that is shown; absent: the first");
    command->add_option(
        "--palette", wish->palette, "Palette in force; absent: the paints as typed");
    command
        ->add_option(
            "--set", wish->settings, "name=value: a choice by its text, a flag by true or false")
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    command->add_option(
        "--play", wish->play, "JSON file of steps to do first: touches, turns, time");
    command->add_option("--zoom", wish->zoom, "Picture pixels a glass pixel")
        ->check(CLI::Range(1, 16))
        ->capture_default_str();
    add_view_options(*command, wish->view);
    command->add_flag("--pictures",
                      wish->pictures,
                      "Instead of the glass its pictures: as in their files, and as it shows them");
    command->callback([wish, &status] { shoot(*wish, status); });
}

}  // namespace dialplate
