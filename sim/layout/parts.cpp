#include "sim/layout/parts.hpp"

#include "sim/layout/members.hpp"
#include "sim/layout/source_text.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

constexpr MemberName display_members[] = {
    {"name", true},
    {"controller", true},
    {"width", true},
    {"height", true},
    {"active_width_mm", true},
    {"active_height_mm", true},
    {"memory_width", true},
    {"memory_height", true},
    {"turns", true},
    {"inverted"},
    {"serial_bytes_per_pixel"},
    {"luminance_cd_m2"},
    {"panel_contrast"},
    {"serial_write_ns"},
    {"parallel_write_ns"},
    {"logic_supply_max_v"},
    {"logic_absolute_max_v"},
    {"backlight_ma"},
    {"reflectance"},
    {"sources"},
};
constexpr MemberName turns_members[] = {{"0", true}, {"90", true}, {"180", true}, {"270", true}};
constexpr MemberName turn_members[] = {{"address_mode", true}, {"column_offset"}, {"page_offset"}};
constexpr MemberName mcu_members[] = {
    {"name", true},
    {"family", true},
    {"flash", true},
    {"ram", true},
    {"boot"},
    {"clock_max_mhz", true},
    {"object_max"},
    {"speed_grades"},
    {"sources"},
};
constexpr MemberName speed_grade_members[] = {{"supply_v", true}, {"clock_mhz", true}};
constexpr MemberName source_members[] = {{"text", true}, {"standing", true}};

constexpr Range pixels{1, 1023, "ten bits in the image"};
constexpr Span millimetres{1.0, 1000.0};
constexpr std::int64_t largest_memory = std::int64_t{1} << 30;

std::map<std::string, SourceMark> read_sources(const Members& part) {
    std::map<std::string, SourceMark> sources;
    const Node* const object = part.object("sources");
    if (object == nullptr) return sources;
    for (const Member& member : object->members) {
        const Members source(member.value,
                             part.pointer_of("sources") + pointer_part(member.name),
                             {"source", member.name},
                             source_members,
                             part.mistakes());
        SourceMark mark;
        mark.text = source.text("text", {.least = 1, .most = 1000}).value_or("");
        mark.standing = source.text("standing", {.least = 1, .most = 100}).value_or("");
        sources.emplace(member.name, std::move(mark));
    }
    return sources;
}

std::vector<SpeedGrade> read_speed_grades(const Members& part) {
    std::vector<SpeedGrade> grades;
    const Node* const list = part.list("speed_grades", {0, 20});
    for (std::size_t i = 0; list != nullptr && i < list->elements.size(); ++i) {
        const Members grade(list->elements[i],
                            part.pointer_of("speed_grades") + pointer_part(i),
                            {"speed grade"},
                            speed_grade_members,
                            part.mistakes());
        const std::optional<double> volts = grade.number("supply_v", {0.5, 12.0});
        const std::optional<double> clock = grade.number("clock_mhz", {0.01, 1000.0});
        if (!volts || !clock) continue;
        const SpeedGrade read{.volts = *volts, .clock = Hertz{*clock * 1e6}};
        if (!grades.empty() &&
            (read.volts <= grades.back().volts || read.clock < grades.back().clock)) {
            grade.fail(
                "supply_v",
                "out-of-range",
                "has to be above that of the speed grade before it, and its clock no slower");
            continue;
        }
        grades.push_back(read);
    }
    return grades;
}

TurnMode read_turn(const Members& turns, std::string_view degrees, int columns, int pages) {
    TurnMode mode;
    const Node* const node = turns.find(degrees);
    if (node == nullptr) return mode;
    const Members turn(*node,
                       turns.pointer_of(degrees),
                       {"turn", std::string(degrees)},
                       turn_members,
                       turns.mistakes());
    mode.address_mode = static_cast<std::uint8_t>(turn.whole_or("address_mode", {0, 255}, 0));
    // Columns and pages are counted after the turn, so the longer side bounds both.
    const int most = std::max(columns, pages);
    mode.column_offset = turn.whole_or("column_offset", {0, most}, 0);
    mode.page_offset = turn.whole_or("page_offset", {0, most}, 0);
    return mode;
}

std::vector<std::string> part_files(const std::string& directory, const char* file) {
    std::vector<std::string> paths;
    for (const fs::path& root :
         {fs::path(directory.empty() ? "." : directory), fs::path(DIALPLATE_TREE) / "layouts"}) {
        const fs::path path = (root / "parts" / file).lexically_normal();
        std::error_code error;
        if (!fs::exists(path, error)) continue;
        bool again = false;
        for (const std::string& known : paths)
            again = again || fs::equivalent(known, path, error);
        if (!again) paths.push_back(path.string());
    }
    return paths;
}

