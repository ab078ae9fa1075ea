// What the window keeps from one evening to the next: its size, what is open in the side, finger and
// aids, and how fine its screens are.
#pragma once

#include "sim/desk/bench.hpp"

#include <optional>
#include <string>

namespace dialplate {

struct Remembered {
    Habits habits;
    WindowSize window;  ///< 0 x 0: none yet.
};

/// As a JSON document.
[[nodiscard]] std::string written(const Remembered& remembered);
/// Takes what it understands from a text that written() made; the rest stays as it is at first.
[[nodiscard]] Remembered remembered_from(const std::string& text);

/// From and to the user's state directory (see rescue_file); without one nothing is remembered.
[[nodiscard]] Remembered recall();
void remember(const Remembered& remembered);

}  // namespace dialplate
