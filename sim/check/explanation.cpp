#include "sim/check/explanation.hpp"

#include "sim/check/folding.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>

namespace dialplate {
namespace {

constexpr int indent = 2;

/// A heading and a text below it.
std::string part(const char* heading, const std::string& text, int width) {
    return std::string("\n") + heading + "\n  " + folded(text, width - indent, indent) + "\n";
}

std::string values_of(const RuleFigure& figure) {
    const ByProfile& value = figure.value;
    if (value.bench == value.gloved && value.bench == value.mobile)
        return with_unit(value.bench, figure.unit);
    return with_unit(value.bench, figure.unit) + "; gloved " +
           with_unit(value.gloved, figure.unit) + "; mobile " +
           with_unit(value.mobile, figure.unit);
}

std::string figures_of(const Rule& rule, const Layout* layout, int width) {
    if (rule.figures.empty()) return part("Figures", "none that a layout could set", width);
    std::size_t longest = 0;
    for (const RuleFigure& each : rule.figures)
        longest = std::max(longest, std::string(each.name).size());
    const int column = indent + static_cast<int>(longest) + 2;
    std::string text = "\nFigures\n";
    for (const RuleFigure& each : rule.figures) {
        std::string words = values_of(each) + ": " + each.meaning + "; may be " +
                            short_number(each.lowest) + " to " + with_unit(each.highest, each.unit);
        if (layout != nullptr)
            words += "; in " + layout->file + ": " +
                     with_unit(figure(*layout, rule, each.name), each.unit);
        text += up_to(column, std::string("  ") + each.name) +
                folded(words, width - column, column) + '\n';
    }
    return text;
}

std::string sources_of(const Rule& rule, int width) {
    std::string text = "\nSources, and how far they can be trusted\n";
    for (const RuleSource& source : rule.sources) {
        // Where the words say it themselves, the standing would only repeat them.
        const std::string standing = name_of(source.trust);
        const bool said = std::string(source.text).find(standing) != std::string::npos;
        text += "  " +
                folded(source.text + (said ? std::string() : " [" + standing + "]"),
                       width - 2 * indent,
                       2 * indent) +
                '\n';
    }
    return text;
}

std::string change_of(const Rule& rule, int width) {
    if (rule.figures.empty()) return {};
    const RuleFigure& first = rule.figures.front();
    const bool by_profile =
        std::any_of(rule.figures.begin(), rule.figures.end(), [](const RuleFigure& each) {
            return each.value.bench != each.value.gloved || each.value.bench != each.value.mobile;
        });
    std::string text = part("To change a figure", "write into the layout", width);
    if (by_profile) text += "    \"profile\": \"gloved\" (or \"mobile\", \"bench\"), or\n";
    return text + "    \"thresholds\": {\"" + rule.name + "\": {\"" + first.name +
           "\": " + short_number(first.value.bench) + "}}\n";
}

std::string waiver_of(const Rule& rule, int width) {
    return part(
               "To accept a finding on purpose",
               "write into the layout, with the place of the item; without \"item\" the rule is "
               "accepted everywhere. The finding stays visible with your reason, and a waiver that "
               "accepts nothing is found.",
               width) +
           "    \"waived\": [{\"rule\": \"" + rule.name +
           "\", \"item\": \"/pages/0/items/3\", \"reason\": \"...\"}]\n";
}

}  // namespace

std::string explained(const Rule& rule, const Layout* layout, int width) {
    return std::string(rule.name) + "\n  " + folded(rule.sentence, width - indent, indent) + "\n" +
           part("Computed", rule.computed, width) + part("Formula", rule.formula, width) +
           figures_of(rule, layout, width) + sources_of(rule, width) + change_of(rule, width) +
           waiver_of(rule, width);
}

std::string listed_rules(int width) {
    std::size_t longest = 0;
    for (const Rule& rule : rules())
        longest = std::max(longest, std::string(rule.name).size());
    const int column = static_cast<int>(longest) + 2;
    std::string text;
    for (const Rule& rule : rules())
        text += up_to(column, rule.name) + folded(rule.sentence, width - column, column) + '\n';
    return text + "\ndialplate check --explain RULE tells how one is computed and from what.\n";
}

}  // namespace dialplate
