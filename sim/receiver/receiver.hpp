// A simulated receiver behind the values of a layout, so that a layout behaves like a radio.
//
// It plays the values that have a role and keeps the others as they are set. Everything is a
// function of the layout, the seed and what was fed in; time comes from pass() alone, in steps
// that do not depend on how it was cut up.
//
// Played:
// - frequency: the knob tunes by the value with role `step`, aligned to its multiples, within the
//   range.
// - band: choosing another one recalls the frequency last used there (at first the choice's
//   number, else its lower edge) and its usual mode; tuning into the edges of another choice
//   selects that. Outside all edges the last band stays, and what is remembered for it is the last
//   frequency inside.
// - mode: the choice's `mode`; without one, LSB and USB change over by frequency (standards
//   RX-10).
// - bandwidth: a choice's number or a number; sets the noise that the signal stands on.
// - attenuator: its number, in dB, moves the signal reading down (standards RX-09).
// - signal: an aerial of made-up stations that fade (ether.hpp), read by a meter of fast attack
//   and slow decay, in dBm, or spread over the value's range when its unit is another.
// - clock_hours, clock_minutes, clock_seconds: run on from where they stand.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/receiver/ether.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace dialplate {

class Receiver {
public:
    /// The values stand at their start. The layout is not kept.
    explicit Receiver(const Layout& layout, std::uint32_t seed = 1);

    [[nodiscard]] std::int32_t get(ValueId value) const;
    /// Sets a value, within its range, with all that follows from it.
    void set(ValueId value, std::int32_t to);
    /// Does what a key does: set, step or toggle. Pages are not the receiver's.
    void act(const Action& action);
    /// Turns the tuning knob; negative: down.
    void turn(int detents);
    /// Lets time pass. Without `live` nothing moves by itself: no fading, no clock.
    /// @param milliseconds  >= 0.
    void pass(int milliseconds, bool live);
    /// The values that changed since the last call, in order; at first none.
    [[nodiscard]] std::vector<ValueId> changed();

private:
    [[nodiscard]] std::optional<ValueId> of(Role role) const;
    [[nodiscard]] const Value& value_of(ValueId value) const;
    [[nodiscard]] const Choice* choice_of(Role role) const;
    /// The number that a value stands for: a choice's number or the value itself.
    [[nodiscard]] std::optional<std::int32_t> number_of(Role role) const;
    void put(ValueId value, std::int64_t to);

    void choose_band(std::int32_t to);
    void follow_band();
    void remember();
    void usual_mode();
    void choose_mode(const std::string& text);
    [[nodiscard]] std::int64_t tuning_step() const;
    [[nodiscard]] Tuned tuned_to() const;
    void show_signal();
    void take_signal();
    void show_clock();
    void take_clock();
    void tick();

    std::vector<Value> values_;
    std::vector<std::int32_t> now_;
    std::vector<bool> changed_;
    std::array<std::optional<ValueId>, 16> roles_;
    std::vector<std::optional<std::int32_t>> remembered_;  ///< A frequency for each band.

    Ether ether_;
    double at_aerial_dbm_ = 0.0;  ///< What the meter would read without attenuator.
    std::int64_t time_ms_ = 0;    ///< Lived through.
    std::int64_t ticks_ = 0;
    std::int64_t clock_ms_ = 0;  ///< Since midnight.
};

}  // namespace dialplate
