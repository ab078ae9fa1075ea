#include "sim/emit/pieces.hpp"
#include "sim/emit/text.hpp"

#include <algorithm>

namespace dialplate {
namespace {

constexpr std::string_view driver_head =
    R"(// "@title@": a sketch that shows the display and lets its keys answer, until your receiver is
// behind it. The calls that matter stand in layout.hpp, the pins in wiring.hpp. Written by dialplate, which
// keeps your changes when it emits again.
#ifdef ARDUINO
#include <Arduino.h>
#endif

#include "layout.hpp"
@includes@
@bus@static uint8_t memory[layout::memory_bytes];
static layout::Screen<@screen@> screen(@screen@{}, layout::image(), memory);
)";

constexpr std::string_view own_bus =
    R"(// The two functions that the engine asks for, in terms of the sketch's own display driver.
struct OwnBus {
    void window(uint16_t x, uint16_t y, uint16_t width, uint16_t height) {
        own_display::choose_area(
            x, y, static_cast<uint16_t>(x + width - 1), static_cast<uint16_t>(y + height - 1));
    }
    void push(uint16_t colour, uint16_t count) { own_display::write(colour, count); }
};

)";

constexpr std::string_view step_function =
    R"(
// Steps a value; at its ends it stays or goes round.
static void step(uint8_t value, int32_t by, int32_t least, int32_t most, bool around) {
    int32_t to = screen.get(value) + by;
    if (to > most) {
        to = around ? least : most;
    }
    if (to < least) {
        to = around ? most : least;
    }
    screen.set(value, to);
}
)";

constexpr std::string_view finger_function =
    R"(
// Reads the touch sheet. Three readings without a finger and it is gone: one alone may be noise.
static void read_finger() {
    static uint8_t misses = 3;
    dialplate::RawTouch raw;
    if (wiring::Touch::read(raw)) {
        misses = 0;
        const dialplate::GlassPoint at = dialplate::map_touch(wiring::calibration, raw);
        screen.touch(dialplate::Point{on_glass(at.x, layout::width), on_glass(at.y, layout::height)});
    } else if (misses < 3 && ++misses == 3) {
        screen.lift();
    }
}
)";

constexpr std::string_view on_glass_function =
    R"(
static uint16_t on_glass(int16_t place, uint16_t size) {
    return place < 0                               ? 0
           : static_cast<uint16_t>(place) >= size ? static_cast<uint16_t>(size - 1)
                                                   : static_cast<uint16_t>(place);
}
)";

std::string value_name(const Emitting& it, ValueId value) {
    return "layout::value::" + it.names.values[static_cast<std::size_t>(value)];
}

std::string state_name(const Emitting& it, ValueId value, std::int32_t state) {
    const auto& choices = it.names.choices[static_cast<std::size_t>(value)];
    return static_cast<std::size_t>(state) < choices.size()
               ? "layout::choice::" + choices[static_cast<std::size_t>(state)]
               : std::to_string(state);
}

/// Empty for a page: the engine turns it.
std::string call_of(const Emitting& it, const Action& action) {
    switch (action.kind) {
        case ActionKind::none:
        case ActionKind::page:
            return {};
        case ActionKind::set:
            return "screen.set(" + value_name(it, action.value) + ", " +
                   state_name(it, action.value, action.amount) + ");";
        case ActionKind::toggle: {
            const std::string value = value_name(it, action.value);
            return "screen.set(" + value + ", screen.get(" + value + ") == 0);";
        }
        case ActionKind::step:
            break;
    }
    const Value& value = it.layout.values[static_cast<std::size_t>(action.value)];
    return "step(" + value_name(it, action.value) + ", " + std::to_string(action.amount) + ", " +
           std::to_string(value.min) + ", " + std::to_string(value.max) + ", " +
           (action.around ? "true" : "false") + ");";
}

bool is_step(const Action& action) {
    return action.kind == ActionKind::step;
}

/// What the keys of the layout do, and which conditions that needs.
struct KeyCases {
    std::string cases;
    bool released = false, tapped = false, held = false, steps = false;
};

KeyCases key_cases(const Emitting& it) {
    KeyCases all;
    const std::vector<const Key*> keys = keys_by_number(it.layout, it.built);
    for (std::size_t k = 0; k < keys.size(); ++k) {
        const Key& key = *keys[k];
        const std::string tap = call_of(it, key.tap), hold = call_of(it, key.hold);
        if (tap.empty() && hold.empty()) continue;
        const bool held = key.repeat || key.hold.kind != ActionKind::none;
        std::string lines = "        case layout::key::" + it.names.keys[k] + ":\n";
        if (!tap.empty()) {
            lines += std::string("            if (") + (held ? "tapped" : "released") + ") " + tap +
                     '\n';
            (held ? all.tapped : all.released) = true;
        }
        if (!hold.empty()) {
            lines += "            if (held) " + hold + '\n';
            all.held = true;
        }
        all.cases += lines + "            break;\n";
        all.steps = all.steps || is_step(key.tap) || is_step(key.hold);
    }
    return all;
}

std::string key_function(const KeyCases& keys) {
    if (keys.cases.empty()) return {};
    std::string text =
        "\n// What the keys do in the layout. Here your receiver would be told; this sketch only "
        "shows "
        "it.\nstatic void act_on(const dialplate::Event& event) {\n";
    if (keys.released || keys.tapped) {
        text += "    const bool released = event.what == dialplate::KeyMotion::release;\n";
    }
    if (keys.tapped) {
        text +=
            "    // Keys that repeat or are held: a release after the hold is no tap.\n"
            "    const bool tapped = (released && !event.held) || event.what == "
            "dialplate::KeyMotion::repeat;\n";
    }
    if (keys.held) {
        text += "    const bool held = event.what == dialplate::KeyMotion::hold;\n";
    }
    return text + "    switch (event.key) {\n" + keys.cases +
           "        default:\n            break;\n    }\n}\n";
}

