#include "sim/edit/json_words.hpp"
#include "sim/trial/result.hpp"

#include <cstdio>

namespace dialplate {
namespace {

/// A thousandth of a millimetre is finer than any touch sheet.
std::string number(double value) {
    char words[32];
    std::snprintf(words, sizeof words, "%.3f", value);
    std::string text = words;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

std::string number(const std::optional<double>& value) {
    return value ? number(*value) : "null";
}

const char* words(bool yes) {
    return yes ? "true" : "false";
}

std::string pair(const std::string& a, const std::string& b) {
    return "[" + a + ", " + b + "]";
}

const char* name_of(Task::Kind kind) {
    constexpr const char* names[] = {"set", "tune", "page"};
    return names[static_cast<std::size_t>(kind)];
}

/// The members of TouchFigures, without braces.
std::string figures(const TouchFigures& of) {
    const bool any = of.landings > 0;
    return "\"hits\": " + std::to_string(of.hits) + ", \"misses\": " + std::to_string(of.misses) +
           ", \"median_ms\": " + number(of.median_ms) +
           ", \"landings\": " + std::to_string(of.landings) +
           ", \"off_mm\": " + (any ? pair(number(of.off_x_mm), number(of.off_y_mm)) : "null") +
           ", \"spread_mm\": " +
           (of.spread_x_mm ? pair(number(of.spread_x_mm), number(of.spread_y_mm)) : "null") +
           ", \"sigma_mm\": " + number(of.sigma_mm());
}

/// A list, one element a line.
template <class All, class Write>
std::string list(const All& all, Write write) {
    std::string lines;
    for (const auto& one : all)
        lines += (lines.empty() ? "\n    {" : ",\n    {") + write(one) + "}";
    return "[" + lines + (lines.empty() ? "]" : "\n  ]");
}

}  // namespace

std::string written(const Trial& trial, const TrialSetting& setting) {
    const Layout& layout = trial.layout();
    const TrialResult result = result_of(trial);
    const auto page = [&](int number_of_page) {
        return json_text(layout.pages[static_cast<std::size_t>(number_of_page)].name);
    };
    return "{\n  \"trial\": 1,\n  \"layout\": " + json_text(setting.layout_file) +
           ",\n  \"title\": " + json_text(layout.title) +
           ",\n  \"display\": " + json_text(layout.display.name) +
           ",\n  \"date\": " + json_text(setting.date) +
           ",\n  \"seed\": " + std::to_string(trial.seed()) +
           ",\n  \"finger_mm\": " + number(setting.finger_mm) +
           ",\n  \"scattered\": " + words(setting.scattered) + ",\n  \"all\": {" +
           figures(result.all) + "},\n  \"keys\": " +
           list(result.keys,
                [&](const KeyFigures& key) {
                    return "\"key\": " + json_text(key.key) + ", \"name\": " + json_text(key.name) +
                           ", \"page\": " + page(key.page) + ", " + figures(key.figures);
                }) +
           ",\n  \"tasks\": " +
           list(trial.outcomes(),
                [](const TaskOutcome& task) {
                    return "\"words\": " + json_text(task.words) + ", \"kind\": \"" +
                           name_of(task.kind) + "\", \"done\": " + words(task.done) +
                           ", \"ms\": " + number(task.took.value);
                }) +
           ",\n  \"touches\": " +
           list(trial.touches(),
                [&](const TrialTouch& touch) {
                    return "\"task\": " + std::to_string(touch.task) +
                           ", \"page\": " + page(touch.page) +
                           ", \"at\": " + pair(std::to_string(touch.x), std::to_string(touch.y)) +
                           ", \"key\": " + json_text(touch.key) +
                           ", \"name\": " + json_text(touch.name) +
                           ", \"hit\": " + words(touch.hit) + ", \"near\": " + words(touch.near) +
                           ", \"off_mm\": " +
                           pair(number(touch.off_x.value), number(touch.off_y.value)) +
                           ", \"ms\": " + number(touch.after.value);
                }) +
           "\n}\n";
}

}  // namespace dialplate
