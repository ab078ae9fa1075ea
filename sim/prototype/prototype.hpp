// One running prototype: image, engine, controller and receiver, fed with touches, turns and time. What
// the window shows, a shot photographs, the ledger times and a proof is held against.
//
// Everything here is a function of the layout and of what was fed in: the same input gives the same bytes.
#pragma once

#include "sim/display/controller.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"
#include "sim/prototype/engine_work.hpp"

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace dialplate {

enum class KeyEventKind { press, hold, repeat, release, slide_off };

/// What the receiver hears of a key.
struct KeyEvent {
    KeyEventKind kind = KeyEventKind::press;
    int key = 0;       ///< Number of the key, counted through the layout.
    std::string name;  ///< Of the item.
};

/// What one update sent.
struct Update {
    BusCounters sent;
    EngineWork work;  ///< Of all services together.
    int slices = 0;
    std::int64_t longest_slice_pixels = 0;
    std::vector<SentWindow> windows;
};

class Prototype {
public:
    /// @pre `built` was made from `layout` without errors. Both are copied.
    Prototype(const Layout& layout, const BuiltImage& built);
    ~Prototype();
    Prototype(const Prototype&) = delete;
    Prototype& operator=(const Prototype&) = delete;

    [[nodiscard]] const Layout& layout() const;

    void show_page(int page);
    [[nodiscard]] int page() const;
    void use_palette(int palette);
    [[nodiscard]] int palette() const;

    /// Sets a value as a sketch does; clamps to the value's range.
    void set(ValueId value, std::int32_t to);
    [[nodiscard]] std::int32_t get(ValueId value) const;

    /// The finger: glass pixels. `touch` presses or moves, `lift` lets go.
    void touch(int x, int y);
    void lift();
    /// Presses and lets go in the middle of an item, with the time that needs.
    void tap(int x, int y);

    /// Turns the tuning knob by detents (negative: down).
    void turn(int detents);

    /// Lets time pass: the receiver lives (fading, clock), keys are held; then draws until idle.
    /// @return what was sent meanwhile.
    Update pass(int milliseconds);
    /// Draws until idle, without time passing.
    Update settle();
    /// Whether the simulated receiver changes values by itself (fading signal, clock). Default: false,
    /// so that pictures and ledgers repeat; the window switches it on.
    void live(bool on);

    /// What the receiver heard since the last call.
    std::vector<KeyEvent> heard();

    /// What the reader sees: RGB565, row-major, glass_width x glass_height.
    [[nodiscard]] std::vector<std::uint16_t> glass() const;
    [[nodiscard]] const BusCounters& counters() const;

    /// Is told of every call of the engine's service function what that call did. Default: nobody is.
    void watch_services(std::function<void(const EngineWork& of_one)> listener);

    /// Draws the whole page again, as after a page turn.
    Update redraw();

private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

}  // namespace dialplate
