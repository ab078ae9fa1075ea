// A screen without a monitor, the program on it, and hands: what the tests of the real window stand on.
#pragma once

#include "sim/desk/plan.hpp"
#include "tests/desk/window/camera.hpp"

#include <memory>
#include <string>
#include <sys/types.h>
#include <vector>

namespace dialplate {

/// A process of ours; ended with its owner.
class Process {
public:
    Process() = default;
    ~Process();
    Process(const Process&) = delete;
    Process& operator=(const Process&) = delete;

    /// @param words        Program and arguments.
    /// @param environment  "NAME=value"; "NAME=" alone takes the name away.
    /// @param output       File for standard output and error; empty: ours.
    void start(const std::vector<std::string>& words,
               const std::vector<std::string>& environment,
               const std::string& output = {});
    [[nodiscard]] bool running();
    void stop();         ///< Asks it to end, and ends it if it does not.
    void ask_to_end();   ///< SIGTERM
    void end_at_once();  ///< SIGKILL: nothing can be put in order.
    /// Waits for the end, at most `seconds`. @return Exit status; -1 by a signal, -2 still running.
    int wait(int seconds);

private:
    pid_t id_ = -1;
    int status_ = -2;
};

/// An X server that draws into memory.
class Stage {
public:
    /// A screen of that size with 96 dots an inch; one that was there before is taken down.
    /// @return An empty reason, or why there is no stage.
    std::string raise(WindowSize size);
    /// Value of DISPLAY.
    [[nodiscard]] const std::string& display() const { return display_; }
    /// Runs xdotool; @return what it printed.
    std::string hands(const std::string& words) const;
    [[nodiscard]] Photograph photograph() const { return camera_->take(); }

private:
    Process server_;
    std::unique_ptr<Camera> camera_;
    std::string display_;
};

/// Output of a shell command.
std::string output_of(const std::string& command);

}  // namespace dialplate
