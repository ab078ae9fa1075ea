#include "sim/prove/scenario.hpp"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <random>
#include <set>

namespace dialplate {
namespace {

constexpr int carry_crossings = 8;  // steps on either side of a power of ten
constexpr int random_services = 5;  // pieces drawn at most before the next thing happens

struct Place {
    int x = 0, y = 0;
};

Place middle_of(const Box& box) {
    return {box.x + box.width / 2, box.y + box.height / 2};
}

class Player {
public:
    Player(LockStep& both,
           const Layout& layout,
           const BuiltImage& built,
           const ScenarioOptions& options)
        : both_(both), layout_(layout), options_(options), random_(options.seed) {
        for (std::size_t v = 0; v < layout.values.size(); ++v) {
            if (layout.values[v].role == Role::frequency) frequency_ = static_cast<ValueId>(v);
        }
        std::size_t key = 0;
        for (const Page& page : layout.pages) {
            keys_.emplace_back();
            for (const Item& item : page.items) {
                if (item.kind == ItemKind::key && key < built.keys.size() &&
                    built.keys[key] == item.name) {
                    keys_.back().push_back(&item);
                    ++key;
                }
            }
        }
    }

    std::vector<MeasuredTime> play(Share share) {
        if (share != Share::tuning_and_mixture) play_pages();
        if (share != Share::pages_keys_and_values) {
            tune();
            mix();
        }
        return std::move(times_);
    }

private:
    void play_pages() {
        for (int page = 0; page < page_count(); ++page) {
            show(page, "turning to");
        }
        for (int page = 0; page < page_count() && both_.going(); ++page) {
            measure(page);
            press_keys(page);
            for (std::size_t v = 0; v < layout_.values.size() && both_.going(); ++v) {
                walk(page, static_cast<ValueId>(v));
            }
        }
        if (layout_.palettes.size() < 2) return;
        // The first palette again at the end.
        for (std::size_t n = 1; n <= layout_.palettes.size(); ++n) {
            const std::size_t palette = n % layout_.palettes.size();
            both_.doing("drawing in palette \"" + layout_.palettes[palette] + '"');
            both_.use_palette(static_cast<int>(palette));
            both_.settle();
            for (int page = 0; page < page_count(); ++page) {
                show(page, "in palette \"" + layout_.palettes[palette] + "\", turning to");
            }
        }
    }

    [[nodiscard]] int page_count() const { return static_cast<int>(layout_.pages.size()); }
    [[nodiscard]] const Value& value_of(ValueId value) const {
        return layout_.values[static_cast<std::size_t>(value)];
    }
    [[nodiscard]] std::string on(int page) const {
        return " on page \"" + layout_.pages[static_cast<std::size_t>(page)].name + '"';
    }

    Served show(int page, const std::string& how) {
        both_.doing(how + " page \"" + layout_.pages[static_cast<std::size_t>(page)].name + '"');
        both_.show_page(page);
        return both_.settle();
    }

    void put(ValueId value, std::int64_t to, int page) {
        both_.doing("setting " + value_of(value).name + " to " + std::to_string(to) + on(page));
        both_.set(value, static_cast<std::int32_t>(to));
    }

    void start_again(int page) {
        for (std::size_t v = 0; v < layout_.values.size(); ++v) {
            both_.doing("setting all values to their start" + on(page));
            both_.set(static_cast<ValueId>(v), layout_.values[v].start);
        }
        both_.settle();
    }

    // The same events as the ledger plays, named and chosen as it does.
    void note(const std::string& event, const Served& served) {
        if (served.bytes == 0) return;
        const auto known = std::find_if(
            times_.begin(), times_.end(), [&](const MeasuredTime& t) { return t.event == event; });
        if (known == times_.end()) {
            times_.push_back({event, served.bytes, served.cycles});
        } else if (served.bytes > known->bytes) {
            *known = {event, served.bytes, served.cycles};
        }
    }

    [[nodiscard]] bool shows_frequency(int page) const {
        const auto& items = layout_.pages[static_cast<std::size_t>(page)].items;
        return frequency_ && std::any_of(items.begin(), items.end(), [this](const Item& item) {
                   return (item.kind == ItemKind::readout && item.readout.value == *frequency_) ||
                          (item.kind == ItemKind::scale && item.scale.value == *frequency_);
               });
    }

