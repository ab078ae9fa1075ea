// Readouts: numbers in groups of digits.
#include "sim/layout/read_item.hpp"
#include "sim/layout/source_text.hpp"

#include <algorithm>
#include <cstdlib>
#include <numeric>

namespace dialplate {
namespace {

constexpr MemberName unit_members[] = {{"text", true}, {"face"}, {"ink"}};
constexpr MemberName tuning_members[] = {{"value", true}, {"mark"}};

// Digits of the greatest 32-bit number: ten powers of ten, from 10^0.
constexpr int most_digits = 10;

// Any display that is drawn at all is within the one, no readout waits for the other.
constexpr Span milliseconds_of_change{0.1, 1000.0};

int digits_of(std::int64_t number) {
    int digits = 1;
    for (number = std::abs(number); number >= 10; number /= 10)
        ++digits;
    return digits;
}

// Threes from the right: 8 digits are 2, 3, 3.
std::vector<int> groups_of_three(int digits) {
    std::vector<int> groups;
    for (; digits > 3; digits -= 3)
        groups.insert(groups.begin(), 3);
    groups.insert(groups.begin(), std::max(digits, 1));
    return groups;
}

std::vector<int> read_groups(const Members& members, std::vector<int> otherwise, int drop) {
    const Node* const list = members.list("groups", {1, most_digits});
    if (list == nullptr) return otherwise;
    std::vector<int> groups;
    for (std::size_t i = 0; i < list->elements.size(); ++i) {
        const auto digits = whole_in(list->elements[i],
                                     members.pointer_of("groups") + pointer_part(i),
                                     "a group of " + members.what(),
                                     {1, most_digits},
                                     members.mistakes());
        if (!digits) return otherwise;
        groups.push_back(static_cast<int>(*digits));
    }
    if (groups.empty()) return otherwise;
    const int sum = std::accumulate(groups.begin(), groups.end(), 0);
    if (sum + drop > most_digits) {
        members.fail("groups",
                     "out-of-range",
                     "shows " + std::to_string(sum) + " digits" +
                         (drop > 0 ? " and drops " + std::to_string(drop) : std::string()) +
                         "; a 32-bit number has at most " + std::to_string(most_digits));
        return otherwise;
    }
    return groups;
}

void read_unit(const Members& members, Readout& readout, const Draft& draft) {
    readout.unit_face = readout.face;
    readout.unit_ink = readout.ink;
    const Node* const node = members.find("unit");
    if (node == nullptr) return;
    const Members unit(
        *node, members.pointer_of("unit"), {"unit of a readout"}, unit_members, draft.mistakes);
    readout.unit = unit.text("text", {.least = 1, .most = most_characters}).value_or("");
    readout.unit_face = draft.faces.find_or(unit, "face", readout.face);
    readout.unit_ink = draft.paints.find_or(unit, "ink", readout.ink);
}

void read_tuning(const Members& members, Readout& readout, const Draft& draft) {
    const Node* const node = members.find("tuning");
    if (node == nullptr) return;
    using Mark = Readout::Mark;
    static constexpr Word<Mark> marks[] = {{"underline", Mark::underline},
                                           {"invert", Mark::invert}};
    const Members tuning(*node,
                         members.pointer_of("tuning"),
                         {"tuning of a readout"},
                         tuning_members,
                         draft.mistakes);
    readout.tuning = value_ref(tuning, "value", draft, {ValueType::number, ValueType::choice});
    readout.mark =
        tuning.one_of("mark", std::span<const Word<Mark>>(marks)).value_or(Mark::underline);
    if (!readout.tuning) return;
    const Value& step = draft.layout.values[static_cast<std::size_t>(*readout.tuning)];
    const bool numbered =
        std::all_of(step.choices.begin(), step.choices.end(), [](const Choice& choice) {
            return choice.number.has_value();
        });
    // With the role "step" this is reported at the choice itself.
    if (step.type == ValueType::choice && !numbered && step.role != Role::step) {
        tuning.fail("value",
                    "wrong-type",
                    "is " + quote(step.name) +
                        ", whose choices do not all have a \"number\"; the number says which digit "
                        "is marked");
    }
}

}  // namespace

void read_readout(const Members& members, PaintId ground, Item& item, const Draft& draft) {
    Readout& readout = item.readout;
    const auto value = value_ref(members, "value", draft, {ValueType::number, ValueType::level});
    readout.value = value.value_or(0);
    readout.face = draft.faces.find_or(members, "face", 0);
    readout.ink = draft.paints.find_or(members, "ink", 0);
    readout.ground = draft.paints.find_or(members, "ground", ground);
    readout.drop = members.whole_or("drop", {0, most_digits - 1}, 0);
    int digits = 1;
    if (value) {
        const Value& shown = draft.layout.values[static_cast<std::size_t>(*value)];
        digits = std::max(digits_of(shown.min), digits_of(shown.max)) - readout.drop;
    }
    readout.groups = read_groups(members, groups_of_three(digits), readout.drop);
    const int shown = std::accumulate(readout.groups.begin(), readout.groups.end(), 0);
    readout.least = members.whole_or("least", {1, shown, "the digits of its groups"}, 1);
    readout.separator = members.text("separator", {.least = 0, .most = 1}).value_or("");
    readout.align = read_align(members, Align::right);
    read_unit(members, readout, draft);
    read_tuning(members, readout, draft);
    if (const auto within = members.number("within_ms", milliseconds_of_change)) {
        readout.within = Milliseconds{*within};
    }
}

}  // namespace dialplate
