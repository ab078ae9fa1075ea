// unseen-choice: what is chosen by a key can be seen somewhere; and of a value that is shown state by
// state, no state is forgotten.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <set>

namespace dialplate::rule {

namespace {

constexpr RuleSource unseen_choice_sources[] = {
    {"common practice, no source", Trust::practice},
};

/// How the items show one value.
struct Showing {
    bool set_by_key = false;
    bool whole = false;             ///< Some item shows every state.
    std::set<std::int32_t> states;  ///< States that a lamp or an active key shows.
};

void add_item(std::vector<Showing>& values, const Item& item) {
    const auto of = [&](ValueId id) -> Showing& { return values.at(static_cast<std::size_t>(id)); };
    switch (item.kind) {
        case ItemKind::readout:
            of(item.readout.value).whole = true;
            if (item.readout.tuning) of(*item.readout.tuning).whole = true;
            break;
        case ItemKind::key:
            for (const Action* action : {&item.key.tap, &item.key.hold})
                if (action->kind == ActionKind::set || action->kind == ActionKind::step)
                    of(action->value).set_by_key = true;
            if (item.key.active_value) of(*item.key.active_value).states.insert(item.key.active_at);
            break;
        case ItemKind::lamp:
            if (item.lamp.when)
                of(item.lamp.value).states.insert(*item.lamp.when);
            else
                of(item.lamp.value).whole = true;
            break;
        case ItemKind::meter:
            of(item.meter.value).whole = true;
            break;
        case ItemKind::scale:
            of(item.scale.value).whole = true;
            break;
        case ItemKind::legend:
        case ItemKind::picture:
        case ItemKind::frame:
            break;
    }
}

std::string missing_states(const Value& value, const Showing& showing) {
    std::string missing;
    for (std::size_t i = 0; i < value.choices.size(); ++i) {
        if (showing.states.contains(static_cast<std::int32_t>(i))) continue;
        if (!missing.empty()) missing += ", ";
        missing += "\"" + value.choices[i].text + "\"";
    }
    return missing;
}

void find_unseen_choice(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    std::vector<Showing> values(layout.values.size());
    for (const Page& page : layout.pages)
        for (const Item& item : page.items)
            add_item(values, item);
    for (std::size_t i = 0; i < values.size(); ++i) {
        const Value& value = layout.values[i];
        const Showing& showing = values[i];
        if (value.type != ValueType::choice || showing.whole) continue;
        const std::size_t choices = value.choices.size();
        if (showing.states.empty()) {
            if (!showing.set_by_key) continue;  // the rule "unused" speaks of it
            add_finding(found,
                        Severity::should,
                        value.pointer,
                        {0, static_cast<double>(choices), "choices"},
                        "value \"" + value.name +
                            "\" is set by a key, but no item shows which of its " +
                            counted(static_cast<long long>(choices), "choice", "choices") +
                            " is in force: add a lamp, or let the keys be active at it");
        } else if (showing.states.size() < choices) {
            add_finding(found,
                        Severity::note,
                        value.pointer,
                        {static_cast<double>(showing.states.size()),
                         static_cast<double>(choices),
                         "choices"},
                        "value \"" + value.name +
                            "\" has choices that no item shows: " + missing_states(value, showing));
        }
    }
}

}  // namespace

const Rule unseen_choice{
    .name = "unseen-choice",
    .sentence = "What a key chooses can be seen.",
    .computed =
        "For every choice that a key sets: which of its states some readout, lamp, active key, "
        "meter or scale shows.",
    .formula = "states shown = states that there are",
    .sources = unseen_choice_sources,
    .figures = {},
    .find = find_unseen_choice,
};

}  // namespace dialplate::rule
