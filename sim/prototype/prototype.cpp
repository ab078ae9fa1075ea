#include "sim/prototype/prototype.hpp"

#include "sim/display/wire.hpp"
#include "sim/prototype/work_counter.hpp"
#include "sim/receiver/receiver.hpp"
#include "ui/screen.hpp"

#include <algorithm>

namespace dialplate {

namespace {

constexpr int tick_ms = 10;  // time passes in steps of this
constexpr int tap_ms = 80;   // finger down during a tap

/// The engine's bus on the PC (ui/bus.hpp).
class WireBus {
public:
    WireBus(Wire& wire, WorkCounter& counter) : wire_(&wire), counter_(&counter) {}
    void window(std::uint16_t x, std::uint16_t y, std::uint16_t w, std::uint16_t h) {
        counter_->window(x, y, w, h);
        wire_->window(x, y, w, h);
    }
    void push(std::uint16_t colour, std::uint16_t count) {
        counter_->push(colour, count);
        wire_->push(colour, count);
    }

private:
    Wire* wire_;
    WorkCounter* counter_;
};

/// An image in memory that counts what is read of it.
class CountedBytes {
public:
    CountedBytes(const std::vector<std::uint8_t>& image, WorkCounter& counter)
        : bytes_(image.data(), static_cast<std::uint16_t>(image.size())), counter_(&counter) {}
    std::uint8_t u8(std::uint16_t at) const {
        counter_->read(at);
        return bytes_.u8(at);
    }

private:
    MemoryBytes bytes_;
    WorkCounter* counter_;
};

/// The engine with all its parts, reading through CountedBytes.
struct CountedParts : EveryPart {
    using Bytes = CountedBytes;
};

KeyEventKind kind_of(KeyMotion motion) {
    switch (motion) {
        case KeyMotion::press:
            return KeyEventKind::press;
        case KeyMotion::hold:
            return KeyEventKind::hold;
        case KeyMotion::repeat:
            return KeyEventKind::repeat;
        case KeyMotion::release:
            return KeyEventKind::release;
        case KeyMotion::slide_off:
            break;
    }
    return KeyEventKind::slide_off;
}

/// The keys of all pages in the order of their numbers.
std::vector<const Item*> keys_by_number(const Layout& layout, const BuiltImage& built) {
    std::vector<const Item*> keys;
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            // Keys off the glass have no number; names are unique in a page only, so follow the order.
            if (item.kind == ItemKind::key && keys.size() < built.keys.size() &&
                built.keys[keys.size()] == item.name) {
                keys.push_back(&item);
            }
        }
    }
    return keys;
}

}  // namespace

struct Prototype::Inside {
    Inside(const Layout& l, const BuiltImage& b)
        : layout(l),
          built(b),
          keys(keys_by_number(layout, built)),
          controller(layout.display, layout.bus.kind),
          wire(controller, layout.display, layout.turn, layout.bus.kind),
          told(layout.values.size()),
          counter(built.bytes, told),
          receiver(layout),
          memory(static_cast<std::size_t>(built.arena_values + built.arena_shown_by_all_parts) + 1),
          screen(WireBus(wire, counter),
                 Rom<CountedBytes>(CountedBytes(built.bytes, counter)),
                 memory.data()) {
        wire.start();
        for (std::size_t v = 0; v < layout.values.size(); ++v)
            tell(static_cast<ValueId>(v));
    }

    void tell(ValueId value) {
        told[static_cast<std::size_t>(value)] = receiver.get(value);
        screen.set(static_cast<std::uint8_t>(value), receiver.get(value));
    }
    void tell_changes() {
        for (const ValueId value : receiver.changed())
            tell(value);
    }

    /// Lets the receiver act on what the keys report. False: they reported nothing.
    bool hear() {
        bool any = false;
        for (Event event{}; screen.next_event(event); any = true) {
            const Item& item = *keys[event.key];
            heard.push_back({kind_of(event.what), event.key, item.name});
            const Key& key = item.key;
            const bool tapped = event.what == KeyMotion::release &&
                                !(event.held && (key.repeat || key.hold.kind != ActionKind::none));
            if (tapped || event.what == KeyMotion::repeat) act(key.tap);
            if (event.what == KeyMotion::hold) act(key.hold);
        }
        tell_changes();
        return any;
    }
    void act(const Action& action) {
        if (action.kind != ActionKind::none && action.kind != ActionKind::page)
            receiver.act(action);
    }

