#include "sim/desk/side_parts.hpp"
#include "sim/desk/strip.hpp"
#include "sim/desk/tints.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {
namespace {

/// One column for each of the last updates: its height is its time, the lighter part what the bus alone takes.
void draw_columns(SideFrame& side) {
    const auto& updates = side.bench.journal.updates();
    const float u = side.unit;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x, height = 54 * u;
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    draw.AddRectFilled(at, {at.x + width, at.y + height}, ink(tint::well));
    ImGui::InvisibleButton("updates", {width, height});
    const float column = 7 * u;
    const std::size_t fit = static_cast<std::size_t>(width / column);
    const std::size_t first = updates.size() > fit ? updates.size() - fit : 0;
    double most = 1.0;
    for (std::size_t i = first; i < updates.size(); ++i)
        most = std::max(most, updates[i].time.time.value);
    for (std::size_t i = first; i < updates.size(); ++i) {
        const SentUpdate& update = updates[i];
        const float left = at.x + static_cast<float>(i - first) * column;
        const float full =
            std::max(u, (height - 16 * u) * static_cast<float>(update.time.time.value / most));
        const float bus = full * static_cast<float>(update.time.share_of_limit);
        const float bottom = at.y + height;
        const bool near = ImGui::IsItemHovered() && ImGui::GetMousePos().x >= left &&
                          ImGui::GetMousePos().x < left + column;
        draw.AddRectFilled({left, bottom - full},
                           {left + column - u, bottom},
                           ink(near ? tint::engraved : tint::flash_taken));
        draw.AddRectFilled(
            {left, bottom - bus}, {left + column - u, bottom}, ink(tint::flash_display));
        if (near)
            tip(side,
                update.time.event + ": " + grouped(update.time.bus_bytes.value) + " bytes in " +
                    std::to_string(update.time.windows) + " windows, " +
                    in_words("%.2f ms, ", update.time.time.value) +
                    in_words("%.0f %% of the bus limit", 100 * update.time.share_of_limit));
    }
    // The scale of the columns.
    const std::string scale = in_words(most < 10 ? "%.1f ms" : "%.0f ms", most);
    draw.AddText(side.type.small,
                 side.type.small->FontSize,
                 {at.x + 4 * u, at.y + 3 * u},
                 ink(tint::quiet),
                 scale.c_str());
}

}  // namespace

void draw_updates(SideFrame& side) {
    Bench& bench = side.bench;
    const auto& updates = bench.journal.updates();
    const std::string figure =
        updates.empty() ? "none yet" : in_words("%.2f ms", updates.back().time.time.value);
    if (!section(side, "UPDATES SENT", figure, updates.empty() ? tint::quiet : tint::engraved))
        return;
    draw_columns(side);
    if (!updates.empty()) {
        const EventTime& last = updates.back().time;
        say(side,
            tint::quiet,
            last.event + ": " + grouped(last.bus_bytes.value) + " bytes, " +
                in_words("%.0f", 100 * last.share_of_limit) + " % of the bus limit");
    } else {
        say(side, tint::quiet, "Turn the knob or press a key.");
    }
    check_box(side, "at the speed of the bus", bench.habits.bus_speed);
    tip(side, "Pictures build up on the glass in the time that the receiver would take.");
    check_box(side, "outline what is sent", bench.habits.show_windows);
    tip(side, "Outlines each window that was sent, at most three times a second.");
    if (press_button(side, "Draw the page again")) bench.order(Order::redraw);
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "Clear")) bench.order(Order::clear_journal);
}

void draw_events(SideFrame& side) {
    Bench& bench = side.bench;
    const auto& events = bench.journal.events();
    if (section(side,
                "FINGER",
                in_words("%.0f mm", bench.habits.finger.millimetres) +
                    (bench.habits.finger.scattered ? ", scattered" : ""),
                tint::engraved)) {
        float size = static_cast<float>(bench.habits.finger.millimetres);
        ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x - 120 * side.unit);
        if (ImGui::SliderFloat("##finger", &size, 1.0f, 20.0f, ""))
            bench.habits.finger.millimetres = std::round(size);
        tip(side, "Diameter of the pad of the finger that touches; a stylus has 1 mm.");
        ImGui::SameLine(0, 10 * side.unit);
        check_box(side, "scatter", bench.habits.finger.scattered);
        tip(side,
            "Each press lands beside the point aimed at, as fingers do: standard deviation as the "
            "layout's touch.scatter_mm says, 1.5 mm when left out.");
    }
    if (!section(side,
                 "THE RECEIVER HEARS",
                 events.empty() ? "nothing yet" : std::to_string(events.size()) + " events",
                 events.empty() ? tint::quiet : tint::engraved))
        return;
    if (events.empty()) {
        say(side, tint::quiet, "Press a key on the glass.");
        return;
    }
    constexpr std::size_t most = 12;
    std::size_t shown = 0;
    for (auto event = events.rbegin(); event != events.rend() && shown < most; ++event, ++shown) {
        const float left = ImGui::GetCursorPosX();
        say(side, tint::quiet, name_of(event->event.kind));
        ImGui::SameLine(left + 70 * side.unit);
        say(side, tint::engraved, event->event.name);
        if (event->value.empty()) continue;
        ImGui::SameLine();
        say_right(side, tint::lit, event->value);
    }
}

}  // namespace dialplate
