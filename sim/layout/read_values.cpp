// Values: what the receiver tells the display.
#include "sim/layout/draft.hpp"
#include "sim/layout/members.hpp"

#include <algorithm>
#include <limits>
#include <unordered_map>

namespace dialplate {
namespace {

constexpr MemberName number_members[] = {
    {"type", true}, {"unit"}, {"role"}, {"min", true}, {"max", true}, {"start"}, {"per_second"}};
constexpr MemberName choice_members[] = {
    {"type", true}, {"unit"}, {"role"}, {"choices", true}, {"start"}, {"per_second"}};
constexpr MemberName flag_members[] = {{"type", true}, {"start"}, {"per_second"}};
constexpr MemberName one_choice_members[] = {
    {"text", true}, {"number"}, {"low"}, {"high"}, {"mode"}};

constexpr int most_choices = 255;  // u8 in the engine's memory

constexpr Word<ValueType> types[] = {{"number", ValueType::number},
                                     {"choice", ValueType::choice},
                                     {"flag", ValueType::flag},
                                     {"level", ValueType::level}};

// What a role can be played on.
struct RoleWord {
    Role role;
    std::string_view word;
    bool number, choice, level;
    bool needs_numbers;  // Every choice has to say what it stands for.
};
constexpr RoleWord roles[] = {
    {Role::frequency, "frequency", true, false, false, false},
    {Role::step, "step", true, true, false, true},
    {Role::band, "band", false, true, false, true},
    {Role::mode, "mode", false, true, false, false},
    {Role::bandwidth, "bandwidth", true, true, false, false},
    {Role::attenuator, "attenuator", false, true, false, true},
    {Role::signal, "signal", true, false, true, false},
    {Role::clock_hours, "clock_hours", true, false, true, false},
    {Role::clock_minutes, "clock_minutes", true, false, true, false},
    {Role::clock_seconds, "clock_seconds", true, false, true, false},
};

const RoleWord* role_word(Role role) {
    for (const RoleWord& each : roles) {
        if (each.role == role) return &each;
    }
    return nullptr;
}

std::string_view word_of(ValueType type) {
    for (const Word<ValueType>& each : types) {
        if (each.meaning == type) return each.word;
    }
    return "number";
}

void read_role(const Members& members, Value& value, Draft& draft) {
    static const std::vector<Word<Role>> words = [] {
        std::vector<Word<Role>> all;
        for (const RoleWord& each : roles)
            all.push_back({each.word, each.role});
        return all;
    }();
    const auto role = members.one_of("role", std::span<const Word<Role>>(words));
    if (!role) return;
    value.role = *role;
    const RoleWord& word = *role_word(*role);
    const bool fits = (value.type == ValueType::number && word.number) ||
                      (value.type == ValueType::choice && word.choice) ||
                      (value.type == ValueType::level && word.level);
    if (!fits) {
        std::string allowed;
        for (const auto& [type, yes] : {std::pair(ValueType::number, word.number),
                                        std::pair(ValueType::choice, word.choice),
                                        std::pair(ValueType::level, word.level)}) {
            if (!yes) continue;
            if (!allowed.empty()) allowed += " or ";
            allowed += '"' + std::string(word_of(type)) + '"';
        }
        members.fail("role",
                     "wrong-type",
                     "is " + quote(word.word) + ", which is played on a value of type " + allowed +
                         ", not \"" + std::string(word_of(value.type)) + '"');
    }
    for (const Value& other : draft.layout.values) {
        if (other.role != value.role) continue;
        const int index = draft.values.index(other.name).value_or(0);
        members.fail("role",
                     "duplicate-name",
                     "is " + quote(word.word) + ", which " + quote(other.name) + " in line " +
                         std::to_string(draft.values.place(index).line) + " plays already");
        break;
    }
}

// False if the range cannot be relied upon.
bool read_number(const Members& members, Value& value) {
    const bool level = value.type == ValueType::level;
    using Level = std::numeric_limits<std::int16_t>;
    const Range all =
        level ? Range{Level::min(), Level::max(), "a level has 16 bits"} : any_number();
    const auto min = members.whole("min", all);
    const auto max = members.whole("max", all);
    if (min && max && *min > *max) {
        members.fail(
            "max",
            "out-of-range",
            "is " + std::to_string(*max) + ", below \"min\", which is " + std::to_string(*min));
        return false;
    }
    value.min = static_cast<std::int32_t>(min.value_or(all.least));
    value.max = static_cast<std::int32_t>(max.value_or(all.most));
    value.start = members.whole_or("start", {value.min, value.max, "min to max"}, value.min);
    return min && max;
}

Choice read_choice(const Node& node,
                   const std::string& pointer,
                   const Value& value,
                   Mistakes& mistakes) {
    Choice choice;
    choice.pointer = pointer;
    constexpr TextShape words{.least = 1, .most = 40};
    if (node.kind == Node::Kind::text) {
        const std::string what = "choice of value " + quote(value.name);
        choice.text = text_in(node, pointer, what, words, mistakes).value_or("");
    } else {
        const Members members(
            node, pointer, {"choice", name_in(node, "text")}, one_choice_members, mistakes);
        choice.text = members.text("text", words).value_or("");
        const auto figure = [&](std::string_view name) -> std::optional<std::int32_t> {
            const auto whole = members.whole(name, any_number());
            return whole ? std::optional(static_cast<std::int32_t>(*whole)) : std::nullopt;
        };
        choice.number = figure("number");
        choice.low = figure("low");
        choice.high = figure("high");
        choice.mode = members.text("mode", words);
        if (members.has("low") != members.has("high")) {
            const bool low = members.has("low");
            members.fail_whole("missing-member",
                               std::string("has \"") + (low ? "low" : "high") + "\" without \"" +
                                   (low ? "high" : "low") + "\"; a band's edges come in pairs");
        }
        if (choice.low && choice.high && *choice.low > *choice.high) {
            members.fail("high",
                         "out-of-range",
                         "is " + std::to_string(*choice.high) + ", below \"low\", which is " +
                             std::to_string(*choice.low));
        } else if (choice.low && choice.high && choice.number &&
                   (*choice.number < *choice.low || *choice.number > *choice.high)) {
            members.fail("number",
                         "out-of-range",
                         "is " + std::to_string(*choice.number) + ", outside the band from " +
                             std::to_string(*choice.low) + " to " + std::to_string(*choice.high));
        }
    }
    const RoleWord* const role = role_word(value.role);
    const bool unreadable = node.kind != Node::Kind::text && node.kind != Node::Kind::object;
    if (role != nullptr && role->needs_numbers && node.find("number") == nullptr && !unreadable) {
        mistakes.add({"missing-member",
                      pointer,
                      node.place,
                      "choice " + quote(choice.text) + " of value " + quote(value.name) +
                          " lacks \"number\"; with the role " + quote(role->word) +
                          " each choice says what it stands for"});
    }
    if (value.role == Role::step && choice.number && *choice.number < 1) {
        mistakes.add({"out-of-range",
                      pointer + "/number",
                      node.find("number")->place,
                      "\"number\" of choice " + quote(choice.text) + " is " +
                          std::to_string(*choice.number) + "; a tuning step is at least 1"});
    }
    return choice;
}

void read_choices(const Members& members, Value& value) {
    const Node* const list = members.list("choices", {1, most_choices});
    if (list == nullptr) return;
    std::unordered_map<std::string, Place> seen;
    for (std::size_t i = 0; i < list->elements.size(); ++i) {
        const Node& node = list->elements[i];
        const std::string pointer = members.pointer_of("choices") + pointer_part(i);
        Choice choice = read_choice(node, pointer, value, members.mistakes());
        if (!choice.text.empty()) {
            const auto [earlier, fresh] = seen.emplace(choice.text, node.place);
            if (!fresh) {
                members.mistakes().add({"duplicate-name",
                                        pointer,
                                        node.place,
                                        "value " + quote(value.name) + " has the choice " +
                                            quote(choice.text) + " twice; first in line " +
                                            std::to_string(earlier->second.line)});
            }
        }
        value.choices.push_back(std::move(choice));
    }
    value.max = static_cast<std::int32_t>(value.choices.size()) - 1;
}

// A band's mode is one of those that the receiver can be in, if the layout shows them.
void check_band_modes(const Draft& draft, const Members& document) {
    const std::vector<Value>& values = draft.layout.values;
    const auto mode = std::find_if(values.begin(), values.end(), [](const Value& value) {
        return value.role == Role::mode && value.type == ValueType::choice;
    });
    if (mode == values.end()) return;
    std::vector<std::string_view> known;
    for (const Choice& choice : mode->choices)
        known.push_back(choice.text);
    for (const Value& value : values) {
        if (value.role != Role::band || value.choices.empty()) continue;
        const Node& list = *document.find("values")->find(value.name)->find("choices");
        for (std::size_t i = 0; i < value.choices.size(); ++i) {
            const Choice& choice = value.choices[i];
            if (!choice.mode) continue;
            if (std::find(known.begin(), known.end(), *choice.mode) != known.end()) continue;
            const std::string suggestion = did_you_mean(*choice.mode, known, draft.mistakes);
            draft.mistakes.add({"unknown-choice",
                                choice.pointer + "/mode",
                                list.elements[i].find("mode")->place,
                                "\"mode\" of choice " + quote(choice.text) + " is " +
                                    quote(*choice.mode) + ", which value " + quote(mode->name) +
                                    " does not have" + (suggestion.empty() ? ";" : suggestion) +
                                    " there are " + listed(known)});
        }
    }
}

}  // namespace

Range any_number() {
    using Number = std::numeric_limits<std::int32_t>;
    return {Number::min(), Number::max(), "a number has 32 bits"};
}

void read_values(const Members& document, Draft& draft) {
    const Node* const values = document.object("values");
    if (values == nullptr) {
        if (document.has("values")) draft.values.unreadable();
        return;
    }
    if (values->members.size() > most_named) {
        document.fail("values",
                      "out-of-range",
                      "has " + std::to_string(values->members.size()) +
                          " values; allowed are 0 to " + std::to_string(most_named));
    }
    for (const Member& member : values->members) {
        Value value;
        value.name = member.name;
        value.pointer = document.pointer_of("values") + pointer_part(member.name);
        check_name(value.name, "value", value.pointer, member.place, draft.mistakes);
        // The type says which members there are, so it is read before they are checked.
        const Node* const written = member.value.find("type");
        const Word<ValueType>* type = nullptr;
        bool readable = true;
        for (const Word<ValueType>& each : types) {
            if (written != nullptr && written->text == each.word) type = &each;
        }
        if (type == nullptr) {
            static constexpr MemberName every_member[] = {{"type", true},
                                                          {"unit"},
                                                          {"role"},
                                                          {"min"},
                                                          {"max"},
                                                          {"start"},
                                                          {"choices"},
                                                          {"per_second"}};
            const Members members(
                member.value, value.pointer, {"value", value.name}, every_member, draft.mistakes);
            members.one_of("type", std::span<const Word<ValueType>>(types));
            // Known by name, so that what refers to it is not wrong too; its states stay unknown.
            readable = false;
        } else {
            value.type = type->meaning;
            const MemberTable table = value.type == ValueType::choice ? MemberTable(choice_members)
                                      : value.type == ValueType::flag ? MemberTable(flag_members)
                                                                      : MemberTable(number_members);
            const Members members(
                member.value, value.pointer, {"value", value.name}, table, draft.mistakes);
            value.unit = members.text("unit", {.most = 16}).value_or("");
            read_role(members, value, draft);
            value.per_second = members.number("per_second", {0.001, 10000.0});
            if (value.type == ValueType::choice) {
                read_choices(members, value);
                value.start = state_in(members, "start", value).value_or(0);
            } else if (value.type == ValueType::flag) {
                value.max = 1;
                value.start = members.flag("start").value_or(false) ? 1 : 0;
            } else {
                readable = read_number(members, value);
            }
        }
        draft.values.add(value.name, member.place);
        draft.layout.values.push_back(std::move(value));
        draft.value_is_readable.push_back(readable);
    }
    check_band_modes(draft, document);
}

std::optional<std::int32_t> state_in(const Members& members,
                                     std::string_view member,
                                     const Value& value) {
    const Node* const node = members.find(member);
    if (node == nullptr || node->kind == Node::Kind::misfit) return std::nullopt;
    const std::string needs =
        "is " + describe(*node) + "; needs a state of value " + quote(value.name) + ": ";
    switch (value.type) {
        case ValueType::flag: {
            if (node->kind == Node::Kind::boolean) return node->boolean ? 1 : 0;
            members.fail(member, "wrong-type", needs + "true or false");
            return std::nullopt;
        }
        case ValueType::choice: {
            std::vector<std::string_view> known;
            for (const Choice& choice : value.choices)
                known.push_back(choice.text);
            if (known.empty()) return std::nullopt;  // Unreadable, and reported there.
            if (node->kind != Node::Kind::text) {
                members.fail(member, "wrong-type", needs + listed(known));
                return std::nullopt;
            }
            const auto found = std::find(known.begin(), known.end(), node->text);
            if (found != known.end()) return static_cast<std::int32_t>(found - known.begin());
            const std::string suggestion = did_you_mean(node->text, known, members.mistakes());
            members.fail(member,
                         "unknown-choice",
                         "is " + quote(node->text) + ", which value " + quote(value.name) +
                             " does not have" + (suggestion.empty() ? ";" : suggestion) +
                             " there are " + listed(known));
            return std::nullopt;
        }
        case ValueType::number:
        case ValueType::level: {
            const std::string why = "the range of value " + quote(value.name);
            const auto whole = members.whole(member, {value.min, value.max, why});
            return whole ? std::optional(static_cast<std::int32_t>(*whole)) : std::nullopt;
        }
    }
    return std::nullopt;
}

std::optional<ValueId> value_ref(const Members& members,
                                 std::string_view member,
                                 const Draft& draft,
                                 std::initializer_list<ValueType> allowed) {
    const std::optional<int> id = draft.values.find(members, member);
    if (!id || !draft.value_is_readable[static_cast<std::size_t>(*id)]) return std::nullopt;
    const Value& value = draft.layout.values[static_cast<std::size_t>(*id)];
    if (std::find(allowed.begin(), allowed.end(), value.type) != allowed.end()) return id;
    std::string types_allowed;
    for (const ValueType type : allowed) {
        if (!types_allowed.empty()) types_allowed += " or ";
        types_allowed += '"' + std::string(word_of(type)) + '"';
    }
    members.fail(member,
                 "wrong-type",
                 "is " + quote(value.name) + ", a value of type \"" +
                     std::string(word_of(value.type)) + "\"; needs one of type " + types_allowed);
    return std::nullopt;
}

}  // namespace dialplate
