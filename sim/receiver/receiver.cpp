#include "sim/receiver/receiver.hpp"

#include "sim/receiver/bands.hpp"
#include "sim/receiver/read_out.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <string>

namespace dialplate {

namespace {

constexpr std::int64_t tick_ms = 50;
constexpr double decay_ms =
    500.0;  // Standards RX-04: decay of at least 500 ms; attack within a tick.
constexpr std::int64_t ms_per_second = 1000;
constexpr std::int64_t ms_per_minute = 60 * ms_per_second;
constexpr std::int64_t ms_per_hour = 60 * ms_per_minute;
constexpr std::int64_t ms_per_day = 24 * ms_per_hour;

// Without a value of that role.
constexpr std::int64_t default_step_hertz = 100;        // Standards RX-14.
constexpr std::int32_t default_bandwidth_hertz = 2400;  // Standards RX-13.

// What a signal value that is not in dBm spans: S0 to S9+60, standards RX-03.
constexpr double lowest_dbm = -127.0;
constexpr double highest_dbm = -13.0;

std::int64_t hertz_per(const std::string& unit) {
    if (unit == "kHz") return 1000;
    if (unit == "MHz") return 1'000'000;
    return 1;
}

bool has_edges(const Choice& band) {
    return band.low && band.high;
}
bool contains(const Choice& band, std::int32_t frequency) {
    return has_edges(band) && *band.low <= frequency && frequency <= *band.high;
}

double reading_of(const Value& signal, double dbm) {
    if (signal.unit == "dBm") return dbm;
    const double share = (dbm - lowest_dbm) / (highest_dbm - lowest_dbm);
    return signal.min + share * (static_cast<double>(signal.max) - signal.min);
}

double dbm_of(const Value& signal, std::int32_t reading) {
    if (signal.unit == "dBm" || signal.max == signal.min) return reading;
    const double share = (static_cast<double>(reading) - signal.min) /
                         (static_cast<double>(signal.max) - signal.min);
    return lowest_dbm + share * (highest_dbm - lowest_dbm);
}

}  // namespace

Receiver::Receiver(const Layout& layout, std::uint32_t seed)
    : values_(layout.values), changed_(layout.values.size()), ether_(seed) {
    for (std::size_t i = 0; i < values_.size(); ++i) {
        now_.push_back(values_[i].start);
        auto& role = roles_[static_cast<std::size_t>(values_[i].role)];
        if (values_[i].role != Role::none && !role) role = static_cast<ValueId>(i);
    }
    if (const auto band = of(Role::band)) {
        for (const Choice& choice : value_of(*band).choices) {
            remembered_.push_back(choice.number ? choice.number : choice.low);
        }
        remember();
    }
    take_signal();
    take_clock();
}

std::optional<ValueId> Receiver::of(Role role) const {
    return roles_[static_cast<std::size_t>(role)];
}

const Value& Receiver::value_of(ValueId value) const {
    return values_[static_cast<std::size_t>(value)];
}

const Choice* Receiver::choice_of(Role role) const {
    const auto value = of(role);
    if (!value) return nullptr;
    const auto& choices = value_of(*value).choices;
    const auto at = static_cast<std::size_t>(get(*value));
    return at < choices.size() ? &choices[at] : nullptr;
}

std::optional<std::int32_t> Receiver::number_of(Role role) const {
    const auto value = of(role);
    if (!value) return std::nullopt;
    switch (value_of(*value).type) {
        case ValueType::number:
        case ValueType::level:
            return get(*value);
        case ValueType::choice: {
            const Choice* choice = choice_of(role);
            return choice != nullptr ? choice->number : std::nullopt;
        }
        case ValueType::flag:
            break;
    }
    return std::nullopt;
}

std::int32_t Receiver::get(ValueId value) const {
    return now_[static_cast<std::size_t>(value)];
}

void Receiver::put(ValueId value, std::int64_t to) {
    const Value& range = value_of(value);
    const auto within = static_cast<std::int32_t>(
        std::max<std::int64_t>(range.min, std::min<std::int64_t>(to, range.max)));
    std::int32_t& now = now_[static_cast<std::size_t>(value)];
    if (now == within) return;
    now = within;
    changed_[static_cast<std::size_t>(value)] = true;
}

std::vector<ValueId> Receiver::changed() {
    std::vector<ValueId> list;
    for (std::size_t i = 0; i < changed_.size(); ++i) {
        if (changed_[i]) list.push_back(static_cast<ValueId>(i));
        changed_[i] = false;
    }
    return list;
}

void Receiver::set(ValueId value, std::int32_t to) {
    // Only the first value of a role is played; any further one is kept as it is set.
    const Role role = of(value_of(value).role) == value ? value_of(value).role : Role::none;
    if (role == Role::band) {
        choose_band(to);
        return;
    }
    put(value, to);
    switch (role) {
        case Role::frequency:
            follow_band();
            remember();
            break;
        case Role::attenuator:
            show_signal();
            break;
        case Role::signal:
            take_signal();
            break;
        case Role::clock_hours:
        case Role::clock_minutes:
        case Role::clock_seconds:
            take_clock();
            break;
        default:
            break;
    }
}

void Receiver::act(const Action& action) {
    switch (action.kind) {
        case ActionKind::set:
            set(action.value, action.amount);
            break;
        case ActionKind::toggle:
            set(action.value, get(action.value) == 0 ? 1 : 0);
            break;
        case ActionKind::step: {
            const Value& range = value_of(action.value);
            std::int64_t to = static_cast<std::int64_t>(get(action.value)) + action.amount;
            if (action.around && range.type == ValueType::choice) {
                const std::int64_t count = static_cast<std::int64_t>(range.max) - range.min + 1;
                to = range.min + ((to - range.min) % count + count) % count;
            } else if (action.around && to > range.max) {
                to = range.min;
            } else if (action.around && to < range.min) {
                to = range.max;
            }
            to = std::max<std::int64_t>(range.min, std::min<std::int64_t>(to, range.max));
            set(action.value, static_cast<std::int32_t>(to));
            break;
        }
        case ActionKind::none:
        case ActionKind::page:
            break;
    }
}

std::int64_t Receiver::tuning_step() const {
    const std::int64_t frequency_unit = hertz_per(value_of(*of(Role::frequency)).unit);
    const auto number = number_of(Role::step);
    std::int64_t hertz = default_step_hertz;
    if (number) {
        const std::string& unit = value_of(*of(Role::step)).unit;
        hertz = *number * (unit.empty() ? frequency_unit : hertz_per(unit));
    }
    // No more than a whole range, so that any number of detents fits 64 bits.
    return std::clamp<std::int64_t>(
        hertz / frequency_unit, 1, std::numeric_limits<std::int32_t>::max());
}

void Receiver::turn(int detents) {
    const auto frequency = of(Role::frequency);
    if (!frequency || detents == 0) return;
    const std::int64_t to = tuned(get(*frequency), tuning_step(), detents);
    const Value& range = value_of(*frequency);
    set(*frequency,
        static_cast<std::int32_t>(
            std::max<std::int64_t>(range.min, std::min<std::int64_t>(to, range.max))));
}

void Receiver::choose_band(std::int32_t to) {
    const ValueId band = *of(Role::band);
    const std::int32_t from = get(band);
    put(band, to);
    const auto frequency = of(Role::frequency);
    const Choice* chosen = choice_of(Role::band);
    if (chosen == nullptr) return;
    // The key of the band that is on brings one back into it, and otherwise does nothing.
    const bool strayed = frequency && has_edges(*chosen) && !contains(*chosen, get(*frequency));
    if (get(band) == from && !strayed) return;
    const auto back_to = remembered_[static_cast<std::size_t>(get(band))];
    if (frequency && back_to) put(*frequency, *back_to);
    usual_mode();
}

void Receiver::follow_band() {
    const Choice* present = choice_of(Role::band);
    if (present == nullptr) return;
    const std::int32_t frequency = get(*of(Role::frequency));
    if (contains(*present, frequency)) return;
    // Of several that contain it, the narrowest says most about where one is.
    const auto& choices = value_of(*of(Role::band)).choices;
    const Choice* best = nullptr;
    const auto width = [](const Choice& c) { return static_cast<std::int64_t>(*c.high) - *c.low; };
    for (const Choice& choice : choices) {
        if (contains(choice, frequency) && (best == nullptr || width(choice) < width(*best))) {
            best = &choice;
        }
    }
    if (best != nullptr) put(*of(Role::band), best - choices.data());
}

void Receiver::remember() {
    const auto frequency = of(Role::frequency);
    const Choice* present = choice_of(Role::band);
    if (!frequency || present == nullptr) return;
    if (has_edges(*present) && !contains(*present, get(*frequency))) return;
    remembered_[static_cast<std::size_t>(get(*of(Role::band)))] = get(*frequency);
}

void Receiver::usual_mode() {
    const Choice* mode = choice_of(Role::mode);
    const Choice* band = choice_of(Role::band);
    if (mode == nullptr || band == nullptr) return;
    if (band->mode) {
        choose_mode(*band->mode);
    } else if ((mode->text == "LSB" || mode->text == "USB") && of(Role::frequency)) {
        const Hertz frequency = tuned_to().frequency;
        const auto hertz = static_cast<std::int32_t>(std::min(frequency.value, 2e9));
        choose_mode(usual_sideband(hertz) == Sideband::lower ? "LSB" : "USB");
    }
}

void Receiver::choose_mode(const std::string& text) {
    const auto& choices = value_of(*of(Role::mode)).choices;
    const auto found = std::find_if(
        choices.begin(), choices.end(), [&](const Choice& choice) { return choice.text == text; });
    if (found != choices.end()) put(*of(Role::mode), found - choices.begin());
}

Tuned Receiver::tuned_to() const {
    Tuned tuned{Hertz{0.0}, Hertz{static_cast<double>(default_bandwidth_hertz)}};
    if (const auto frequency = of(Role::frequency)) {
        tuned.frequency = Hertz{static_cast<double>(get(*frequency)) *
                                static_cast<double>(hertz_per(value_of(*frequency).unit))};
    }
    const auto bandwidth = number_of(Role::bandwidth);
    if (bandwidth && *bandwidth > 0) {
        tuned.bandwidth =
            Hertz{static_cast<double>(*bandwidth) *
                  static_cast<double>(hertz_per(value_of(*of(Role::bandwidth)).unit))};
    }
    return tuned;
}

void Receiver::show_signal() {
    const auto signal = of(Role::signal);
    if (!signal) return;
    const double at_receiver = at_aerial_dbm_ - number_of(Role::attenuator).value_or(0);
    put(*signal, std::lround(reading_of(value_of(*signal), at_receiver)));
}

void Receiver::take_signal() {
    const auto signal = of(Role::signal);
    if (!signal) return;
    at_aerial_dbm_ =
        dbm_of(value_of(*signal), get(*signal)) + number_of(Role::attenuator).value_or(0);
}

void Receiver::show_clock() {
    if (const auto hours = of(Role::clock_hours)) put(*hours, clock_ms_ / ms_per_hour);
    if (const auto minutes = of(Role::clock_minutes)) {
        put(*minutes, clock_ms_ % ms_per_hour / ms_per_minute);
    }
    if (const auto seconds = of(Role::clock_seconds)) {
        put(*seconds, clock_ms_ % ms_per_minute / ms_per_second);
    }
}

void Receiver::take_clock() {
    const std::int64_t within_second = clock_ms_ % ms_per_second;
    clock_ms_ = (number_of(Role::clock_hours).value_or(0) * ms_per_hour +
                 number_of(Role::clock_minutes).value_or(0) * ms_per_minute +
                 number_of(Role::clock_seconds).value_or(0) * ms_per_second + within_second) %
                ms_per_day;
}

void Receiver::pass(int milliseconds, bool live) {
    assert(milliseconds >= 0);
    if (!live) return;
    time_ms_ += milliseconds;
    clock_ms_ = (clock_ms_ + milliseconds) % ms_per_day;
    show_clock();
    while ((ticks_ + 1) * tick_ms <= time_ms_) {
        ++ticks_;
        tick();
    }
    show_signal();
}

void Receiver::tick() {
    if (!of(Role::signal)) return;
    const double heard = ether_.power(tuned_to(), ticks_ * tick_ms).value;
    static const double part = 1.0 - std::exp(-static_cast<double>(tick_ms) / decay_ms);
    at_aerial_dbm_ +=
        heard > at_aerial_dbm_ ? heard - at_aerial_dbm_ : (heard - at_aerial_dbm_) * part;
}

}  // namespace dialplate
