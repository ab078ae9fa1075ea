#include "sim/edit/first_values.hpp"

#include "sim/edit/json_words.hpp"
#include "sim/edit/naming.hpp"
#include "sim/edit/pointers.hpp"
#include "sim/layout/amend.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <optional>
#include <string_view>

namespace dialplate {
namespace {

using Kind = Shape::Kind;

/// Where the least that the schema allows would be of no use. No source: what looks right on a small glass.
struct Start {
    std::string_view member;
    const char* value;
};
constexpr Start starts[] = {
    {"size", "[60, 24]"},
    {"groups", "[3, 3]"},
    {"separator", "\".\""},
    {"choices", "[\"one\", \"two\"]"},
    {"min", "0"},
    {"max", "100"},
    {"start", "0"},
    {"segments", "{\"width\": 16, \"height\": 32, \"stroke\": 3}"},
    {"per_pixel", "100"},
    {"minor", "1000"},
    {"major", "10000"},
    {"blocks", "{\"size\": 4, \"gap\": 1}"},
    {"supply_v", "5"},
    {"per_second", "10"},
    {"within_ms", "5"},
};

/// "...; 8 when left out." says 8.
std::optional<std::string> when_left_out(const std::string& description) {
    const std::size_t end = description.rfind(" when left out");
    if (end == std::string::npos) return std::nullopt;
    std::size_t begin = description.rfind(' ', end - 1);
    begin = begin == std::string::npos ? 0 : begin + 1;
    return description.substr(begin, end - begin);
}

bool is_number(const std::string& words) {
    char* end = nullptr;
    std::strtod(words.c_str(), &end);
    return !words.empty() && *end == '\0';
}

/// Types of values that a place takes, the likeliest first: n number, c choice, C choice of numbers, f flag,
/// l level, L number or level in a range that a bar can show.
std::string_view types_for(const Node& document, const std::string& pointer) {
    const std::string member = last_of(pointer), parent = parent_of(pointer);
    if (member == "enabled_by" || member == "toggle") return "f";
    if (member == "step") return "nlcC";
    if (member != "value") return "cCfnl";
    if (last_of(parent) == "tuning") return "Cn";
    const Node* object = node_at(document, parent);
    const std::string kind = text_in(object, "kind");
    if (kind == "readout") return "nl";
    if (kind == "meter") return "lL";
    if (kind == "scale") return "n";
    if (kind == "lamp") return object->find("when") == nullptr ? "cCf" : "cCfnl";
    return "cCfnl";
}

double number_in(const Node& object, const char* member, double otherwise) {
    const Node* found = object.find(member);
    return found != nullptr && found->kind == Node::Kind::number ? found->number : otherwise;
}

bool is_of_type(const Node& value, char letter) {
    const std::string type = text_in(&value, "type");
    switch (letter) {
        case 'n':
            return type == "number";
        case 'l':
            return type == "level";
        case 'f':
            return type == "flag";
        case 'L':
            // The range times the bar's length in pixels, 1023 at most, stays below 2^31 (the schema on "to").
            return type == "number" &&
                   number_in(value, "max", 0) - number_in(value, "min", 0) < 2147483648.0 / 1023;
        default:
            break;
    }
    const Node* choices = value.find("choices");
    if (type != "choice" || choices == nullptr) return false;
    const bool numbers = std::all_of(choices->elements.begin(),
                                     choices->elements.end(),
                                     [](const Node& one) { return one.find("number") != nullptr; });
    return numbers == (letter == 'C');
}

/// The value that an item, or what lies in it, speaks of; null if there is none.
const Node* value_shown(const Node& document, std::string pointer) {
    const Node* values = document.find("values");
    for (pointer = parent_of(pointer); values != nullptr && pointer.size() > 1;
         pointer = parent_of(pointer))
        if (const std::string name = text_in(node_at(document, pointer), "value"); !name.empty())
            return values->find(name);
    return nullptr;
}

/// Numbers that lie somewhere in the range of what an item shows.
std::optional<std::string> within_range(const Grounds& grounds,
                                        const std::string& pointer,
                                        const std::string& member) {
    if (member != "from" && member != "to" && member != "at") return std::nullopt;
    const Node* value = value_shown(grounds.document, pointer);
    if (value == nullptr || value->find("min") == nullptr) return std::nullopt;
    const Node* item = node_at(grounds.document, parent_of(pointer));
    if (member == "at" || last_of(parent_of(pointer)) == "over")
        item = node_at(grounds.document, parent_of(parent_of(pointer)));
    if (last_of(parent_of(parent_of(pointer))) == "marks")
        item = node_at(grounds.document, parent_of(parent_of(parent_of(pointer))));
    double least = number_in(*value, "min", 0), most = number_in(*value, "max", 0);
    if (item != nullptr && member != "from") least = number_in(*item, "from", least);
    if (item != nullptr && member != "to") most = number_in(*item, "to", most);
    if (last_of(parent_of(pointer)) == "over") least = (least + most) / 2;
    return std::to_string(static_cast<long long>(member == "to" ? most : least));
}

/// Roles that nothing plays yet come first: each is played once.
std::vector<std::string> free_first(const Node& document, std::vector<std::string> roles) {
    const Node* values = document.find("values");
    if (values == nullptr) return roles;
    std::stable_partition(roles.begin(), roles.end(), [&](const std::string& role) {
        return std::none_of(values->members.begin(), values->members.end(), [&](auto& value) {
            return text_in(&value.value, "role") == role;
        });
    });
    return roles;
}

/// The glass as an opening, in millimetres: a hole that shows all of it.
std::string whole_opening(const Layout* layout) {
    double width = 50, height = 40;
    if (layout != nullptr) {
        width = layout->pitch_x().value * layout->glass_width();
        height = layout->pitch_y().value * layout->glass_height();
    }
    char words[120];
    std::snprintf(words,
                  sizeof words,
                  "{\"left_mm\": 0, \"top_mm\": 0, \"width_mm\": %.1f, \"height_mm\": %.1f}",
                  width,
                  height);
    return words;
}

std::string object_with_what_it_needs(const Grounds& grounds, const std::string& pointer) {
    const Node* there = node_at(grounds.document, pointer);
    std::string text;
    const auto add = [&](const std::string& name, const std::string& value) {
        text += (text.empty() ? "" : ", ") + json_text(name) + ": " + value;
    };
    const std::vector<Form> forms =
        there == nullptr ? grounds.schema.forms(grounds.document, pointer) : std::vector<Form>{};
    // A key turns a page, if it can: that is what keys are for first of all.
    if (std::any_of(forms.begin(), forms.end(), [](auto& form) { return form.name == "page"; })) {
        const std::vector<std::string> pages = names_of(grounds.document, Kind::page);
        add("page", json_text(pages.empty() ? "" : pages.front()));
    }
    for (const OfferedMember& inner : grounds.schema.members(grounds.document, pointer))
        if (inner.required)
            add(inner.name,
                first_value(grounds, pointer + pointer_part(inner.name), inner.name, inner.shape));
    return "{" + text + "}";
}

/// When a key is drawn active: while what its tap sets is set, else while a flag is on.
std::string first_active(const Grounds& grounds, const std::string& pointer) {
    const Node* tap = node_at(grounds.document, parent_of(pointer) + "/tap");
    if (const std::string set = text_in(tap, "set"); !set.empty())
        if (const Node* to = tap->find("to"); to != nullptr)
            return "{\"value\": " + json_text(set) + ", \"at\": " +
                   (to->kind == Node::Kind::text      ? json_text(to->text)
                    : to->kind == Node::Kind::boolean ? (to->boolean ? "true" : "false")
                                                      : to->text) +
                   "}";
    const Node* values = grounds.document.find("values");
    if (values == nullptr || values->members.empty()) return "{\"value\": \"\"}";
    for (const Member& member : values->members)
        if (is_of_type(member.value, 'f')) return "{\"value\": " + json_text(member.name) + "}";
    for (const Member& member : values->members)
        if (const auto states =
                states_at(grounds.document, "/values" + pointer_part(member.name) + "/start");
            !states.empty())
            return "{\"value\": " + json_text(member.name) + ", \"at\": " + states.front() + "}";
    const Member& first = values->members.front();
    const Node* least = first.value.find("min");
    return "{\"value\": " + json_text(first.name) +
           ", \"at\": " + (least == nullptr ? "0" : least->text) + "}";
}

}  // namespace

std::vector<std::string> names_that_fit(const Grounds& grounds,
                                        const std::string& pointer,
                                        const Shape& shape) {
    if (!has_names(shape.kind)) return shape.choices;
    std::vector<std::string> names = names_of(grounds.document, shape.kind), fitting;
    if (shape.kind != Kind::value) return names;
    const Node* values = grounds.document.find("values");
    for (const char letter : types_for(grounds.document, pointer))
        for (std::string& name : names)
            if (const Node* value = values->find(name);
                value != nullptr && is_of_type(*value, letter))
                fitting.push_back(name);
    return fitting;
}

std::string first_value(const Grounds& grounds,
                        const std::string& pointer,
                        const std::string& member,
                        const Shape& shape) {
    if (const std::vector<std::string> states = states_at(grounds.document, pointer);
        !states.empty())
        return states.front();
    if (member == "opening") return whole_opening(grounds.layout);
    if (member == "active" && last_of(parent_of(parent_of(pointer))) == "items")
        return first_active(grounds, pointer);
    if (std::optional<std::string> number = within_range(grounds, pointer, member);
        number && shape.kind == Kind::whole)
        return *number;
    if (member == "low" || member == "high") {
        const Node* choice = node_at(grounds.document, parent_of(pointer));
        const Node* number = choice == nullptr ? nullptr : choice->find("number");
        if (number != nullptr) return number->text;
    }
    const std::optional<std::string> usual = when_left_out(shape.description);
    const bool number = shape.kind == Kind::whole || shape.kind == Kind::number;
    if (number && usual && is_number(*usual)) return *usual;
    if (shape.kind != Kind::fixed && shape.kind != Kind::object)
        for (const Start& start : starts)
            if (start.member == member &&
                (number || shape.kind == Kind::list || shape.kind == Kind::text))
                return start.value;
    switch (shape.kind) {
        case Kind::whole:
        case Kind::number: {
            const double least = shape.least.value_or(0.0);
            // The least of all 32 bits is nobody's first wish.
            return std::to_string(static_cast<long long>(least < -1000.0 ? 0.0 : least));
        }
        case Kind::flag:
            return "true";
        case Kind::state:
            return "0";
        case Kind::text:
        case Kind::words:
            return "\"new\"";
        case Kind::colour:
            return "\"#808080\"";
        case Kind::choice:
            if (usual && std::find(shape.choices.begin(), shape.choices.end(), *usual) !=
                             shape.choices.end())
                return is_number(*usual) ? *usual : json_text(*usual);
            if (member == "role") return json_text(free_first(grounds.document, shape.choices)[0]);
            [[fallthrough]];
        case Kind::paint:
        case Kind::face:
        case Kind::value:
        case Kind::look:
        case Kind::page: {
            const std::vector<std::string> names = names_that_fit(grounds, pointer, shape);
            if (names.empty()) return "\"\"";
            return shape.kind == Kind::choice && is_number(names.front())
                       ? names.front()
                       : json_text(names.front());
        }
        case Kind::list: {
            const Shape element = grounds.schema.within(grounds.document, pointer);
            std::string text;
            for (int i = 0; i < shape.fewest; ++i)
                text += (i == 0 ? "" : ", ") +
                        first_value(grounds, pointer + "/" + std::to_string(i), "", element);
            return "[" + text + "]";
        }
        case Kind::map:
            return "{}";
        case Kind::object:
            for (const Start& start : starts)
                if (start.member == member) return start.value;
            return object_with_what_it_needs(grounds, pointer);
        default:
            return "null";
    }
}

std::string first_thing(const Grounds& grounds,
                        Kind kind,
                        std::string_view text,
                        const std::string& like,
                        const std::string& name) {
    // A copy of the one that it shall be like, which is at hand most of the time.
    const std::vector<std::string> names = names_of(grounds.document, kind);
    const std::string model = !place_of(grounds.document, kind, like).empty() ? like
                              : names.empty()                                 ? ""
                                                                              : names.front();
    if (kind == Kind::page) {
        const std::vector<std::string> paints = names_of(grounds.document, Kind::paint);
        std::string ground = paints.empty() ? "" : paints.front();
        const Node* node = node_at(grounds.document, place_of(grounds.document, kind, model));
        if (const std::string known = text_in(node, "ground"); !known.empty()) ground = known;
        return "{\n  \"name\": " + json_text(name) + ",\n  \"ground\": " + json_text(ground) +
               ",\n  \"items\": []\n}";
    }
    if (!model.empty()) {
        std::optional<std::string> copy = value_at(text, place_of(grounds.document, kind, model));
        if (copy) {
            // What the receiver plays on a value it plays on one of them.
            const Change without_role{Change::Kind::remove, "/role", {}};
            if (kind == Kind::value)
                if (Amended plain = amend(*copy, std::span(&without_role, 1)); plain.text)
                    copy = std::move(plain.text);
            return *copy;
        }
    }
    switch (kind) {
        case Kind::paint:
            return "\"#808080\"";
        case Kind::face:
            return "{\"file\": \"legend13.bdf\", \"size\": 13}";
        case Kind::value:
            return "{\"type\": \"number\", \"min\": 0, \"max\": 100}";
        case Kind::look: {
            const std::vector<std::string> paints = names_of(grounds.document, Kind::paint);
            if (paints.empty()) return {};
            return "{\"idle\": {\"ink\": " + json_text(paints.back()) +
                   ", \"fill\": " + json_text(paints.front()) + "}}";
        }
        default:
            return {};
    }
}

}  // namespace dialplate
