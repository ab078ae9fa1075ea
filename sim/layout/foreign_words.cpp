// What is called differently elsewhere.
#include "sim/layout/suggestion.hpp"

#include <algorithm>

namespace dialplate {
namespace {

// Plain words that somebody may try first.
struct OtherWord {
    std::string_view theirs, ours;
};
constexpr OtherWord other_words[] = {
    {"label", "text"},
    {"caption", "text"},
    {"title", "text"},
    {"string", "text"},
    {"font", "face"},
    {"fonts", "faces"},
    {"colour", "ink"},
    {"color", "ink"},
    {"foreground", "ink"},
    {"fg", "ink"},
    {"background", "ground"},
    {"bg", "ground"},
    {"background", "fill"},
    {"border", "edge"},
    {"border", "line"},
    {"outline", "edge"},
    {"colours", "paints"},
    {"colors", "paints"},
    {"position", "at"},
    {"pos", "at"},
    {"x", "at"},
    {"y", "at"},
    {"dimensions", "size"},
    {"width", "size"},
    {"height", "size"},
    {"w", "size"},
    {"h", "size"},
    {"type", "kind"},
    {"id", "name"},
    {"style", "look"},
    {"styles", "looks"},
    {"theme", "palettes"},
    {"screens", "pages"},
    {"widgets", "items"},
    {"elements", "items"},
    {"variables", "values"},
    {"rotation", "turn"},
    {"rotate", "turn"},
    {"orientation", "turn"},
    {"action", "tap"},
    {"press", "tap"},
    {"click", "tap"},
    {"on", "lit"},
    {"off", "unlit"},
    {"default", "start"},
    {"initial", "start"},
    {"minimum", "min"},
    {"maximum", "max"},
    {"options", "choices"},
    {"states", "choices"},
    {"image", "file"},
    {"path", "file"},
    {"src", "file"},
    {"microcontroller", "mcu"},
    {"cpu", "mcu"},
    {"bezel", "opening"},
    {"ignore", "waived"},
    {"waivers", "waived"},
    {"padding", "gap"},
    {"thickness", "bar"},
    {"vertical", "upright"},
    {"zoom", "scale"},
    {"enabled", "enabled_by"},
    {"decimals", "drop"},
    {"ticks", "marks"},
    {"speed_mhz", "clock_mhz"},
    {"frequency_mhz", "clock_mhz"},
    // Kinds of items and types of values.
    {"button", "key"},
    {"label", "legend"},
    {"led", "lamp"},
    {"indicator", "lamp"},
    {"bar", "meter"},
    {"gauge", "meter"},
    {"progress", "meter"},
    {"image", "picture"},
    {"icon", "picture"},
    {"bitmap", "picture"},
    {"box", "frame"},
    {"rectangle", "frame"},
    {"line", "frame"},
    {"dial", "scale"},
    {"digits", "readout"},
    {"counter", "readout"},
    {"integer", "number"},
    {"int", "number"},
    {"boolean", "flag"},
    {"bool", "flag"},
    {"switch", "flag"},
    {"enum", "choice"},
    {"select", "choice"},
    {"middle", "centre"},
};

}  // namespace

std::string_view meant_word(std::string_view wrong, const std::vector<std::string_view>& names) {
    if (const std::string_view best = nearest(wrong, names); !best.empty()) return best;
    // A slip in a foreign word still shows which one was meant.
    std::vector<std::string_view> foreign;
    std::vector<std::string_view> ours;
    for (const OtherWord& word : other_words) {
        if (std::find(names.begin(), names.end(), word.ours) == names.end()) continue;
        foreign.push_back(word.theirs);
        ours.push_back(word.ours);
    }
    const std::string_view found = nearest(wrong, foreign);
    if (found.empty()) return {};
    const auto at = std::find(foreign.begin(), foreign.end(), found);
    return ours[static_cast<std::size_t>(at - foreign.begin())];
}

}  // namespace dialplate
