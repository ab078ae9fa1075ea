// A play: what is done to a prototype, step by step, from a JSON file. A picture can be taken at its
// end, and a proof can do the same steps on a simulated microcontroller.
//
//     {"steps": [
//         {"tap": "key 40 m"},           presses and lets go of the item of that name, on the page shown
//         {"press": "key 40 m"},         presses it and stays on it
//         {"press_at": [160, 120]},      the finger at a pixel of the glass; again: it moves there
//         {"lift": true},                lets go
//         {"turn": 5},                   tuning knob, detents; negative: down
//         {"wait_ms": 500},              time passes, up to 600,000 ms
//         {"set": {"band": "40 m"}},     values by name, as the sketch sets them; several in one step
//         {"page": "bands"},             a page by name
//         {"palette": "dim"}             a palette by name
//     ]}
//
// Every step is an object with exactly one of these members; "$schema" may stand beside "steps".
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/layout.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

class Prototype;

enum class StepKind { tap, press, press_at, lift, turn, wait, set, page, palette };

/// One step. The members that its kind does not name stay as they are.
struct PlayStep {
    StepKind kind = StepKind::lift;
    Place place{};        ///< In the play file.
    std::string item;     ///< tap, press: name of the item.
    int x = 0, y = 0;     ///< press_at: glass pixels.
    int amount = 0;       ///< turn: detents. wait: milliseconds.
    ValueId value = 0;    ///< set: one value; a step that sets several becomes several of these.
    std::int32_t to = 0;  ///< set.
    int index = 0;        ///< page, palette.
};

struct PlayReading {
    std::optional<std::vector<PlayStep>> steps;  ///< Present exactly when there is no finding.
    std::vector<Finding> findings;               ///< Sorted by place; rule "play".
};

/// Reads a play for a layout: names are resolved against it.
PlayReading read_play(std::string_view text, const Layout& layout);

/// Reads a play file; "-" is standard input.
PlayReading load_play(const std::string& file, const Layout& layout);

/// Does one step.
/// @return A finding when the item to be pressed is not on the page that is shown; nothing is done then.
std::optional<Finding> do_step(Prototype& prototype, const PlayStep& step);

/// Does all steps in order and draws until idle; stops at the first that cannot be done.
std::optional<Finding> perform(Prototype& prototype, const std::vector<PlayStep>& steps);

}  // namespace dialplate
