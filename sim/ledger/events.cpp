#include "sim/ledger/events.hpp"

#include "sim/layout/item_values.hpp"
#include "sim/ledger/draw_time.hpp"

#include <algorithm>
#include <limits>
#include <optional>
#include <set>

namespace dialplate {
namespace {

/// The values that the items of a page show.
std::set<ValueId> values_shown(const Page& page) {
    std::set<ValueId> shown;
    for (const Item& item : page.items) {
        for (const ValueId value : values_of(item)) {
            shown.insert(value);
        }
    }
    return shown;
}

std::optional<ValueId> with_role(const Layout& layout, Role role) {
    for (std::size_t i = 0; i < layout.values.size(); ++i) {
        if (layout.values[i].role == role) {
            return static_cast<ValueId>(i);
        }
    }
    return std::nullopt;
}

class Stage {
public:
    Stage(const Layout& layout, const BuiltImage& built)
        : layout_(layout), time_(layout, parts_used(layout, built)), prototype_(layout, built) {
        prototype_.watch_services([this](const EngineWork& work) {
            const double cycles = time_.cycles(work);
            if (cycles > longest_cycles_) {
                longest_cycles_ = cycles;
                longest_ = work;
            }
        });
    }

    void play_page(int page) {
        page_ = page;
        prototype_.show_page(page);
        const Update whole = settle();
        note(EventKind::page,
             "page " + layout_.pages[static_cast<std::size_t>(page)].name,
             "the whole page is drawn",
             whole);
        shown_ = values_shown(layout_.pages[static_cast<std::size_t>(page)]);
        tune();
        change_band();
        for (const ValueId value : shown_) {
            change(value);
        }
        press_keys();
    }

    std::vector<Happening> take() {
        std::stable_sort(happenings_.begin(), happenings_.end(), [](const auto& a, const auto& b) {
            return rank(a) < rank(b);
        });
        return std::move(happenings_);
    }

private:
    [[nodiscard]] const Value& value_of(ValueId value) const {
        return layout_.values[static_cast<std::size_t>(value)];
    }
    [[nodiscard]] bool shows(ValueId value) const { return shown_.count(value) != 0; }

    /// Draws, and keeps the longest service of this update in `longest_`.
    Update settle() {
        longest_cycles_ = 0.0;
        return prototype_.settle();
    }

    /// Tuning first, then bands and other values, keys, pages.
    static int rank(const Happening& happening) {
        switch (happening.kind) {
            case EventKind::tuning:
                return 0;
            case EventKind::value:
                return 1;
            case EventKind::key:
                return 2;
            case EventKind::page:
                break;
        }
        return 3;
    }

    void note(EventKind kind,
              const std::string& event,
              const std::string& what,
              const Update& update) {
        if (update.sent.bytes == 0) {
            return;
        }
        const auto known =
            std::find_if(happenings_.begin(), happenings_.end(), [&](const Happening& happening) {
                return happening.event == event;
            });
        if (known != happenings_.end() && known->update.sent.bytes >= update.sent.bytes) {
            return;
        }
        const Happening news{.kind = kind,
                             .page = page_,
                             .event = event,
                             .what = what,
                             .update = update,
                             .longest = longest_};
        if (known != happenings_.end()) {
            *known = news;
        } else {
            happenings_.push_back(news);
        }
    }

    Update from_to(ValueId value, std::int64_t from, std::int64_t to) {
        prototype_.set(value, static_cast<std::int32_t>(from));
        settle();
        prototype_.set(value, static_cast<std::int32_t>(to));
        return settle();
    }

    std::string words(ValueId value, std::int64_t from, std::int64_t to) {
        const Value& shown = value_of(value);
        const auto text = [&shown](std::int64_t at) {
            if (shown.type == ValueType::choice) {
                return shown.choices[static_cast<std::size_t>(at)].text;
            }
            if (shown.type == ValueType::flag) {
                return std::string{at == 0 ? "off" : "on"};
            }
            return std::to_string(at) + (shown.unit.empty() ? "" : " " + shown.unit);
        };
        return shown.name + " from " + text(from) + " to " + text(to);
    }

