// A trial done by hand in the real window, with touches whose offsets are known.
#include "sim/trial/task.hpp"
#include "tests/desk/window/window.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace dialplate {
namespace {

class TrialWindow : public Window {
protected:
    /// The tasks of the first trial: the window's first seed is 1, and all stands as it starts.
    void SetUp() override {
        Window::SetUp();
        const Building building = build_image(layout_);
        ASSERT_TRUE(building.image.has_value());
        twin_ = std::make_unique<Prototype>(layout_, *building.image);
        twin_->settle();
        tasks_ = std::make_unique<Tasks>(layout_, 1);
    }
    Situation now() const {
        Situation situation{twin_->page(), {}};
        for (std::size_t i = 0; i < layout_.values.size(); ++i)
            situation.values.push_back(twin_->get(static_cast<ValueId>(i)));
        return situation;
    }
    /// A finger on a glass pixel of the window, and of the prototype beside it.
    void tap(int x, int y) {
        point(plan_.glass.x + (x + 0.5) * plan_.zoom, plan_.glass.y + (y + 0.5) * plan_.zoom);
        stage_.hands("mousedown 1 sleep 0.08 mouseup 1");
        twin_->tap(x, y);
        std::this_thread::sleep_for(60ms);
    }
    void turn(int way) {
        stage_.hands(way > 0 ? "key Up" : "key Down");
        twin_->turn(way);
        twin_->settle();
    }
    /// Does a task, each tap `right` and `down` of the middle of its key, in glass pixels. @return Taps made.
    int do_task(const Task& task, int right, int down) {
        int taps = 0;
        for (int moves = 0; !holds(task, now()) && moves < 40; ++moves) {
            if (task.kind == Task::Kind::tune) {
                turn(task.amount > now().values[static_cast<std::size_t>(task.value)] ? 1 : -1);
                continue;
            }
            const Box box = keys_towards(task, layout_, now()).at(0)->box;
            tap(box.x + box.width / 2 + right, box.y + box.height / 2 + down);
            ++taps;
        }
        return taps;
    }
    nlohmann::json saved() {
        const fs::path file = folder_ / "layout-trial-1.json";
        EXPECT_TRUE(until([&] { return fs::exists(file); }));
        return nlohmann::json::parse(text_of(file));
    }

    std::unique_ptr<Prototype> twin_;
    std::unique_ptr<Tasks> tasks_;
};

TEST_F(TrialWindow, MeasuresWhereAHandLandsBesideItsAim) {
    open();
    stage_.hands("key F5");
    std::this_thread::sleep_for(200ms);
    keep_picture("first-task");
    // Every second tap 4 pixels right and 2 up of the middle of its key, the others 2 left and 4 down.
    int taps = 0, tunings = 0;
    for (int i = 0; i < 12; ++i) {
        const std::optional<Task> task = tasks_->next(now());
        ASSERT_TRUE(task.has_value());
        tunings += task->kind == Task::Kind::tune ? 1 : 0;
        taps += i % 2 == 0 ? do_task(*task, 4, -2) : do_task(*task, -2, 4);
        if (i == 5) keep_picture("on-the-way");
    }
    std::this_thread::sleep_for(200ms);
    keep_picture("result");
    stage_.hands("key s");
    const nlohmann::json json = saved();
    EXPECT_EQ(json["all"]["hits"], taps);
    EXPECT_EQ(json["all"]["misses"], 0);
    ASSERT_EQ(json["tasks"].size(), 12u);
    int tuned = 0;
    for (const auto& task : json["tasks"]) {
        EXPECT_EQ(task["done"], true) << task["words"];
        tuned += task["kind"] == "tune" ? 1 : 0;
    }
    EXPECT_EQ(tuned, tunings);
    EXPECT_GE(tuned, 3);
    // 0.18 mm a pixel, and half a pixel from a key's middle, which lies between two pixels.
    for (const auto& touch : json["touches"]) {
        const bool right = touch["task"].get<int>() % 2 == 0;
        EXPECT_NEAR(touch["off_mm"][0].get<double>(), right ? 4.5 * 0.18 : -1.5 * 0.18, 0.001);
        EXPECT_NEAR(touch["off_mm"][1].get<double>(), right ? -1.5 * 0.18 : 4.5 * 0.18, 0.001);
    }
    // A trial over is looked at until it is cleared; another file gets another name.
    stage_.hands("key s");
    EXPECT_TRUE(until([&] { return fs::exists(folder_ / "layout-trial-2.json"); }));
}

TEST_F(TrialWindow, CanBeLeftWithAMissOnRecord) {
    open();
    stage_.hands("key F5");
    std::this_thread::sleep_for(100ms);
    const std::optional<Task> task = tasks_->next(now());
    ASSERT_TRUE(task.has_value());
    ASSERT_NE(task->kind, Task::Kind::tune);
    const Box box = keys_towards(*task, layout_, now()).at(0)->box;
    // Two pixels above the key.
    tap(box.x + box.width / 2, box.y - 2);
    stage_.hands("key Escape");
    std::this_thread::sleep_for(100ms);
    keep_picture("left");
    stage_.hands("key s");
    const nlohmann::json json = saved();
    EXPECT_EQ(json["all"]["hits"], 0);
    EXPECT_EQ(json["all"]["misses"], 1);
    EXPECT_EQ(json["touches"][0]["near"], true);
    ASSERT_EQ(json["tasks"].size(), 1u);
    EXPECT_EQ(json["tasks"][0]["done"], false);
}

}  // namespace
}  // namespace dialplate
