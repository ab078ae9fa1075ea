#include "sim/trial/task.hpp"

#include "sim/receiver/read_out.hpp"
#include "sim/receiver/receiver.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace dialplate {
namespace {

/// Taps on one key that a task may take; a choice of more than that is no exercise.
constexpr int most_taps = 40;
/// Detents of the knob that a task asks for.
constexpr int least_detents = 3, most_detents = 12;
/// The knob is asked for at every so manieth task.
constexpr int tuning_every = 3;

std::optional<ValueId> value_with(const Layout& layout, Role role) {
    for (std::size_t i = 0; i < layout.values.size(); ++i)
        if (layout.values[i].role == role) return static_cast<ValueId>(i);
    return std::nullopt;
}

bool acts_on_value(const Action& action) {
    return action.kind == ActionKind::set || action.kind == ActionKind::step ||
           action.kind == ActionKind::toggle;
}

/// Whether a key's action, done again and again, brings its value where it is wanted.
bool reaches(const Action& action, const Task& task, const Layout& layout, std::int32_t now) {
    if (!acts_on_value(action) || action.value != task.value) return false;
    if (action.kind == ActionKind::set) return action.amount == task.amount;
    // The receiver knows what a key does to a value; nobody else should.
    Receiver receiver(layout);
    receiver.set(task.value, now);
    for (int taps = 0; taps < most_taps; ++taps) {
        receiver.act(action);
        if (receiver.get(task.value) == task.amount) return true;
    }
    return false;
}

bool is_enabled(const Key& key, const Situation& now) {
    return !key.enabled_by || now.values[static_cast<std::size_t>(*key.enabled_by)] != 0;
}

/// Keys of a page that act on the value.
std::vector<const Item*> acting(const Task& task,
                                const Layout& layout,
                                const Situation& now,
                                int page) {
    std::vector<const Item*> keys;
    if (task.kind == Task::Kind::page) return keys;
    const std::int32_t value = now.values[static_cast<std::size_t>(task.value)];
    for (const Item& item : layout.pages[static_cast<std::size_t>(page)].items)
        if (item.kind == ItemKind::key && is_enabled(item.key, now) &&
            (reaches(item.key.tap, task, layout, value) ||
             reaches(item.key.hold, task, layout, value)))
            keys.push_back(&item);
    return keys;
}

/// Keys of a page that turn to another.
std::vector<const Item*> turning_to(const Page& page, int there, const Situation& now) {
    std::vector<const Item*> keys;
    for (const Item& item : page.items)
        if (item.kind == ItemKind::key && is_enabled(item.key, now) &&
            ((item.key.tap.kind == ActionKind::page && item.key.tap.page == there) ||
             (item.key.hold.kind == ActionKind::page && item.key.hold.page == there)))
            keys.push_back(&item);
    return keys;
}

bool is_there(const Task& task, const Layout& layout, const Situation& now, int page) {
    return task.kind == Task::Kind::page ? page == task.page
                                         : !acting(task, layout, now, page).empty();
}

/// Page turns from each page to the nearest one where the task can be done; negative: no way.
std::vector<int> turns_to_go(const Task& task, const Layout& layout, const Situation& now) {
    const int pages = static_cast<int>(layout.pages.size());
    std::vector<int> turns(layout.pages.size(), -1);
    for (int page = 0; page < pages; ++page)
        if (is_there(task, layout, now, page)) turns[static_cast<std::size_t>(page)] = 0;
    for (int far = 1; far <= pages; ++far)
        for (int page = 0; page < pages; ++page) {
            if (turns[static_cast<std::size_t>(page)] >= 0) continue;
            for (int there = 0; there < pages; ++there)
                if (turns[static_cast<std::size_t>(there)] == far - 1 &&
                    !turning_to(layout.pages[static_cast<std::size_t>(page)], there, now).empty())
                    turns[static_cast<std::size_t>(page)] = far;
        }
    return turns;
}

std::string words_for(const Layout& layout, ValueId id, std::int32_t amount) {
    const Value& value = layout.values[static_cast<std::size_t>(id)];
    if (value.type == ValueType::flag)
        return "Switch " + value.name + (amount != 0 ? " on" : " off");
    const std::string to =
        value.type == ValueType::choice
            ? value.choices[static_cast<std::size_t>(amount)].text
            : std::to_string(amount) + (value.unit.empty() ? "" : " " + value.unit);
    return "Set " + value.name + " to " + to;
}

/// The read-out of the frequency; null: none.
const Readout* dial_of(const Layout& layout, ValueId frequency) {
    for (const Page& page : layout.pages)
        for (const Item& item : page.items)
            if (item.kind == ItemKind::readout && item.readout.value == frequency)
                return &item.readout;
    return nullptr;
}

/// A frequency as the display shows it.
std::string shown(const Readout& dial, std::int32_t frequency) {
    std::string words = read_out(frequency,
                                 {.groups = dial.groups,
                                  .separator = dial.separator,
                                  .drop = dial.drop,
                                  .least = dial.least});
    words.erase(0, words.find_first_not_of(' '));
    return words + (dial.unit.empty() ? "" : " " + dial.unit);
}

}  // namespace

