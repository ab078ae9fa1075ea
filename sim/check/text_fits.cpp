// text-fits: every text has room in its item at its widest value.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <map>

namespace dialplate::rule {

namespace {

constexpr RuleSource text_fits_sources[] = {
    {"common practice, no source", Trust::practice},
};

/// Pixels that are missing, the greater of the two directions.
int shortage(const TextExtent& text) {
    return std::max(text.width - text.room_width, text.height - text.room_height);
}

std::string sentence(const Item& item, const TextExtent& text) {
    const bool across = text.width - text.room_width == shortage(text);
    const int needs = across ? text.width : text.height;
    const int room = across ? text.room_width : text.room_height;
    return called(item) + ": \"" + text.what + "\" is " + std::to_string(needs) + " px " +
           (across ? "wide" : "high") + ", there is room for " + std::to_string(room) +
           ": make the item " + std::to_string(needs - room) + " px " +
           (across ? "wider" : "higher") + " or take a smaller face";
}

void find_text_fits(const Subject& subject, std::vector<Finding>& found) {
    // One finding an item: its widest text is the one that has to fit.
    std::map<std::pair<int, int>, const TextExtent*> worst;
    for (const TextExtent& text : subject.image.texts_shown) {
        if (shortage(text) <= 0) continue;
        const TextExtent*& kept = worst[{text.page, text.item}];
        if (kept == nullptr || shortage(text) > shortage(*kept)) kept = &text;
    }
    for (const auto& [where, text] : worst) {
        const Item& item = subject.layout.pages.at(static_cast<std::size_t>(where.first))
                               .items.at(static_cast<std::size_t>(where.second));
        const bool across = text->width - text->room_width == shortage(*text);
        add_finding(found,
                    Severity::must,
                    item.pointer,
                    {static_cast<double>(across ? text->width : text->height),
                     static_cast<double>(across ? text->room_width : text->room_height),
                     "px"},
                    sentence(item, *text));
    }
}

}  // namespace

const Rule text_fits{
    .name = "text-fits",
    .sentence = "Every text has room in its item at its widest value.",
    .computed =
        "Width and height of the pixels that a text can take, at its widest value and in every "
        "choice, against the room inside the edges of its item.",
    .formula = "width of the text <= room across, height of its lines <= room down",
    .sources = text_fits_sources,
    .figures = {},
    .find = find_text_fits,
};

}  // namespace dialplate::rule