/// A value to move in place of a receiver: the frequency, else any number or level.
std::optional<ValueId> lively_value(const Layout& layout) {
    const auto id = [&](auto wanted) -> std::optional<ValueId> {
        const auto found = std::find_if(layout.values.begin(), layout.values.end(), wanted);
        if (found == layout.values.end()) return std::nullopt;
        return static_cast<ValueId>(found - layout.values.begin());
    };
    const auto moves = [](const Value& value) {
        return (value.type == ValueType::number || value.type == ValueType::level) &&
               value.max > value.min;
    };
    if (const auto frequency =
            id([&](const Value& v) { return v.role == Role::frequency && moves(v); })) {
        return frequency;
    }
    return id(moves);
}

/// The least step that a readout of the value shows.
std::int64_t least_step(const Layout& layout, ValueId value) {
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::readout || item.readout.value != value) continue;
            std::int64_t step = 1;
            for (int i = 0; i < item.readout.drop; ++i) {
                step *= 10;
            }
            return step;
        }
    }
    return 1;
}

std::string start_values(const Emitting& it) {
    std::string lines;
    for (std::size_t v = 0; v < it.layout.values.size(); ++v) {
        const auto id = static_cast<ValueId>(v);
        const std::int32_t start = it.layout.values[v].start;
        if (start == 0) continue;  // which is what memory begins with
        lines += "    screen.set(" + value_name(it, id) + ", " + state_name(it, id, start) + ");\n";
    }
    return lines;
}

}  // namespace

std::string finger_reading() {
    return std::string(on_glass_function) + std::string(finger_function);
}

std::string sketch(const Emitting& it) {
    const KeyCases keys = it.touch() ? key_cases(it) : KeyCases{};
    const std::optional<ValueId> lively = lively_value(it.layout);
    std::string text =
        filled(driver_head,
               {{"title", in_comment(it.layout.title)},
                {"includes",
                 it.own_driver() ? "#include \"own_display.hpp\"\n#include \"wiring.hpp\"\n"
                                 : "#include \"wiring.hpp\"\n"},
                {"bus", it.own_driver() ? std::string(own_bus) : std::string{}},
                {"screen", it.own_driver() ? "OwnBus" : "wiring::Bus"}});
    if (keys.steps || lively) text += step_function;
    text += key_function(keys);
    if (it.touch()) text += finger_reading();
    text += "\nvoid setup() {\n";
    text += it.own_driver() ? "    own_display::begin();\n" : "    wiring::Bus::start();\n";
    if (it.touch()) text += "    wiring::Touch::begin();\n";
    text += start_values(it);
    text += "}\n\nvoid loop() {\n    const uint16_t now = static_cast<uint16_t>(millis());\n";
    if (it.touch()) {
        text +=
            "\n    static uint16_t felt = 0;\n"
            "    if (static_cast<uint16_t>(now - felt) >= 10) {\n        felt = now;\n"
            "        read_finger();\n    }\n";
    }
    if (it.parts.has(Part::touch)) {
        if (!it.touch()) {
            text +=
                "\n    // Here screen.touch() and screen.lift() are told what your touch sheet "
                "reads.\n";
        }
        text += "\n    dialplate::Event event;\n    while (screen.next_event(event)) {\n";
        text += keys.cases.empty() ? "        // event.key is one of layout::key.\n"
                                   : "        act_on(event);\n";
        text += "    }\n";
    }
    if (lively) {
        const Value& value = it.layout.values[static_cast<std::size_t>(*lively)];
        text +=
            "\n    // In place of a receiver: something moves.\n    static uint16_t moved = 0;\n"
            "    if (static_cast<uint16_t>(now - moved) >= 250) {\n        moved = now;\n"
            "        step(" +
            value_name(it, *lively) + ", " +
            std::to_string(std::min<std::int64_t>(least_step(it.layout, *lively), value.max)) +
            ", " + std::to_string(value.min) + ", " + std::to_string(value.max) +
            ", true);\n    }\n";
    }
    return text + "\n    screen.service(now);\n}\n";
}

std::string bare_main(const Emitting& it) {
    return filled(
        R"(// The sketch without Arduino's core: a clock of one millisecond from timer 1, then setup() and loop(). Written
// by dialplate; a change is lost when it emits again.
#ifndef ARDUINO

#include "wiring.hpp"

#include <avr/interrupt.h>
#include <avr/io.h>

#include <stdint.h>

static volatile uint32_t milliseconds;

ISR(TIMER1_COMPA_vect) {
    milliseconds = milliseconds + 1;
}

/// Since the start.
static uint32_t millis() {
    const uint8_t interrupts = SREG;
    cli();
    const uint32_t now = milliseconds;
    SREG = interrupts;
    return now;
}

#include "@sketch@.ino"

int main() {
    OCR1A = F_CPU / 8 / 1000 - 1;
    TCCR1B = _BV(WGM12) | _BV(CS11);  // from 0 to OCR1A, at an eighth of the clock
    TIMSK1 = _BV(OCIE1A);
    sei();
    setup();
    for (;;) {
        loop();
    }
}

#endif
)",
        {{"sketch", it.names.sketch}});
}

}  // namespace dialplate
