#include "sim/ledger/code_size.hpp"
#include "sim/ledger/draw_time.hpp"
#include "sim/ledger/events.hpp"
#include "sim/ledger/ledger.hpp"

#include <algorithm>

namespace dialplate {

FlashAccount flash_account(const Layout& layout, const BuiltImage& built) {
    FlashAccount flash;
    flash.capacity = layout.mcu.flash;
    flash.boot = layout.mcu.boot;
    flash.taken = layout.taken.flash;
    const DisplayProgram program = display_program(layout, built);
    flash.engine = engine_size(program, layout.mcu);
    flash.driver = driver_size(program, layout.mcu);
    if (program.touch_sheet) {
        flash.touch = touch_size(program, layout.mcu);
    }
    flash.faces = built.faces;
    flash.pictures = built.pictures;
    flash.pages = built.pages;
    flash.texts = built.texts;
    flash.image = Bytes{static_cast<std::int64_t>(built.bytes.size())};
    flash.contexts = built.contexts;
    flash.rest = flash.image - flash.pages - flash.texts - flash.contexts;
    for (const FaceCost& face : built.faces) {
        flash.rest = flash.rest - face.bytes;
    }
    for (const PictureCost& picture : built.pictures) {
        flash.rest = flash.rest - picture.bytes;
    }
    flash.total = flash.engine.bytes + flash.driver.bytes + flash.touch.bytes + flash.image;
    flash.left = flash.capacity - flash.boot - flash.taken - flash.total;
    return flash;
}

namespace {

RamAccount ram_account(const Layout& layout, const BuiltImage& built) {
    RamAccount ram;
    ram.capacity = layout.mcu.ram;
    ram.taken = layout.taken.ram;
    const DisplayProgram program = display_program(layout, built);
    ram.engine = engine_state(program, layout.mcu) +
                 Bytes{std::int64_t{built.arena_values} + built.arena_shown};
    ram.stack = stack_size(program, layout.mcu);
    ram.margin = stack_margin(layout.mcu);
    ram.total = ram.engine + ram.stack.bytes;
    ram.left = ram.capacity - ram.taken - ram.total - ram.margin;
    return ram;
}

}  // namespace

const char* name_of(Standing standing) {
    switch (standing) {
        case Standing::exact:
            return "exact";
        case Standing::measured:
            return "measured";
        case Standing::estimate:
            break;
    }
    return "estimate";
}

const char* name_of(EventKind kind) {
    switch (kind) {
        case EventKind::tuning:
            return "tuning";
        case EventKind::key:
            return "key";
        case EventKind::value:
            return "value";
        case EventKind::page:
            break;
    }
    return "page";
}

const EventTime* Ledger::slowest_tuning() const {
    const EventTime* slowest_of_all = nullptr;
    for (const EventTime& event : time) {
        if (event.kind == EventKind::tuning &&
            (slowest_of_all == nullptr || event.time > slowest_of_all->time)) {
            slowest_of_all = &event;
        }
    }
    return slowest_of_all;
}

const EventTime* Ledger::slowest() const {
    const auto found =
        std::max_element(time.begin(), time.end(), [](const EventTime& a, const EventTime& b) {
            return a.time < b.time;
        });
    return found == time.end() ? nullptr : &*found;
}

Ledger account(const Layout& layout, const BuiltImage& built) {
    Ledger ledger;
    ledger.mcu = layout.mcu.name;
    ledger.clock = layout.clock;
    ledger.flash = flash_account(layout, built);
    ledger.ram = ram_account(layout, built);
    const PartSet parts = parts_used(layout, built);
    for (const Happening& happening : play_events(layout, built)) {
        ledger.time.push_back(timed(happening, layout, parts));
    }
    return ledger;
}

}  // namespace dialplate