    /// Draws until the glass shows everything; adds to `update`.
    void settle(Update& update) {
        do {
            hear();
            controller.begin_update();
            for (bool more = true; more;) {
                const std::int64_t pixels = controller.counters().pixels;
                EngineWork before;
                if (on_service) before = counter.work();
                counter.service();
                more = screen.service(static_cast<std::uint16_t>(now_ms));
                counter.end_service(more);
                if (on_service) on_service(counter.work() - before);
                const std::int64_t sent = controller.counters().pixels - pixels;
                update.slices += sent > 0 ? 1 : 0;
                update.longest_slice_pixels = std::max(update.longest_slice_pixels, sent);
            }
            const std::vector<SentWindow> windows = controller.take_windows(layout.turn);
            update.windows.insert(update.windows.end(), windows.begin(), windows.end());
        } while (hear());
    }

    void pass(int milliseconds, Update& update) {
        settle(update);
        for (; milliseconds > 0; milliseconds -= tick_ms) {
            const int step = std::min(milliseconds, tick_ms);
            now_ms += step;
            receiver.pass(step, live);
            tell_changes();
            settle(update);
        }
    }

    const Layout layout;
    const BuiltImage built;
    const std::vector<const Item*> keys;
    Controller controller;
    Wire wire;
    std::vector<std::int32_t> told;  ///< By ValueId.
    WorkCounter counter;
    std::function<void(const EngineWork&)> on_service;
    Receiver receiver;
    std::vector<std::uint8_t> memory;
    Screen<WireBus, CountedParts> screen;
    std::vector<KeyEvent> heard;
    std::int64_t now_ms = 0;
    int palette = 0;
    bool live = false;
};

Prototype::Prototype(const Layout& layout, const BuiltImage& built)
    : in_(std::make_unique<Inside>(layout, built)) {}
Prototype::~Prototype() = default;

const Layout& Prototype::layout() const {
    return in_->layout;
}

void Prototype::show_page(int page) {
    in_->screen.show_page(static_cast<std::uint8_t>(page));
}
int Prototype::page() const {
    return in_->screen.page();
}

void Prototype::use_palette(int palette) {
    in_->palette = palette;
    in_->screen.use_palette(static_cast<std::uint8_t>(palette));
}
int Prototype::palette() const {
    return in_->palette;
}

void Prototype::set(ValueId value, std::int32_t to) {
    in_->receiver.set(value, to);
    in_->tell_changes();
}
std::int32_t Prototype::get(ValueId value) const {
    return in_->receiver.get(value);
}

void Prototype::touch(int x, int y) {
    const auto inside = [](int place, int size) {
        return static_cast<std::uint16_t>(std::clamp(place, 0, size - 1));
    };
    in_->screen.touch(
        Point{inside(x, in_->layout.glass_width()), inside(y, in_->layout.glass_height())});
}
void Prototype::lift() {
    in_->screen.lift();
}

void Prototype::tap(int x, int y) {
    touch(x, y);
    pass(tap_ms);
    lift();
    settle();
}

void Prototype::turn(int detents) {
    in_->receiver.turn(detents);
    in_->tell_changes();
}

Update Prototype::pass(int milliseconds) {
    Update update;
    const BusCounters before = counters();
    const EngineWork work_before = in_->counter.work();
    in_->pass(milliseconds, update);
    update.sent = counters() - before;
    update.work = in_->counter.work() - work_before;
    return update;
}

Update Prototype::settle() {
    Update update;
    const BusCounters before = counters();
    const EngineWork work_before = in_->counter.work();
    in_->settle(update);
    update.sent = counters() - before;
    update.work = in_->counter.work() - work_before;
    return update;
}

void Prototype::live(bool on) {
    in_->live = on;
}

std::vector<KeyEvent> Prototype::heard() {
    return std::exchange(in_->heard, {});
}

std::vector<std::uint16_t> Prototype::glass() const {
    return in_->controller.glass(in_->layout.turn);
}
const BusCounters& Prototype::counters() const {
    return in_->controller.counters();
}

void Prototype::watch_services(std::function<void(const EngineWork&)> listener) {
    in_->on_service = std::move(listener);
}

Update Prototype::redraw() {
    in_->screen.draw_again();
    return settle();
}

}  // namespace dialplate
