#include "sim/desk/side_parts.hpp"
#include "sim/desk/tints.hpp"

#include <array>

namespace dialplate {
namespace {

/// Right ends of the columns after the name, from the right edge, in unenlarged pixels.
constexpr std::array<float, 4> column_ends{192, 142, 64, 0};
using Row = std::array<std::string, 4>;

/// A name and four figures that end at the columns.
void draw_row(const SideFrame& side, Colour colour, const std::string& name, const Row& row) {
    const float left = ImGui::GetCursorPosX();
    const float right = left + ImGui::GetContentRegionAvail().x;
    say(side, colour, name);
    for (std::size_t i = 0; i < row.size(); ++i) {
        const float width = ImGui::CalcTextSize(row[i].c_str()).x;
        ImGui::SameLine(right - column_ends[i] * side.unit - width);
        say(side, colour, row[i]);
    }
}

Row row_of(const TouchFigures& figures) {
    return {std::to_string(figures.hits) + " of " + std::to_string(figures.hits + figures.misses),
            figures.median_ms ? in_words("%.2f", *figures.median_ms / 1000) : "-",
            figures.landings > 0
                ? in_words("%+.1f", figures.off_x_mm) + " " + in_words("%+.1f", figures.off_y_mm)
                : "-",
            figures.spread_x_mm ? in_words("%.1f", *figures.spread_x_mm) + " " +
                                      in_words("%.1f", *figures.spread_y_mm)
                                : "-"};
}

void draw_table(const SideFrame& side, const TrialResult& result) {
    ImGui::PushFont(side.type.small);
    draw_row(side, tint::quiet, "KEY", {"HIT", "TIME S", "OFF BY MM", "SPREAD"});
    ImGui::PopFont();
    for (const KeyFigures& key : result.keys) {
        ImGui::BeginGroup();
        draw_row(side, tint::engraved, key.name, row_of(key.figures));
        ImGui::EndGroup();
    }
    draw_row(side, tint::lit, "all", row_of(result.all));
}

/// What a sigma of so many landings can be used for.
std::string worth_of(const Bench& bench, int landings) {
    if (bench.trial_ground.setting.scattered) return "the window's own scatter.";
    // From twenty on it is good to 11 % (sim/trial/result.md).
    return landings < 20 ? "20 and more can be relied on." : "this hand's touch.scatter_mm.";
}

void draw_result(SideFrame& side) {
    Bench& bench = side.bench;
    const TrialResult& result = *bench.trial_result;
    if (!result.keys.empty()) {
        draw_table(side, result);
        tip(side,
            "Median time of the hits; mean landing from the key's middle, right and down; standard "
            "deviation about that, each way.");
        if (const std::optional<double> sigma = result.all.sigma_mm())
            say_wrapped(side,
                        tint::quiet,
                        "Sigma" + in_words(" %.2f mm, ", *sigma) +
                            std::to_string(result.all.landings) +
                            " landings: " + worth_of(bench, result.all.landings));
    } else {
        say(side, tint::quiet, "Nothing was touched.");
    }
    if (press_button(side, "Save as JSON")) bench.order(Order::save_trial);
    tip(side, "Beside the layout (S)");
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "Again")) bench.order(Order::trial);
    tip(side, "With other tasks (F5)");
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "Clear")) bench.order(Order::hide);
    tip(side, "Esc");
}

}  // namespace

void draw_trial(SideFrame& side) {
    Bench& bench = side.bench;
    if (bench.piece.prototype() == nullptr) return;
    const Trial* trial = bench.trial.get();
    const Task* task = trial != nullptr ? trial->task() : nullptr;
    const std::string figure = trial == nullptr  ? "F5"
                               : task != nullptr ? std::to_string(trial->outcomes().size() + 1) +
                                                       " of " + std::to_string(trial->tasks())
                                                 : std::to_string(trial->done()) + " done";
    if (!section(side, "TRIAL", figure, trial == nullptr ? tint::quiet : tint::lit)) return;
    if (task != nullptr) {
        say_wrapped(side, tint::engraved, task->words);
        if (press_button(side, "Leave")) bench.order(Order::trial);
        tip(side, "Shows what was measured so far (F5)");
    } else if (bench.trial_result) {
        draw_result(side);
    } else {
        say_wrapped(side,
                    tint::quiet,
                    "Twelve things to do at this display: hits, times, and where touches land.");
        if (press_button(side, "Start")) bench.order(Order::trial);
        tip(side, "F5");
    }
}

}  // namespace dialplate