    void measure(int page) {
        show(page, "turning to");
        start_again(page);
        note("page " + layout_.pages[static_cast<std::size_t>(page)].name, show(page, "redrawing"));
        if (!shows_frequency(page)) return;
        both_.doing("tuning one step" + on(page));
        both_.turn(1);
        const Value& frequency = value_of(*frequency_);
        if (both_.get(*frequency_) == frequency.start) both_.turn(-1);
        note("tuning step", both_.settle());
        const std::int64_t step =
            std::max<std::int64_t>(1, std::abs(both_.get(*frequency_) - frequency.start));
        for (std::int64_t power = 10; power <= frequency.max; power *= 10) {
            if (power - step < frequency.min) continue;
            put(*frequency_, power - step, page);
            both_.settle();
            put(*frequency_, power, page);
            note("worst carry", both_.settle());
        }
        start_again(page);
    }

    /// A corner of the glass outside the box; for a key as large as the glass, none.
    [[nodiscard]] std::optional<Place> beside(const Box& box) const {
        for (const int x : {0, layout_.glass_width() - 1}) {
            for (const int y : {0, layout_.glass_height() - 1}) {
                if (x < box.x || x >= box.right() || y < box.y || y >= box.bottom()) {
                    return Place{x, y};
                }
            }
        }
        return std::nullopt;
    }

    void press_keys(int page) {
        if (!both_.has_sheet()) return;
        for (const Item* key : keys_[static_cast<std::size_t>(page)]) {
            if (!both_.going()) return;
            const Place at = middle_of(key->box);
            const std::string its = " key \"" + key->name + '"' + on(page);

            both_.doing("sliding off" + its);
            both_.touch(at.x, at.y);
            note("key press", both_.settle());
            if (const std::optional<Place> away = beside(key->box)) {
                both_.touch(away->x, away->y);
                both_.settle();
                both_.touch(at.x, at.y);
                both_.settle();
                both_.touch(away->x, away->y);
                both_.settle();
            }
            both_.lift();
            both_.settle();
            back_to(page);

            both_.doing("tapping" + its);
            both_.press_sheet(at.x, at.y);
            both_.pass(tap_ms);
            both_.lift_sheet();
            both_.settle();
            back_to(page);

            both_.doing("holding" + its);
            both_.press_sheet(at.x, at.y);
            both_.pass(key->key.repeat
                           ? layout_.touch.repeat_after_ms + 2 * layout_.touch.repeat_every_ms + 40
                           : layout_.touch.hold_ms + 40);
            both_.lift_sheet();
            both_.settle();
            back_to(page);

            if (!key->key.enabled_by) continue;
            // The other way round: a key that was disabled answers, or one that answered does not.
            const ValueId flag = *key->key.enabled_by;
            put(flag, both_.get(flag) == 0 ? 1 : 0, page);
            both_.settle();
            both_.doing("tapping the enabled or disabled" + its);
            both_.press_sheet(at.x, at.y);
            both_.pass(tap_ms);
            both_.lift_sheet();
            both_.settle();
            back_to(page);
        }
        start_again(page);
    }

    void back_to(int page) {
        if (both_.page() == page) return;  // a page that is shown again is drawn again, all of it
        both_.show_page(page);
        both_.settle();
    }

    /// Every choice, or a sweep from end to end and back.
    void walk(int page, ValueId id) {
        const Value& value = value_of(id);
        if (value.type == ValueType::choice || value.type == ValueType::flag) {
            for (std::int64_t at = value.min; at <= value.max; ++at) {
                put(id, at, page);
                both_.settle();
            }
        } else {
            const std::int64_t span = std::int64_t{value.max} - value.min;
            for (int way = 0; way <= 2 * options_.meter_steps; ++way) {
                const int at = way <= options_.meter_steps ? way : 2 * options_.meter_steps - way;
                put(id, value.min + span * at / std::max(1, options_.meter_steps), page);
                both_.settle();
            }
        }
        both_.doing("waiting after " + value.name + on(page));
        both_.pass(60);
        put(id, value.start, page);
        both_.settle();
    }

    /// Shares the steps out among the pages that show the frequency.
    void tune() {
        std::vector<int> pages;
        for (int page = 0; page < page_count(); ++page) {
            if (shows_frequency(page)) pages.push_back(page);
        }
        int left = options_.tuning_steps;
        for (std::size_t n = 0; n < pages.size() && both_.going(); ++n) {
            const int share = left / static_cast<int>(pages.size() - n);
            tune(pages[n], share);
            left -= share;
        }
    }