template <class Part, class ReadPart>
Shelf<Part> load_shelf(const std::string& directory,
                       const char* file,
                       std::string_view list_name,
                       ReadPart read_part,
                       std::vector<Finding>& findings) {
    Shelf<Part> shelf;
    const std::vector<std::string> paths = part_files(directory, file);
    if (paths.empty()) {
        const std::string path = (fs::path(DIALPLATE_TREE) / "layouts" / "parts" / file).string();
        Mistakes(findings, path)
            .add({.rule = "missing-file", .message = "there is no such part file"});
        shelf.readable = false;
    }
    for (const std::string& path : paths) {
        Mistakes mistakes(findings, path);
        const std::size_t before = findings.size();
        const std::optional<std::string> text = load_text(path, mistakes);
        std::optional<Node> root;
        if (text) {
            if (const std::optional<std::string_view> checked = check_text(*text, mistakes)) {
                const int skipped = static_cast<int>(text->size() - checked->size());
                root = parse_json(*checked, mistakes, {1, 1 + skipped});
            }
        }
        if (root) {
            const MemberName document_members[] = {{list_name, true}, {"$schema"}, {"comment"}};
            const Members document(*root, "", {"part file"}, document_members, mistakes);
            if (const Node* const list = document.list(list_name, {0, 1000})) {
                for (std::size_t i = 0; i < list->elements.size(); ++i) {
                    shelf.parts.push_back(
                        read_part(list->elements[i],
                                  document.pointer_of(list_name) + pointer_part(i),
                                  mistakes));
                }
            }
        }
        if (findings.size() > before) shelf.readable = false;
    }
    return shelf;
}

}  // namespace

Display display_from(const Node& node, const std::string& pointer, Mistakes& mistakes) {
    const Members part(node, pointer, {"display", name_in(node)}, display_members, mistakes);
    Display display;
    display.name = part.text("name", {.least = 1, .most = 40}).value_or("");
    display.controller = part.text("controller", {.least = 1, .most = 40}).value_or("");
    display.width = part.whole_or("width", pixels, 0);
    display.height = part.whole_or("height", pixels, 0);
    display.active_width = Millimetres{part.number("active_width_mm", millimetres).value_or(0.0)};
    display.active_height = Millimetres{part.number("active_height_mm", millimetres).value_or(0.0)};
    constexpr std::int64_t largest_side = 4096;
    display.memory_width = part.whole_or(
        "memory_width", {display.width, largest_side, "at least the width"}, display.width);
    display.memory_height = part.whole_or(
        "memory_height", {display.height, largest_side, "at least the height"}, display.height);
    if (const Node* const object = part.find("turns")) {
        const Members turns(
            *object, part.pointer_of("turns"), {"set of turns"}, turns_members, mistakes);
        const std::string_view degrees[] = {"0", "90", "180", "270"};
        for (std::size_t i = 0; i < display.turns.size(); ++i) {
            display.turns[i] =
                read_turn(turns, degrees[i], display.memory_width, display.memory_height);
        }
    }
    display.inverted = part.flag("inverted").value_or(false);
    display.bytes_per_pixel =
        part.whole_or("serial_bytes_per_pixel", {2, 3, "RGB565 or 18 bit"}, 2);
    display.luminance_cd_m2 = part.number("luminance_cd_m2", {1.0, 10000.0});
    display.panel_contrast = part.number("panel_contrast", {1.0, 1e6});
    display.serial_write_ns = part.number("serial_write_ns", {1.0, 10000.0});
    display.parallel_write_ns = part.number("parallel_write_ns", {1.0, 10000.0});
    display.logic_supply_max_v = part.number("logic_supply_max_v", {1.0, 12.0});
    display.logic_absolute_max_v = part.number("logic_absolute_max_v", {1.0, 12.0});
    display.backlight_ma = part.number("backlight_ma", {0.0, 2000.0});
    display.reflectance = part.number("reflectance", {0.0, 1.0});
    display.sources = read_sources(part);
    return display;
}

Mcu mcu_from(const Node& node, const std::string& pointer, Mistakes& mistakes) {
    const Members part(node, pointer, {"microcontroller", name_in(node)}, mcu_members, mistakes);
    Mcu mcu;
    mcu.name = part.text("name", {.least = 1, .most = 40}).value_or("");
    static constexpr Word<std::string_view> families[] = {{"avr", "avr"},
                                                          {"avr-mapped", "avr-mapped"},
                                                          {"cortex-m0plus", "cortex-m0plus"},
                                                          {"cortex-m3", "cortex-m3"},
                                                          {"xtensa", "xtensa"}};
    mcu.family =
        part.one_of("family", std::span<const Word<std::string_view>>(families)).value_or("avr");
    mcu.flash = Bytes{part.whole("flash", {1024, largest_memory}).value_or(0)};
    mcu.ram = Bytes{part.whole("ram", {64, largest_memory}).value_or(0)};
    const std::int64_t most_boot = part.has("flash") ? mcu.flash.value : largest_memory;
    mcu.boot = Bytes{part.whole("boot", {0, most_boot, "the flash"}).value_or(0)};
    mcu.clock_max = Hertz{part.number("clock_max_mhz", {0.1, 1000.0}).value_or(0.0) * 1e6};
    if (const auto most = part.whole("object_max", {256, largest_memory})) {
        mcu.object_max = Bytes{*most};
    }
    mcu.speed_grades = read_speed_grades(part);
    mcu.sources = read_sources(part);
    return mcu;
}

Shelf<Display> load_displays(const std::string& directory, std::vector<Finding>& findings) {
    return load_shelf<Display>(directory, "displays.json", "displays", display_from, findings);
}

Shelf<Mcu> load_mcus(const std::string& directory, std::vector<Finding>& findings) {
    return load_shelf<Mcu>(directory, "mcus.json", "mcus", mcu_from, findings);
}

}  // namespace dialplate
