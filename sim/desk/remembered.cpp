#include "sim/desk/remembered.hpp"

#include "sim/edit/json_words.hpp"
#include "sim/edit/rescue.hpp"
#include "sim/layout/mistakes.hpp"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

std::string number(double value) {
    char words[32];
    std::snprintf(words, sizeof words, "%.6g", value);
    return words;
}

const char* words(bool on) {
    return on ? "true" : "false";
}

void take(const Node& from, const char* name, bool& into) {
    if (const Node* node = from.find(name); node != nullptr && node->kind == Node::Kind::boolean)
        into = node->boolean;
}
void take(const Node& from, const char* name, double& into, double least, double most) {
    if (const Node* node = from.find(name); node != nullptr && node->kind == Node::Kind::number)
        into = std::clamp(node->number, least, most);
}
void take(const Node& from, const char* name, int& into, int least, int most) {
    double value = into;
    take(from, name, value, least, most);
    into = static_cast<int>(value);
}

/// Beside the rescued texts.
std::string state_file() {
    const std::string beside = rescue_file("window");
    return beside.empty() ? "" : (fs::path(beside).parent_path() / "window").string();
}

}  // namespace

std::string written(const Remembered& remembered) {
    const Habits& habits = remembered.habits;
    const Aids& aids = habits.aids;
    std::string sections;
    for (const auto& [title, open] : habits.sections)
        sections += (sections.empty() ? "" : ", ") + json_text(title) + ": " + words(open);
    std::string screens;
    for (const auto& [monitor, pixels_per_mm] : habits.screens)
        screens +=
            (screens.empty() ? "" : ", ") + json_text(monitor) + ": " + number(pixels_per_mm);
    return "{\n  \"width\": " + std::to_string(remembered.window.width) +
           ", \"height\": " + std::to_string(remembered.window.height) +
           ",\n  \"side_open\": " + words(habits.side_open) +
           ",\n  \"grid\": " + words(habits.grid.on) +
           ", \"grid_in_mm\": " + words(habits.grid.in_millimetres) +
           ", \"grid_px\": " + std::to_string(habits.grid.pixels) +
           ", \"grid_mm\": " + number(habits.grid.millimetres) +
           ",\n  \"bus_speed\": " + words(habits.bus_speed) +
           ", \"show_windows\": " + words(habits.show_windows) +
           ",\n  \"finger_mm\": " + number(habits.finger.millimetres) +
           ", \"scattered\": " + words(habits.finger.scattered) +
           ",\n  \"distance_mm\": " + number(aids.distance_mm) +
           ", \"acuity\": " + number(aids.acuity) + ", \"light_lux\": " + number(aids.light_lux) +
           ",\n  \"sections\": {" + sections + "},\n  \"pixels_per_mm\": {" + screens + "}\n}\n";
}

Remembered remembered_from(const std::string& text) {
    Remembered remembered;
    std::vector<Finding> findings;
    Mistakes mistakes(findings);
    const std::optional<Node> root = parse_json(text, mistakes);
    if (!root || root->kind != Node::Kind::object) return remembered;
    Habits& habits = remembered.habits;
    take(*root, "width", remembered.window.width, 0, 16384);
    take(*root, "height", remembered.window.height, 0, 16384);
    take(*root, "side_open", habits.side_open);
    take(*root, "grid", habits.grid.on);
    take(*root, "grid_in_mm", habits.grid.in_millimetres);
    take(*root, "grid_px", habits.grid.pixels, 2, 64);
    take(*root, "grid_mm", habits.grid.millimetres, 0.5, 20);
    take(*root, "bus_speed", habits.bus_speed);
    take(*root, "show_windows", habits.show_windows);
    take(*root, "finger_mm", habits.finger.millimetres, 1, 20);
    take(*root, "scattered", habits.finger.scattered);
    take(*root, "distance_mm", habits.aids.distance_mm, 200, 1500);
    take(*root, "acuity", habits.aids.acuity, 0.2, 1.6);
    take(*root, "light_lux", habits.aids.light_lux, 1, 20000);
    if (const Node* sections = root->find("sections"); sections != nullptr)
        for (const Member& section : sections->members)
            if (section.value.kind == Node::Kind::boolean)
                habits.sections[section.name] = section.value.boolean;
    if (const Node* screens = root->find("pixels_per_mm"); screens != nullptr)
        for (const Member& screen : screens->members)
            if (screen.value.kind == Node::Kind::number &&
                screen.value.number >= least_pixels_per_mm &&
                screen.value.number <= most_pixels_per_mm)
                habits.screens[screen.name] = screen.value.number;
    return remembered;
}

Remembered recall() {
    std::ifstream in(state_file(), std::ios::binary);
    return remembered_from(std::string(std::istreambuf_iterator<char>(in), {}));
}

void remember(const Remembered& remembered) {
    const std::string file = state_file();
    if (file.empty()) return;
    std::error_code fault;
    fs::create_directories(fs::path(file).parent_path(), fault);
    // Nothing hangs on it: a full disk must not keep the window from closing.
    (void)write_whole(file, written(remembered));
}

}  // namespace dialplate
