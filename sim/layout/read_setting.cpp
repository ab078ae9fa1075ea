// Viewing, opening, touch, region and thresholds: where the display stands, who uses it, and how strictly
// it is judged.
#include "sim/layout/draft.hpp"
#include "sim/layout/members.hpp"

namespace dialplate {
namespace {

constexpr MemberName viewing_members[] = {{"distance_mm"}, {"tilt_deg"}, {"light_lux"}};
constexpr MemberName opening_members[] = {{"left_mm", true},
                                          {"top_mm", true},
                                          {"width_mm", true},
                                          {"height_mm", true},
                                          {"depth_mm"},
                                          {"overlap_mm"}};
constexpr MemberName touch_members[] = {
    {"hold_ms"}, {"repeat_after_ms"}, {"repeat_every_ms"}, {"scatter_mm"}, {"finger_mm"}};

}  // namespace

void read_viewing(const Members& document, Draft& draft) {
    const Node* const node = document.find("viewing");
    if (node == nullptr) return;
    const Members members(
        *node, document.pointer_of("viewing"), {"viewing"}, viewing_members, draft.mistakes);
    Viewing& viewing = draft.layout.viewing;
    viewing.distance = Millimetres{
        members.number("distance_mm", {50.0, 10000.0}).value_or(viewing.distance.value)};
    viewing.tilt = Degrees{members.number("tilt_deg", {-89.0, 89.0}).value_or(viewing.tilt.value)};
    viewing.light = Lux{members.number("light_lux", {0.0, 150000.0}).value_or(viewing.light.value)};
}

void read_opening(const Members& document, Draft& draft) {
    const Node* const node = document.find("opening");
    if (node == nullptr) return;
    const Members members(
        *node, document.pointer_of("opening"), {"opening"}, opening_members, draft.mistakes);
    const auto length = [&](std::string_view name, const Span& span, double otherwise) {
        return Millimetres{members.number(name, span).value_or(otherwise)};
    };
    constexpr Span offset{-500.0, 500.0};
    constexpr Span size{1.0, 1000.0};
    constexpr Span thickness{0.0, 100.0};
    constexpr double usual_overlap_mm = 3.0;
    draft.layout.opening = Opening{.left = length("left_mm", offset, 0.0),
                                   .top = length("top_mm", offset, 0.0),
                                   .width = length("width_mm", size, size.least),
                                   .height = length("height_mm", size, size.least),
                                   .depth = length("depth_mm", thickness, 0.0),
                                   .overlap = length("overlap_mm", thickness, usual_overlap_mm)};
}

void read_touch(const Members& document, Draft& draft) {
    const Node* const node = document.find("touch");
    if (node == nullptr) return;
    const Members members(
        *node, document.pointer_of("touch"), {"touch"}, touch_members, draft.mistakes);
    constexpr Range milliseconds{20, 5000, "the image counts in steps of 20 ms"};
    Touch& touch = draft.layout.touch;
    touch.hold_ms = members.whole_or("hold_ms", milliseconds, touch.hold_ms);
    touch.repeat_after_ms =
        members.whole_or("repeat_after_ms", milliseconds, touch.repeat_after_ms);
    touch.repeat_every_ms =
        members.whole_or("repeat_every_ms", milliseconds, touch.repeat_every_ms);
    touch.scatter =
        Millimetres{members.number("scatter_mm", {0.1, 10.0}).value_or(touch.scatter.value)};
    touch.finger =
        Millimetres{members.number("finger_mm", {1.0, 40.0}).value_or(touch.finger.value)};
}

void read_region(const Members& document, Draft& draft) {
    draft.layout.region =
        document.whole_or("region", {1, 3, "the Regions of the ITU"}, draft.layout.region);
}

void read_thresholds(const Members& document, Draft& draft) {
    static constexpr Word<std::string_view> profiles[] = {
        {"bench", "bench"}, {"gloved", "gloved"}, {"mobile", "mobile"}};
    draft.layout.profile =
        document.one_of("profile", std::span<const Word<std::string_view>>(profiles)).value_or("");
    const Node* const rules = document.object("thresholds");
    if (rules == nullptr) return;
    for (const Member& rule : rules->members) {
        const std::string pointer = document.pointer_of("thresholds") + pointer_part(rule.name);
        const auto complain = [&](const std::string& at,
                                  const std::string& what,
                                  const Node& node,
                                  const char* needs) {
            if (node.kind == Node::Kind::misfit) return;
            draft.mistakes.add(
                {"wrong-type", at, node.place, what + " is " + describe(node) + needs});
        };
        if (rule.value.kind != Node::Kind::object) {
            complain(pointer,
                     "what \"thresholds\" has for rule " + quote(rule.name),
                     rule.value,
                     "; needs an object with figures of the rule and their values");
            continue;
        }
        for (const Member& figure : rule.value.members) {
            const std::string at = pointer + pointer_part(figure.name);
            if (figure.value.kind != Node::Kind::number) {
                complain(at,
                         "figure " + quote(figure.name) + " of rule " + quote(rule.name),
                         figure.value,
                         "; needs a number");
                continue;
            }
            draft.layout.thresholds.push_back({.rule = rule.name,
                                               .figure = figure.name,
                                               .value = figure.value.number,
                                               .pointer = at});
        }
    }
}

}  // namespace dialplate
