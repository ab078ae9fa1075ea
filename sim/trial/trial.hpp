// A short exercise at the display: tasks, the touches that were made for them, and how long it all took.
//
// Knows no window, no clock and no prototype: whoever runs it says what time it is, where a finger came down and
// how the prototype stands. A touch counts for the key that it was aimed at, which nobody says: of the keys that
// lead to the task, it is taken to be the one that was hit, else the nearest.
#pragma once

#include "sim/trial/task.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// Where a finger came down.
struct TrialTouch {
    int task = 0;      ///< Counted from 0.
    int page = 0;      ///< On which page.
    int x = 0, y = 0;  ///< Glass pixel.
    std::string key;   ///< JSON Pointer of the key that it was aimed at.
    std::string name;  ///< Of that key.
    bool hit = false;  ///< On the key.
    bool near = true;  ///< Near enough to be a slip of the finger, not a mistake of the mind.
    Millimetres off_x, off_y;  ///< From the middle of the key, right and down.
    Milliseconds after;        ///< Since the task was shown or the touch before it.
};

/// What became of a task.
struct TaskOutcome {
    std::string words;
    Task::Kind kind = Task::Kind::set;
    bool done = false;
    Milliseconds took;  ///< Until it was done, or left.
};

/// A touch further than this from the edge of its key is no slip: four times the scatter of a finger.
/// Source: TCH-22 for 1.5 mm; that four of them are the limit is ours.
constexpr double slip_mm = 6.0;

class Trial {
public:
    static constexpr int usual_tasks = 12;

    /// @param layout  Is copied: the trial outlives what is on the bench.
    Trial(const Layout& layout, std::uint32_t seed, int tasks = usual_tasks);
    Trial(const Trial&) = delete;
    Trial& operator=(const Trial&) = delete;

    /// The clock starts. @param now_ms  Any clock that does not go back.
    void begin(const Situation& now, std::uint64_t now_ms);
    /// A finger came down on a glass pixel. To be said before the prototype is touched.
    void touched(int x, int y, const Situation& now, std::uint64_t now_ms);
    /// The prototype stands like this now. @return Whether the task is another, or the trial over.
    bool look(const Situation& now, std::uint64_t now_ms);
    /// It is over here, whatever is left.
    void leave(std::uint64_t now_ms);

    /// Null: over, or the layout has nothing to do.
    [[nodiscard]] const Task* task() const { return task_ ? &*task_ : nullptr; }
    /// Tasks that were done.
    [[nodiscard]] int done() const;
    [[nodiscard]] int tasks() const { return count_; }
    [[nodiscard]] const Layout& layout() const { return layout_; }
    [[nodiscard]] std::uint32_t seed() const { return seed_; }
    [[nodiscard]] const std::vector<TrialTouch>& touches() const { return touches_; }
    /// Those that are over, and the one that was left.
    [[nodiscard]] const std::vector<TaskOutcome>& outcomes() const { return outcomes_; }

private:
    void close(bool done, std::uint64_t now_ms);

    Layout layout_;
    std::uint32_t seed_;
    int count_;
    Tasks source_;
    std::optional<Task> task_;
    std::uint64_t task_began_ = 0, since_ = 0;
    std::vector<TrialTouch> touches_;
    std::vector<TaskOutcome> outcomes_;
};

}  // namespace dialplate
