#include "sim/trial/task.hpp"

#include "sim/layout/reader.hpp"
#include "sim/prototype/prototype.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace dialplate {
namespace {

Layout example(const std::string& name) {
    Reading reading = load_layout(std::string{DIALPLATE_TREE} + "/layouts/" + name + ".json");
    EXPECT_TRUE(reading.layout.has_value());
    return std::move(*reading.layout);
}

ValueId value_named(const Layout& layout, const std::string& name) {
    for (std::size_t i = 0; i < layout.values.size(); ++i)
        if (layout.values[i].name == name) return static_cast<ValueId>(i);
    ADD_FAILURE() << "no value " << name;
    return 0;
}

Situation at_start(const Layout& layout) {
    Situation now;
    for (const Value& value : layout.values)
        now.values.push_back(value.start);
    return now;
}

std::vector<std::string> names_of(const std::vector<const Item*>& keys) {
    std::vector<std::string> names;
    for (const Item* key : keys)
        names.push_back(key->name);
    return names;
}

// The keys of coast-listener: bandwidths one by one, mode and attenuator by steps, bands on a page of their own.
TEST(KeysTowards, AreThoseThatReachTheValueOrTurnToTheirPage) {
    const Layout layout = example("coast-listener");
    Situation now = at_start(layout);
    const auto towards = [&](const char* value, std::int32_t amount) {
        return names_of(keys_towards(
            {Task::Kind::set, value_named(layout, value), amount, 0, ""}, layout, now));
    };
    EXPECT_THAT(towards("bandwidth", 2), testing::ElementsAre("wide"));
    EXPECT_THAT(towards("mode", 0), testing::ElementsAre("next mode"));
    EXPECT_THAT(towards("band", 7), testing::ElementsAre("to bands"));
    // 1 kHz by holding or by stepping: one key does both.
    now.values[static_cast<std::size_t>(value_named(layout, "step"))] = 0;
    EXPECT_THAT(towards("step", 2), testing::ElementsAre("next step"));
    // What holds needs no key.
    EXPECT_THAT(towards("bandwidth", 1), testing::IsEmpty());
    now.page = 1;
    EXPECT_THAT(towards("band", 7), testing::ElementsAre("40 m"));
    EXPECT_THAT(towards("bandwidth", 2), testing::ElementsAre("back"));
}

TEST(KeysTowards, LeaveOutWhatCannotBePressed) {
    Layout layout = example("coast-listener");
    const ValueId flag = static_cast<ValueId>(layout.values.size());
    Value locked;
    locked.name = "unlocked";
    locked.type = ValueType::flag;
    locked.max = 1;
    layout.values.push_back(locked);
    for (Item& item : layout.pages[0].items)
        if (item.name == "wide") item.key.enabled_by = flag;
    Situation now = at_start(layout);
    const Task task{Task::Kind::set, value_named(layout, "bandwidth"), 2, 0, ""};
    EXPECT_THAT(keys_towards(task, layout, now), testing::IsEmpty());
    now.values.back() = 1;
    EXPECT_THAT(names_of(keys_towards(task, layout, now)), testing::ElementsAre("wide"));
}

TEST(Tasks, AreSaidInTheWordsOfTheLayout) {
    const Layout layout = example("coast-listener");
    Tasks tasks(layout, 1);
    Situation now = at_start(layout);
    std::set<std::string> words;
    for (int i = 0; i < 120; ++i) {
        const std::optional<Task> task = tasks.next(now);
        ASSERT_TRUE(task.has_value());
        words.insert(task->words);
        if (task->kind == Task::Kind::page)
            now.page = task->page;
        else if (task->kind == Task::Kind::set)
            now.values[static_cast<std::size_t>(task->value)] = task->amount;
    }
    EXPECT_EQ(words.count("Set bandwidth to 2.4 kHz"), 1u);
    EXPECT_EQ(words.count("Set band to 40 m"), 1u);
    EXPECT_EQ(words.count("Set attenuator to 10 dB"), 1u);
    EXPECT_EQ(words.count("Turn to page bands"), 1u);
}

TEST(Tasks, TuneByAFewDetentsAndSayItAsTheReadOutShowsIt) {
    const Layout layout = example("coast-listener");
    Tasks tasks(layout, 1);
    for (int i = 1; i <= 60; ++i) {
        const std::optional<Task> task = tasks.next(at_start(layout));
        ASSERT_TRUE(task.has_value());
        ASSERT_EQ(task->kind == Task::Kind::tune, i % 3 == 0);
        if (task->kind != Task::Kind::tune) continue;
        // From 12.290 MHz in steps of 1 kHz; groups of 2, 3 and 2 digits, the last digit dropped.
        EXPECT_EQ(task->words.substr(0, 11), "Tune to 12.");
        EXPECT_EQ(task->words.substr(14), ".00 MHz");
        EXPECT_EQ(std::stoi(task->words.substr(11, 3)), task->amount / 1000 - 12000);
        EXPECT_LE(std::abs(task->amount - 12290000), 12 * 1000);
        EXPECT_GE(std::abs(task->amount - 12290000), 3 * 1000);
    }
}

TEST(Tasks, OfOneSeedAreTheSameAndOfAnotherDiffer) {
    const Layout layout = example("coast-listener");
    const auto row = [&](std::uint32_t seed) {
        Tasks tasks(layout, seed);
        std::string words;
        for (int i = 0; i < 6; ++i)
            words += tasks.next(at_start(layout))->words + "\n";
        return words;
    };
    EXPECT_EQ(row(7), row(7));
    EXPECT_NE(row(7), row(8));
}

TEST(Tasks, ALayoutWithoutKeysAndWithoutADialHasNone) {
    Layout layout = example("coast-listener");
    layout.pages.resize(1);
    layout.pages[0].items.clear();
    EXPECT_FALSE(Tasks(layout, 1).next(at_start(layout)).has_value());
}

// Whoever does what the tasks say on the real prototype gets through all of them, in every example.
TEST(Tasks, CanBeDoneOnThePrototypeByTheKeysThatLeadTowardsThem) {
    for (const char* name : {"coast-listener", "bench-standard", "trail-cw", "pocket-broadcast"}) {
        SCOPED_TRACE(name);
        const Layout layout = example(name);
        const Building building = build_image(layout);
        ASSERT_TRUE(building.image.has_value());
        Prototype prototype(layout, *building.image);
        prototype.settle();
        const auto now = [&] {
            Situation situation{prototype.page(), {}};
            for (std::size_t i = 0; i < layout.values.size(); ++i)
                situation.values.push_back(prototype.get(static_cast<ValueId>(i)));
            return situation;
        };
        Tasks tasks(layout, 3);
        for (int i = 0; i < 40; ++i) {
            const std::optional<Task> task = tasks.next(now());
            ASSERT_TRUE(task.has_value());
            SCOPED_TRACE(task->words);
            EXPECT_FALSE(holds(*task, now()));
            int moves = 0;
            for (; !holds(*task, now()) && moves < 60; ++moves) {
                const std::vector<const Item*> keys = keys_towards(*task, layout, now());
                if (task->kind == Task::Kind::tune) {
                    prototype.turn(
                        task->amount > now().values[static_cast<std::size_t>(task->value)] ? 1
                                                                                           : -1);
                    prototype.settle();
                } else {
                    ASSERT_FALSE(keys.empty());
                    const Box& box = keys[0]->box;
                    prototype.tap(box.x + box.width / 2, box.y + box.height / 2);
                }
            }
            EXPECT_TRUE(holds(*task, now()));
        }
    }
}

}  // namespace
}  // namespace dialplate
