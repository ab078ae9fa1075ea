// A finger on the glass and what follows from it: what the receiver hears, what the display is sent.
#pragma once

#include "sim/desk/bench.hpp"

#include <cstdint>
#include <random>
#include <string>
#include <utility>
#include <vector>

namespace dialplate {

class Touching {
public:
    explicit Touching(Bench& bench) : bench_(bench) {}

    /// Another prototype: nothing touches it yet.
    void begin();

    // Each returns what was sent, after writing it down. @pre There is a prototype.
    Update press(const GlassPixel& point);
    Update slide(const GlassPixel& point);
    Update lift();
    Update pass(int milliseconds);
    Update settle(const std::string& cause);
    Update redraw();

    /// Something was written down since the last call.
    bool has_news() { return std::exchange(news_, false); }
    /// Outlines of sent windows come and go, at most three times a second. @return Whether they changed.
    bool fade();

private:
    Update written_down(const std::string& cause, Update update);
    void hear();
    [[nodiscard]] GlassPixel landing(const GlassPixel& aimed) const;

    Bench& bench_;
    GlassPixel off_;  ///< How far the present press lands beside its aim.
    std::mt19937 chance_{5};
    std::vector<Box> waiting_;  ///< Windows sent since the last outline began.
    std::uint64_t outlined_at_ = 0;
    std::uint64_t told_at_ = 0;
    bool news_ = false;
};

}  // namespace dialplate
