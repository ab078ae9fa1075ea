// The layout's file and the session's text: reading, saving, what others save meanwhile, and what is rescued.
#pragma once

#include "sim/desk/bench.hpp"

#include <cstdint>
#include <string>

namespace dialplate {

class Papers {
public:
    explicit Papers(Bench& bench) : bench_(bench) {}

    /// Reads the file for the first time, and looks whether an earlier run left something behind.
    void open();
    /// The file was saved by somebody. @return Whether a good picture of it, or of the session's text, is shown.
    bool read_again();
    /// Makes a change that a part of the window asks for, if the layout can still be shown with it.
    /// @return Empty, or why not.
    std::string change(Wanted& wanted);
    void obey(const Ordered& ordered);
    /// A file was dropped on the window: another layout, or a font or a picture for this one.
    void dropped(const std::string& file);

    /// Keeps unsaved text where a crash cannot reach it; called often, writes at most once a second.
    void keep_rescue(std::uint64_t now_ms);
    /// Unsaved changes are not wanted any more.
    void give_up();

private:
    void save();
    void show_own();
    void add_face(const std::string& file);
    void add_picture(const std::string& file);

    Bench& bench_;
    std::size_t kept_revision_ = 0;
    bool kept_ = false;
    std::uint64_t kept_at_ = 0;
};

}  // namespace dialplate
