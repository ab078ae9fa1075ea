// Legends, lamps, pictures and frames: what stands or shines on a page.
#include "sim/layout/picture_size.hpp"
#include "sim/layout/read_item.hpp"
#include "sim/layout/reader.hpp"

#include <algorithm>

namespace dialplate {

Align read_align(const Members& members, Align otherwise) {
    static constexpr Word<Align> words[] = {
        {"left", Align::left}, {"centre", Align::centre}, {"right", Align::right}};
    return members.one_of("align", std::span<const Word<Align>>(words)).value_or(otherwise);
}

void read_legend(const Members& members, PaintId ground, Item& item, const Draft& draft) {
    Legend& legend = item.legend;
    TextShape words = words_on_item;
    words.least = 1;
    legend.text = members.text("text", words).value_or("");
    legend.face = draft.faces.find_or(members, "face", 0);
    legend.ink = draft.paints.find_or(members, "ink", 0);
    legend.ground = draft.paints.find_or(members, "ground", ground);
    legend.align = read_align(members, Align::left);
}

void read_lamp(const Members& members, Item& item, const Draft& draft) {
    Lamp& lamp = item.lamp;
    const auto id =
        value_ref(members,
                  "value",
                  draft,
                  {ValueType::choice, ValueType::flag, ValueType::number, ValueType::level});
    lamp.face = draft.faces.find_or(members, "face", 0);
    lamp.radius = read_radius(members, item.box);
    lamp.edge = members.whole_or("edge", {0, widest_edge}, 0);
    if (const Node* const lit = members.find("lit")) {
        lamp.lit = read_tones(
            *lit, members.pointer_of("lit"), {"lit state of a lamp"}, std::nullopt, draft);
    }
    lamp.unlit = lamp.lit;
    if (const Node* const unlit = members.find("unlit")) {
        lamp.unlit = read_tones(
            *unlit, members.pointer_of("unlit"), {"unlit state of a lamp"}, lamp.lit, draft);
    }
    lamp.text = members.text("text", words_on_item).value_or("");
    if (!id) return;

    lamp.value = *id;
    const Value& value = draft.layout.values[static_cast<std::size_t>(*id)];
    const bool shows_choices = value.type == ValueType::choice && !members.has("when");
    if (shows_choices) {
        if (members.has("text")) {
            members.fail("text",
                         "unknown-member",
                         "needs \"when\"; without it a lamp shows the words of the present choice");
        }
        if (value.choices.size() > most_lamp_lines) {
            members.fail("value",
                         "out-of-range",
                         "has " + std::to_string(value.choices.size()) +
                             " choices; a lamp without \"when\" shows at most " +
                             std::to_string(most_lamp_lines));
        }
        return;
    }
    if (members.has("when")) {
        lamp.when = state_in(members, "when", value);
    } else if (value.type == ValueType::flag) {
        lamp.when = 1;
    } else {
        members.fail_whole("missing-member",
                           "lacks \"when\"; only a choice or a flag can do without");
    }
    if (!members.has("unlit")) {
        members.fail_whole(
            "missing-member",
            "lacks \"unlit\", its tones while value " + quote(value.name) + " is something else");
    }
    if (!members.has("text") && value.type == ValueType::choice && lamp.when) {
        lamp.text = value.choices[static_cast<std::size_t>(*lamp.when)].text;
    }
}

namespace {

// Four paints in the place of ink and ground.
void read_tones_of(const Members& members, Picture& picture, const Draft& draft) {
    constexpr Range four{4, 4, "from ground to ink"};
    for (const char* other : {"ink", "ground"}) {
        if (members.has(other)) {
            members.fail(
                other,
                "unknown-member",
                "does not go with \"tones\", whose first paint is the ground and whose last "
                "is the ink");
        }
    }
    const Node* const list = members.list("tones", four);
    if (list == nullptr) return;
    for (std::size_t i = 0; i < list->elements.size(); ++i) {
        picture.tones.push_back(
            draft.paints
                .find_in(list->elements[i],
                         members.pointer_of("tones") + pointer_part(i),
                         "tone " + std::to_string(i + 1) + " of " + members.what(),
                         draft.mistakes)
                .value_or(0));
    }
    picture.ground = picture.tones.front();
    picture.ink = picture.tones.back();
}

}  // namespace

void read_picture(const Members& members, PaintId ground, Item& item, Draft& draft) {
    Picture& picture = item.picture;
    picture.file = members.text("file", {.least = 1}).value_or("");
    picture.ink = draft.paints.find_or(members, "ink", 0);
    picture.ground = draft.paints.find_or(members, "ground", ground);
    if (members.has("tones")) {
        read_tones_of(members, picture, draft);
    } else if (!members.has("ink")) {
        members.fail_whole("missing-member",
                           "lacks \"ink\" and \"tones\"; a picture has one of them");
    }
    picture.packing = read_packing(members);
    if (picture.packing == PackingWish::runs && members.has("tones")) {
        members.fail(
            "packing",
            "out-of-range",
            "is \"runs\", which has no tones; a picture in four paints is packed plain or in "
            "context");
    }
    draft.pictures.emplace(picture.file, picture.packing, picture.tones);
    if (draft.pictures.size() == most_named + 1) {
        members.fail("file",
                     "out-of-range",
                     "is one picture too many; a layout has at most " + std::to_string(most_named));
    }
    // A picture is as large as its file says. One that cannot be read is reported where it is drawn.
    const std::string path = find_file(draft.layout.directory, picture.file);
    const auto size = path.empty() ? std::nullopt : png_size(path);
    if (!size) return;
    item.box.width = (*size)[0];
    item.box.height = (*size)[1];
    const bool fits = item.box.right() <= farthest_pixel && item.box.bottom() <= farthest_pixel;
    if (!fits) {
        members.fail("at",
                     "out-of-range",
                     "puts the end of the picture at " + std::to_string(item.box.right()) + ", " +
                         std::to_string(item.box.bottom()) + "; allowed is up to " +
                         std::to_string(farthest_pixel));
    }
}

void read_frame(const Members& members, Item& item, const Draft& draft) {
    Frame& frame = item.frame;
    const int thickest = std::min({item.box.width, item.box.height, 255});
    frame.line = members.whole_or("line", {0, thickest, "the shorter side"}, 1);
    frame.ink = draft.paints.find_or(members, "ink", 0);
    frame.fill = draft.paints.find(members, "fill");
    if (frame.line > 0 && !members.has("ink")) {
        members.fail_whole("missing-member",
                           "lacks \"ink\"; only with \"line\": 0 a frame can do without");
    }
}

}  // namespace dialplate
