// A hand that arranges: chooses items on the glass, moves them, pulls at their grips, draws a band around some.
#pragma once

#include "sim/desk/bench.hpp"
#include "sim/edit/placing.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace dialplate {

/// Keys held down with the mouse.
struct Held {
    bool shift = false;
    bool alt = false;  ///< Nothing catches.
};

class Arranging {
public:
    explicit Arranging(Bench& bench) : bench_(bench) {}

    // Places are those of the window.
    void press(int x, int y, const Held& held);
    void move(int x, int y, const Held& held);
    void release();
    [[nodiscard]] bool busy() const { return doing_ != Doing::nothing; }

private:
    enum class Doing { nothing, moving, pulling, banding };

    [[nodiscard]] const Item* item_under(int x, int y) const;
    [[nodiscard]] std::optional<Pull> grip_under(int x, int y) const;
    void begin(Doing doing, int x, int y);
    void drag(const Shift& by, const Held& held);
    void band(int x, int y);

    Bench& bench_;
    Doing doing_ = Doing::nothing;
    Pull pull_;
    int x_ = 0, y_ = 0;  ///< Where it began, in the window.
    bool moved_ = false;
    std::vector<std::pair<std::string, Box>> from_;  ///< The chosen items as they stood then.
    Chosen chosen_before_;
};

/// What keys and buttons do to the chosen items, as wishes of the bench.
/// @return Whether the order was one of these.
bool do_deed(Bench& bench, const Ordered& ordered);

}  // namespace dialplate
