// Paints, palettes and looks: every colour of a layout.
#include "sim/layout/colour.hpp"
#include "sim/layout/draft.hpp"
#include "sim/layout/members.hpp"

namespace dialplate {
namespace {

constexpr MemberName look_members[] = {{"idle", true}, {"pressed"}, {"active"}, {"disabled"}};
constexpr MemberName tone_members[] = {{"ink"}, {"fill"}, {"edge"}};
constexpr MemberName first_tone_members[] = {{"ink", true}, {"fill", true}, {"edge"}};
constexpr int most_palettes = 255;  // u8, the paints as typed among them

// "#RRGGBB" as 0xRRGGBB.
std::optional<std::uint32_t> colour_in(const Node& node,
                                       const std::string& pointer,
                                       const std::string& what,
                                       Mistakes& mistakes) {
    if (node.kind == Node::Kind::misfit) return std::nullopt;
    constexpr std::size_t length = 7;
    std::uint32_t colour = 0;
    bool fine = node.kind == Node::Kind::text && node.text.size() == length && node.text[0] == '#';
    for (std::size_t i = 1; fine && i < length; ++i) {
        const char c = node.text[i];
        std::uint32_t digit = 0;
        if (c >= '0' && c <= '9') {
            digit = static_cast<std::uint32_t>(c - '0');
        } else if (c >= 'a' && c <= 'f') {
            digit = static_cast<std::uint32_t>(c - 'a') + 10;
        } else if (c >= 'A' && c <= 'F') {
            digit = static_cast<std::uint32_t>(c - 'A') + 10;
        } else {
            fine = false;
        }
        colour = colour << 4 | digit;
    }
    if (fine) return colour;
    mistakes.add({node.kind == Node::Kind::text ? "bad-colour" : "wrong-type",
                  pointer,
                  node.place,
                  what + " is " + describe(node) +
                      "; needs \"#RRGGBB\" with two hexadecimal digits each of red, green, blue"});
    return std::nullopt;
}

void read_palettes(const Members& document, Draft& draft) {
    Layout& layout = draft.layout;
    layout.palettes = {"main"};
    const Node* const palettes = document.object("palettes");
    if (palettes == nullptr) return;
    if (palettes->members.size() >= most_palettes) {
        document.fail("palettes",
                      "out-of-range",
                      "has " + std::to_string(palettes->members.size()) +
                          " palettes; allowed are 0 to " + std::to_string(most_palettes - 1));
        return;
    }
    for (const Member& palette : palettes->members) {
        const std::string pointer = document.pointer_of("palettes") + pointer_part(palette.name);
        check_name(palette.name, "palette", pointer, palette.place, draft.mistakes);
        if (palette.name == "main") {
            draft.mistakes.add({"duplicate-name",
                                pointer,
                                palette.place,
                                "the palette \"main\" is the paints themselves; another name is "
                                "needed"});
        }
        layout.palettes.push_back(palette.name);
        for (Paint& paint : layout.paints)
            paint.others.push_back(paint.rgb565);
        if (palette.value.kind != Node::Kind::object) {
            draft.mistakes.add({"wrong-type",
                                pointer,
                                palette.value.place,
                                "palette " + quote(palette.name) + " is " +
                                    describe(palette.value) +
                                    "; needs an object with paints and their colours"});
            continue;
        }
        std::vector<std::string_view> known;
        for (const Member& entry : palette.value.members) {
            const std::string at = pointer + pointer_part(entry.name);
            const std::optional<int> index = draft.paints.index(entry.name);
            const std::optional<std::uint32_t> colour =
                colour_in(entry.value,
                          at,
                          "paint " + quote(entry.name) + " of palette " + quote(palette.name),
                          draft.mistakes);
            if (index && colour) {
                layout.paints[static_cast<std::size_t>(*index)].others.back() =
                    pack_rgb565(*colour);
            } else if (!index) {
                if (known.empty()) {
                    for (const Paint& paint : layout.paints)
                        known.push_back(paint.name);
                }
                const std::string suggestion = did_you_mean(entry.name, known, draft.mistakes);
                draft.mistakes.add({"unknown-paint",
                                    at,
                                    entry.place,
                                    "palette " + quote(palette.name) + " gives a colour to " +
                                        quote(entry.name) + ", which \"paints\" does not have" +
                                        (suggestion.empty() ? ";" : suggestion) + " there are " +
                                        listed(known)});
            }
        }
    }
}

}  // namespace

void read_paints(const Members& document, Draft& draft) {
    const Node* const paints = document.object("paints");
    if (paints == nullptr) {
        draft.paints.unreadable();
        draft.layout.palettes = {"main"};
        return;
    }
    if (paints->members.empty() || paints->members.size() > most_named) {
        document.fail("paints",
                      "out-of-range",
                      "has " + std::to_string(paints->members.size()) +
                          " paints; allowed are 1 to " + std::to_string(most_named));
    }
    for (const Member& member : paints->members) {
        const std::string pointer = document.pointer_of("paints") + pointer_part(member.name);
        check_name(member.name, "paint", pointer, member.place, draft.mistakes);
        const std::uint32_t colour =
            colour_in(member.value, pointer, "paint " + quote(member.name), draft.mistakes)
                .value_or(0);
        draft.paints.add(member.name, member.place);
        draft.layout.paints.push_back({.name = member.name,
                                       .rgb888 = colour,
                                       .rgb565 = pack_rgb565(colour),
                                       .others = {},
                                       .pointer = pointer});
    }
    read_palettes(document, draft);
}

Tones read_tones(const Node& node,
                 const std::string& pointer,
                 Noun noun,
                 const std::optional<Tones>& otherwise,
                 const Draft& draft) {
    const Members members(node,
                          pointer,
                          std::move(noun),
                          otherwise ? MemberTable(tone_members) : MemberTable(first_tone_members),
                          draft.mistakes);
    Tones tones = otherwise.value_or(Tones{});
    tones.ink = draft.paints.find_or(members, "ink", tones.ink);
    tones.fill = draft.paints.find_or(members, "fill", tones.fill);
    tones.edge = draft.paints.find_or(members, "edge", otherwise ? tones.edge : tones.ink);
    return tones;
}

void read_looks(const Members& document, Draft& draft) {
    const Node* const looks = document.object("looks");
    if (looks == nullptr) {
        if (document.has("looks")) draft.looks.unreadable();
        return;
    }
    if (looks->members.size() > most_named) {
        document.fail("looks",
                      "out-of-range",
                      "has " + std::to_string(looks->members.size()) + " looks; allowed are 0 to " +
                          std::to_string(most_named));
    }
    for (const Member& member : looks->members) {
        Look look;
        look.name = member.name;
        look.pointer = document.pointer_of("looks") + pointer_part(member.name);
        check_name(look.name, "look", look.pointer, member.place, draft.mistakes);
        const Members members(
            member.value, look.pointer, {"look", look.name}, look_members, draft.mistakes);
        const auto state = [&](std::string_view name, const std::optional<Tones>& otherwise) {
            const Node* const node = members.find(name);
            if (node == nullptr) return otherwise.value_or(Tones{});
            return read_tones(*node,
                              members.pointer_of(name),
                              {name == "idle" ? "idle state of a look" : "state of a look",
                               look.name + ", " + std::string(name)},
                              otherwise,
                              draft);
        };
        look.idle = state("idle", std::nullopt);
        look.pressed = state("pressed", look.idle);
        look.active = state("active", look.idle);
        look.disabled = state("disabled", look.idle);
        draft.looks.add(look.name, member.place);
        draft.layout.looks.push_back(std::move(look));
    }
}

}  // namespace dialplate