bool holds(const Task& task, const Situation& now) {
    return task.kind == Task::Kind::page
               ? now.page == task.page
               : now.values[static_cast<std::size_t>(task.value)] == task.amount;
}

std::vector<const Item*> keys_towards(const Task& task,
                                      const Layout& layout,
                                      const Situation& now) {
    if (holds(task, now)) return {};
    std::vector<const Item*> keys = acting(task, layout, now, now.page);
    if (!keys.empty()) return keys;
    const std::vector<int> turns = turns_to_go(task, layout, now);
    const int here = turns[static_cast<std::size_t>(now.page)];
    if (here <= 0) return {};
    const Page& page = layout.pages[static_cast<std::size_t>(now.page)];
    for (std::size_t there = 0; there < turns.size(); ++there)
        if (turns[there] == here - 1)
            for (const Item* key : turning_to(page, static_cast<int>(there), now))
                keys.push_back(key);
    return keys;
}

Tasks::Tasks(const Layout& layout, std::uint32_t seed) : layout_(layout), chance_(seed) {
    // Whatever a key can make of a value, once.
    std::set<std::pair<ValueId, std::int32_t>> goals;
    const auto add = [&](const Action& action) {
        if (!acts_on_value(action)) return;
        const Value& value = layout.values[static_cast<std::size_t>(action.value)];
        if (action.kind == ActionKind::set) {
            goals.emplace(action.value, action.amount);
        } else if (value.type != ValueType::number && value.type != ValueType::level) {
            for (std::int32_t amount = value.min; amount <= value.max; ++amount)
                goals.emplace(action.value, amount);
        } else if (value.role == Role::none) {
            // A number goes up and down from where it begins.
            Receiver receiver(layout);
            for (int taps = 0; taps < 3; ++taps) {
                receiver.act(action);
                goals.emplace(action.value, receiver.get(action.value));
            }
        }
    };
    for (const Page& page : layout.pages)
        for (const Item& item : page.items)
            if (item.kind == ItemKind::key) {
                add(item.key.tap);
                add(item.key.hold);
            }
    for (const auto& [value, amount] : goals)
        pool_.push_back({Task::Kind::set, value, amount, 0, words_for(layout, value, amount)});
    for (std::size_t page = 0; page < layout.pages.size(); ++page)
        pool_.push_back({Task::Kind::page,
                         -1,
                         0,
                         static_cast<int>(page),
                         "Turn to page " + layout.pages[page].name});
    // Fisher and Yates' shuffle; the library's own differs from one maker to the next.
    for (int i = static_cast<int>(pool_.size()) - 1; i > 0; --i)
        std::swap(pool_[static_cast<std::size_t>(i)],
                  pool_[static_cast<std::size_t>(chance(i + 1))]);
}

int Tasks::chance(int below) {
    return static_cast<int>(chance_() % static_cast<std::uint32_t>(below));
}

std::optional<Task> Tasks::from_pool(const Situation& now) {
    const auto can_be_done = [&](const Task& task) {
        return !holds(task, now) && !keys_towards(task, layout_, now).empty();
    };
    auto found = std::find_if(pool_.begin(), pool_.end(), [&](const Task& task) {
        return task.value != last_ && can_be_done(task);
    });
    if (found == pool_.end()) found = std::find_if(pool_.begin(), pool_.end(), can_be_done);
    if (found == pool_.end()) return std::nullopt;
    Task task = *found;
    std::rotate(found, found + 1, pool_.end());
    return task;
}

std::optional<Task> Tasks::tuning(const Situation& now) {
    const std::optional<ValueId> frequency = value_with(layout_, Role::frequency);
    if (!frequency) return std::nullopt;
    const Readout* dial = dial_of(layout_, *frequency);
    if (dial == nullptr) return std::nullopt;
    std::int32_t seen = 1;  // The least difference that the dial shows.
    for (int digit = 0; digit < dial->drop; ++digit)
        seen *= 10;
    const int detents = least_detents + chance(most_detents - least_detents + 1);
    const int way = chance(2) == 0 ? -1 : 1;
    // Towards the other end where this one is near.
    for (const int turn : {way * detents, -way * detents}) {
        Receiver receiver(layout_);
        if (const std::optional<ValueId> step = value_with(layout_, Role::step))
            receiver.set(*step, now.values[static_cast<std::size_t>(*step)]);
        const std::int32_t from = now.values[static_cast<std::size_t>(*frequency)];
        receiver.set(*frequency, from);
        receiver.turn(turn);
        const std::int32_t to = receiver.get(*frequency);
        const Value& range = layout_.values[static_cast<std::size_t>(*frequency)];
        if (to == from || to % seen != 0 || to <= range.min || to >= range.max) continue;
        return Task{Task::Kind::tune, *frequency, to, 0, "Tune to " + shown(*dial, to)};
    }
    return std::nullopt;
}

std::optional<Task> Tasks::next(const Situation& now) {
    const bool knob = ++given_ % tuning_every == 0;
    std::optional<Task> task = knob ? tuning(now) : from_pool(now);
    if (!task) task = knob ? from_pool(now) : tuning(now);
    if (task) last_ = task->value;
    return task;
}

}  // namespace dialplate