    /// One tuning step from where the receiver starts, and the carry through most digits.
    void tune() {
        const std::optional<ValueId> frequency = with_role(layout_, Role::frequency);
        if (!frequency || !shows(*frequency)) {
            return;
        }
        const Value& value = value_of(*frequency);
        prototype_.set(*frequency, value.start);
        settle();
        prototype_.turn(1);
        if (prototype_.get(*frequency) == value.start) {  // already at the upper end
            prototype_.turn(-1);
        }
        const std::int64_t reached = prototype_.get(*frequency);
        note(EventKind::tuning, "tuning step", words(*frequency, value.start, reached), settle());

        const std::int64_t step = std::max<std::int64_t>(1, std::abs(reached - value.start));
        for (std::int64_t power = 10; power <= value.max; power *= 10) {
            const std::int64_t below = power - step;
            if (below >= value.min && below < power) {
                note(EventKind::tuning,
                     "worst carry",
                     words(*frequency, below, power),
                     from_to(*frequency, below, power));
            }
        }
        prototype_.set(*frequency, value.start);
        settle();
    }

    /// A band change as a sketch does it: band, frequency and mode, then one service.
    void change_band() {
        const std::optional<ValueId> band = with_role(layout_, Role::band);
        if (!band) {
            return;
        }
        const std::optional<ValueId> frequency = with_role(layout_, Role::frequency);
        const std::optional<ValueId> mode = with_role(layout_, Role::mode);
        const std::vector<Choice>& bands = value_of(*band).choices;
        if (bands.size() < 2) {
            return;
        }
        const auto enter = [&](std::size_t at) {
            prototype_.set(*band, static_cast<std::int32_t>(at));
            if (frequency && bands[at].number) {
                prototype_.set(*frequency, *bands[at].number);
            }
            if (mode && bands[at].mode) {
                const std::vector<Choice>& modes = value_of(*mode).choices;
                const auto found = std::find_if(modes.begin(), modes.end(), [&](const Choice& m) {
                    return m.text == *bands[at].mode;
                });
                if (found != modes.end()) {
                    prototype_.set(*mode, static_cast<std::int32_t>(found - modes.begin()));
                }
            }
            return settle();
        };
        enter(bands.size() - 1);
        for (std::size_t at = 0; at < bands.size(); ++at) {
            const std::size_t before = at == 0 ? bands.size() - 1 : at - 1;
            note(EventKind::value,
                 "band change",
                 "from " + bands[before].text + " to " + bands[at].text,
                 enter(at));
        }
        for (const std::optional<ValueId>& value : {band, frequency, mode}) {
            if (value) {
                prototype_.set(*value, value_of(*value).start);
            }
        }
        settle();
    }

    /// Any other value: the costliest neighbour of a choice, the full swing of a number.
    void change(ValueId id) {
        const Value& value = value_of(id);
        if (value.role == Role::frequency || value.role == Role::band) {
            return;
        }
        const bool stepped = value.type == ValueType::choice || value.type == ValueType::flag;
        if (stepped) {
            for (std::int64_t at = value.min; at <= value.max && value.max > value.min; ++at) {
                const std::int64_t before = at == value.min ? value.max : at - 1;
                note(EventKind::value,
                     value.name + " change",
                     words(id, before, at),
                     from_to(id, before, at));
            }
        } else {
            note(EventKind::value,
                 value.name + " full swing",
                 words(id, value.min, value.max),
                 from_to(id, value.min, value.max));
        }
        prototype_.set(id, value.start);
        settle();
    }

    void press_keys() {
        for (const Item& item : layout_.pages[static_cast<std::size_t>(page_)].items) {
            if (item.kind != ItemKind::key) {
                continue;
            }
            prototype_.touch(item.box.x + item.box.width / 2, item.box.y + item.box.height / 2);
            note(EventKind::key, "key press", item.name, settle());
            // Slides off before it lets go, so that the key does nothing.
            slide_off(item.box);
            prototype_.lift();
            settle();
        }
    }

    /// To a corner of the glass outside the box. A key as large as the glass has none and is let go of.
    void slide_off(const Box& box) {
        const int right = layout_.glass_width() - 1;
        const int bottom = layout_.glass_height() - 1;
        for (const int x : {0, right}) {
            for (const int y : {0, bottom}) {
                if (x < box.x || x >= box.right() || y < box.y || y >= box.bottom()) {
                    prototype_.touch(x, y);
                    return;
                }
            }
        }
    }

    const Layout& layout_;
    const ServiceTime time_;
    Prototype prototype_;
    EngineWork longest_;
    double longest_cycles_ = 0.0;
    int page_ = 0;
    std::set<ValueId> shown_;
    std::vector<Happening> happenings_;
};

}  // namespace

std::vector<Happening> play_events(const Layout& layout, const BuiltImage& built) {
    Stage stage(layout, built);
    for (std::size_t page = 0; page < layout.pages.size(); ++page) {
        stage.play_page(static_cast<int>(page));
    }
    return stage.take();
}

}  // namespace dialplate