    /// Up through each power of ten that lies in the range and down again, then on from the start.
    /// @param left  Steps to take.
    void tune(int page, int left) {
        show(page, "turning to");
        const Value& frequency = value_of(*frequency_);
        const auto turn = [&](int detents) {
            both_.doing("tuning from " + std::to_string(both_.get(*frequency_)) + on(page));
            both_.turn(detents);
            both_.settle();
            --left;
        };
        start_again(page);
        turn(1);
        const std::int64_t step =
            std::max<std::int64_t>(1, std::abs(both_.get(*frequency_) - frequency.start));
        // The greatest first: 9.999.999 to 10.000.000 where the range has it.
        std::int64_t power = 1'000'000'000;
        for (; power >= 10; power /= 10) {
            if (power > frequency.max || power - step < frequency.min) continue;
            // 9.999.999 to 10.000.000 itself, whatever the step, and back.
            for (const std::int64_t to : {power - 1, power, power - 1}) {
                put(*frequency_, to, page);
                both_.settle();
            }
            put(*frequency_,
                std::max<std::int64_t>(frequency.min, power - carry_crossings * step),
                page);
            both_.settle();
            for (int n = 0; n < 2 * carry_crossings && left > 0 && both_.going(); ++n) {
                turn(1);
            }
            for (int n = 0; n < 2 * carry_crossings && left > 0 && both_.going(); ++n) {
                turn(-1);
            }
        }
        put(*frequency_, frequency.start, page);
        while (left > 0 && both_.going()) {
            const int detents = 1 + below(3);
            turn(left % 16 < 12 ? detents : -2 * detents);
        }
        start_again(page);
    }

    int below(int count) { return static_cast<int>(random_() % static_cast<unsigned>(count)); }

    void happen(int page) {
        const std::string where = "a random mixture, seed " + std::to_string(options_.seed);
        both_.doing(where);
        switch (below(8)) {
            case 0:
            case 1:
                if (!layout_.values.empty()) {
                    const auto id = below(static_cast<int>(layout_.values.size()));
                    const Value& value = value_of(id);
                    const std::int64_t span = std::int64_t{value.max} - value.min + 1;
                    const std::int64_t raw =
                        static_cast<std::int64_t>(random_()) * 65536 + below(65536);
                    both_.set(id, static_cast<std::int32_t>(value.min + raw % span));
                }
                break;
            case 2:
                both_.turn(below(21) - 10);
                break;
            case 3:
                both_.touch(below(layout_.glass_width()), below(layout_.glass_height()));
                break;
            case 4: {
                const auto& keys = keys_[static_cast<std::size_t>(page)];
                if (keys.empty()) break;
                const Box& box =
                    keys[static_cast<std::size_t>(below(static_cast<int>(keys.size())))]->box;
                both_.touch(middle_of(box).x, middle_of(box).y);
                break;
            }
            case 5:
                both_.lift();
                break;
            case 6:
                if (!layout_.palettes.empty() && below(4) == 0) {
                    both_.use_palette(below(static_cast<int>(layout_.palettes.size())));
                }
                break;
            default:
                both_.pass(10 * below(12));
                break;
        }
    }

    /// Things happen in the middle of an update too.
    void mix() {
        int page = 0;
        for (int n = 0; n < options_.random_steps && both_.going(); ++n) {
            if (below(16) == 0) {
                page = below(page_count());
                both_.show_page(page);
            }
            happen(page);
            if (below(3) == 0) {
                both_.settle();
            } else {
                both_.serve(1 + below(random_services));
            }
        }
        both_.settle();
        both_.lift();
        both_.settle();
    }

    LockStep& both_;
    const Layout& layout_;
    const ScenarioOptions options_;
    std::mt19937 random_;
    std::optional<ValueId> frequency_;
    std::vector<std::vector<const Item*>> keys_;  // Of each page, those with a number.
    std::vector<MeasuredTime> times_;
};

}  // namespace

std::vector<MeasuredTime> play_scenario(LockStep& both,
                                        const Layout& layout,
                                        const BuiltImage& built,
                                        const ScenarioOptions& options,
                                        Share share) {
    return Player(both, layout, built, options).play(share);
}

}  // namespace dialplate
