// Keys: what can be pressed, and what that does.
#include "sim/layout/read_item.hpp"

#include <algorithm>

namespace dialplate {
namespace {

constexpr MemberName set_members[] = {{"set", true}, {"to", true}};
constexpr MemberName step_members[] = {{"step", true}, {"by"}, {"around"}};
constexpr MemberName toggle_members[] = {{"toggle", true}};
constexpr MemberName page_action_members[] = {{"page", true}};
constexpr MemberName active_members[] = {{"value", true}, {"at"}};

struct ActionShape {
    ActionKind kind;
    std::string_view member;  // Which of its members tells it from the others.
    MemberTable table;
};
constexpr ActionShape shapes[] = {
    {ActionKind::set, "set", set_members},
    {ActionKind::step, "step", step_members},
    {ActionKind::toggle, "toggle", toggle_members},
    {ActionKind::page, "page", page_action_members},
};

const Value& value_at(const Draft& draft, ValueId id) {
    return draft.layout.values[static_cast<std::size_t>(id)];
}

void read_step(const Members& members, Action& action, const Draft& draft) {
    const auto value =
        value_ref(members, "step", draft, {ValueType::number, ValueType::level, ValueType::choice});
    action.value = value.value_or(0);
    action.amount = members.whole_or("by", any_number(), 1);
    if (action.amount == 0) {
        members.fail("by", "out-of-range", "is 0; a step goes up or down");
    }
    action.around = members.flag("around").value_or(false);
}

Action read_action(const Members& key, std::string_view member, const Draft& draft) {
    Action action;
    const Node* const node = key.find(member);
    if (node == nullptr) return action;
    action.pointer = key.pointer_of(member);
    if (node->kind != Node::Kind::object) {
        if (node->kind != Node::Kind::misfit) {
            key.fail(member,
                     "wrong-type",
                     "is " + describe(*node) +
                         "; needs an action: {\"set\": VALUE, \"to\": STATE}, {\"step\": VALUE, "
                         "\"by\": NUMBER}, {\"toggle\": FLAG} or {\"page\": PAGE}");
        }
        return action;
    }
    const ActionShape* shape = nullptr;
    int matching = 0;
    for (const ActionShape& each : shapes) {
        if (node->find(each.member) == nullptr) continue;
        if (shape == nullptr) shape = &each;
        ++matching;
    }
    if (matching > 1) {
        key.fail(member,
                 "wrong-type",
                 "has more than one of set, step, toggle, page; an action has exactly one of them");
        return action;
    }
    if (shape == nullptr) {
        static constexpr MemberName every_member[] = {
            {"set"}, {"to"}, {"step"}, {"by"}, {"around"}, {"toggle"}, {"page"}};
        const Members members(*node, action.pointer, {"action"}, every_member, draft.mistakes);
        key.fail(member,
                 "missing-member",
                 "lacks set, step, toggle or page; an action has exactly one of them");
        return action;
    }
    action.kind = shape->kind;
    const Members members(*node, action.pointer, {"action"}, shape->table, draft.mistakes);
    switch (shape->kind) {
        case ActionKind::set: {
            const auto value = value_ref(
                members,
                "set",
                draft,
                {ValueType::number, ValueType::choice, ValueType::flag, ValueType::level});
            if (!value) break;
            action.value = *value;
            action.amount = state_in(members, "to", value_at(draft, *value)).value_or(0);
            break;
        }
        case ActionKind::step:
            read_step(members, action, draft);
            break;
        case ActionKind::toggle:
            action.value = value_ref(members, "toggle", draft, {ValueType::flag}).value_or(0);
            break;
        case ActionKind::page:
            action.page = draft.pages.find_or(members, "page", 0);
            break;
        case ActionKind::none:
            break;
    }
    return action;
}

void read_active(const Members& members, Key& key, const Draft& draft) {
    const Node* const node = members.find("active");
    if (node == nullptr) return;
    const Members active(*node,
                         members.pointer_of("active"),
                         {"active state of a key"},
                         active_members,
                         draft.mistakes);
    key.active_value =
        value_ref(active,
                  "value",
                  draft,
                  {ValueType::number, ValueType::choice, ValueType::flag, ValueType::level});
    if (!key.active_value) return;
    const Value& value = value_at(draft, *key.active_value);
    if (value.type != ValueType::flag && !active.has("at")) {
        active.fail_whole("missing-member",
                          "lacks \"at\"; only a flag can do without, and is then meant to be true");
    }
    key.active_at = state_in(active, "at", value).value_or(1);
}

}  // namespace

int read_radius(const Members& members, const Box& box) {
    const int half = std::min(box.width, box.height) / 2;
    return members.whole_or("radius", {0, std::min(half, 255), "half of the shorter side"}, 0);
}

void read_key(const Members& members, Item& item, const Draft& draft) {
    Key& key = item.key;
    key.text = members.text("text", words_on_item).value_or("");
    key.face = draft.faces.find_or(members, "face", 0);
    key.look = draft.looks.find_or(members, "look", 0);
    key.radius = read_radius(members, item.box);
    key.edge = members.whole_or("edge", {0, widest_edge}, 1);
    key.tap = read_action(members, "tap", draft);
    key.hold = read_action(members, "hold", draft);
    key.repeat = members.flag("repeat").value_or(false);
    if (key.repeat && !members.has("tap")) {
        members.fail("repeat", "missing-member", "is true, but there is no \"tap\" to repeat");
    }
    read_active(members, key, draft);
    key.enabled_by = value_ref(members, "enabled_by", draft, {ValueType::flag});
}

}  // namespace dialplate
