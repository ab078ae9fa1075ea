#include "sim/display/bus_time.hpp"
#include "sim/emit/engine_files.hpp"
#include "sim/emit/pieces.hpp"
#include "sim/emit/text.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace dialplate {
namespace {

constexpr std::string_view head =
    R"(// The wires of "@title@": the one file to change for another wiring.
// Written by dialplate, which keeps your changes when it emits again; delete this file to have it written
// anew.
//
// Before you switch on:
//   - Most modules take 3.3 V on their logic lines@limit@.
//     From a microcontroller at 5 V every line into the display and into the touch converter needs a level
//     shifter or a divider (1 kOhm in the line, 2 kOhm to ground); a series resistor alone only leans on
//     the input's protection diode.
//   - The touch converter is a chip of its own: it wants a slower clock than the display, about 2.5 MHz at
//     most, and has its own select line.
//   - The back light draws tens of milliamperes@backlight@:
//     feed it from the supply, through a transistor if it is to be switched, never from a logic pin.
#pragma once

)";

constexpr std::string_view clock_check = R"(#ifndef F_CPU
#define F_CPU @hertz@UL
#endif
static_assert(F_CPU == @hertz@UL,
              "the layout says @mhz@ MHz: change mcu.clock_mhz there, and emit again");

)";

constexpr std::string_view panel = R"(
/// How the module is mounted: turned by @turn@ degrees.
struct Panel {
    using Controller = @controller@;
    /// Bits 0x20, 0x40 and 0x80 turn and mirror; 0x08 is for panels with blue first: turn it over if red
    /// and blue are exchanged.
    static constexpr uint8_t address_mode = @mode@;
    /// Where the glass begins in the controller's memory: change it if a stripe of noise shows at an edge.
    static constexpr uint16_t column_offset = @column@, page_offset = @page@;
    static constexpr uint8_t bytes_per_pixel = @bytes@;
    /// Turn it over if the picture looks like a negative.
    static constexpr bool inverted = @inverted@;
};
)";

constexpr std::string_view touch = R"(
/// The touch converter: clock, data into it, data out of it, select, pen.
using Touch = dialplate::TouchSerial<@clock@,  // @clock_name@
                                     @in@,  // @in_name@
                                     @out@,  // @out_name@
                                     @select@,  // @select_name@
                                     @pen@>;  // @pen_name@

/// From readings of the sheet to pixels, in 1/65536: x of raw x, of raw y, offset; then y. A first guess, for
/// a sheet that reads 200 to 3900 and is not mirrored: measure yours with calibrate_touch() of
/// src/dialplate/touch_calibration.hpp.
constexpr dialplate::TouchCalibration calibration = {{@x_of_x@, @x_of_y@, @x_offset@},
                                                     {@y_of_x@, @y_of_y@, @y_offset@}};
)";

std::string type_of(const AvrPin& pin) {
    return std::string("Pin<port::") +
           static_cast<char>(std::tolower(static_cast<unsigned char>(pin.port))) + ", " +
           std::to_string(pin.bit) + '>';
}

/// "PB1, Arduino 9"
std::string name_of(const AvrPin& pin) {
    return std::string("P") + pin.port + std::to_string(pin.bit) + ", Arduino " + pin.arduino;
}

std::string pin_line(const char* name, const AvrPin& pin) {
    return std::string("using ") + name + " = " + type_of(pin) + ";  // " + name_of(pin) + '\n';
}

/// "Ili9341": a type's name as ui/mcu/controllers.hpp makes it.
std::string controller_type(const std::string& name) {
    std::string type;
    for (const char c : name) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalnum(byte) == 0) continue;
        type += static_cast<char>(type.empty() ? std::toupper(byte) : std::tolower(byte));
    }
    return type;
}

std::string panel_text(const Emitting& it) {
    const Display& display = it.layout.display;
    const TurnMode& mode = display.turns[static_cast<std::size_t>(it.layout.turn / 90)];
    const std::string type = controller_type(display.controller);
    const bool known = knows_controller(type);
    std::string text;
    if (!known && !it.own_driver()) {
        text = "\n/// " + in_comment(display.controller) +
               ": the waits that serve every controller, in milliseconds.\nstruct Controller {\n"
               "    static constexpr uint8_t reset_wait_ms = 120;\n"
               "    static constexpr uint8_t wake_wait_ms = 120;\n};\n";
    }
    std::string body(panel);
    if (it.own_driver()) {
        // The sketch's driver wakes the display itself.
        constexpr std::string_view line = "    using Controller = @controller@;\n";
        body.erase(body.find(line), line.size());
    }
    return text + filled(body,
                         {{"turn", std::to_string(it.layout.turn)},
                          {"controller", known ? "dialplate::" + type : "wiring::Controller"},
                          {"mode", hexadecimal(mode.address_mode)},
                          {"column", std::to_string(mode.column_offset)},
                          {"page", std::to_string(mode.page_offset)},
                          {"bytes", std::to_string(bytes_per_pixel(display, it.layout.bus.kind))},
                          {"inverted", display.inverted ? "true" : "false"}});
}

std::string data_lines(const DataLines& lines) {
    const auto port = [](char letter) {
        return std::string("port::") +
               static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
    };
    const std::string type = lines.low == lines.high
                                 ? "dialplate::WholePort<" + port(lines.low) + '>'
                                 : "dialplate::SplitPorts<" + port(lines.low) + ", " +
                                       port(lines.high) + ", " + hexadecimal(lines.low_mask) + '>';
    return "using DataLines = " + type + ";  // data 0 to 7: Arduino " + lines.arduino + '\n';
}

std::string pins_text(const Emitting& it) {
    const DisplayPins& pins = it.pins->display;
    std::string text =
        "// NoPin in place of a pin: chip select wired to ground, reset wired to the "
        "microcontroller's own.\n";
    if (!it.pins->known) {
        text += "// These are the pins of an ATmega328P: look up where the " +
                in_comment(it.layout.mcu.name) + " has them.\n";
    }
    text += pin_line("DataOrCommand", pins.data_or_command);
    text += pin_line("Select", pins.select);
    text += pin_line("Reset", pins.reset);
    if (it.layout.bus.kind == BusKind::parallel8) {
        text += pin_line("Write", pins.write);
        text += pin_line("Read", pins.read);
        text += data_lines(pins.lines);
    } else if (it.own_driver()) {
        text += pin_line("Clock", pins.clock);
        text += pin_line("Data", pins.data);
    } else {
        text += "// The clock is " + name_of(pins.clock) + ", the data " + name_of(pins.data) +
                ": where the hardware has them.\n";
    }
    return text;
}

std::string link_text(const Layout& layout) {
    const std::string lines = "<DataOrCommand, Select, Reset";
    std::string link;
    switch (layout.bus.kind) {
        case BusKind::spi:
            link = "dialplate::SpiPolled" + lines + ", " + std::to_string(serial_divider(layout)) +
                   ">;  // the bus runs at the clock divided by the last number";
            break;
        case BusKind::spi_timed:
            link = "dialplate::SpiTimed" + lines + ">;";
            break;
        case BusKind::usart_spi:
            link = "dialplate::UsartSpi" + lines + ">;";
            break;
        case BusKind::parallel8:
            link = "dialplate::Parallel8<DataLines, Write, Read, DataOrCommand, Select, Reset>;";
            break;
    }
    return "\nusing Link = " + link + "\nusing Bus = dialplate::DisplayBus<Link, Panel>;\n";
}

std::string touch_text(const Emitting& it) {
    const TouchPins& pins = it.pins->touch;
    constexpr int first = 200, last = 3900;  // counts; usual for a 12-bit converter (from memory)
    const bool exchanged = it.layout.turn % 180 != 0;
    const auto slope = [](int pixels) { return std::lround(pixels * 65536.0 / (last - first)); };
    const long x = slope(it.layout.glass_width()), y = slope(it.layout.glass_height());
    return filled(touch,
                  {{"clock", type_of(pins.clock)},
                   {"in", type_of(pins.in)},
                   {"out", type_of(pins.out)},
                   {"select", type_of(pins.select)},
                   {"pen", type_of(pins.pen)},
                   {"clock_name", name_of(pins.clock)},
                   {"in_name", name_of(pins.in)},
                   {"out_name", name_of(pins.out)},
                   {"select_name", name_of(pins.select)},
                   {"pen_name", name_of(pins.pen)},
                   {"x_of_x", std::to_string(exchanged ? 0 : x)},
                   {"x_of_y", std::to_string(exchanged ? x : 0)},
                   {"x_offset", std::to_string(-first * x)},
                   {"y_of_x", std::to_string(exchanged ? y : 0)},
                   {"y_of_y", std::to_string(exchanged ? 0 : y)},
                   {"y_offset", std::to_string(-first * y)}});
}

/// Other processors: pins by number, through the functions of the board's Arduino core.
/// UNVERIFIED: run under qemu with stand-ins for those functions (tests/emit); a board settles it.
std::string board_pins(const Emitting& it) {
    return R"(#include <Arduino.h>

#include <stdint.h>

namespace wiring {

template <uint8_t number>
struct BoardPin {
    static void output() { pinMode(number, OUTPUT); }
    static void high() { digitalWrite(number, HIGH); }
    static void low() { digitalWrite(number, LOW); }
};

using DataOrCommand = BoardPin<9>;
using Select = BoardPin<10>;
using Reset = BoardPin<8>;
using Clock = BoardPin<13>;
using Data = BoardPin<11>;
)" + panel_text(it) +
           "\n}  // namespace wiring\n";
}

}  // namespace

int serial_divider(const Layout& layout) {
    const double ratio = layout.clock / layout.bus.clock;
    int divider = 2;
    while (divider < 128 && divider < ratio - 1e-6) {
        divider *= 2;
    }
    return divider;
}

std::vector<std::string> engine_roots(const Emitting& it) {
    std::vector<std::string> roots = {"ui/bus.hpp",
                                      "ui/mcu/context_core.hpp",
                                      "ui/mcu/flash_bytes.hpp",
                                      "ui/mcu/runs_core.hpp",
                                      "ui/screen.hpp"};
    if (!it.pins) return roots;
    if (it.touch()) {
        roots.push_back("ui/mcu/touch_serial.hpp");
        roots.push_back("ui/touch_calibration.hpp");
    }
    if (it.own_driver()) {
        roots.push_back("ui/mcu/pin.hpp");
        roots.push_back("ui/mcu/wait.hpp");
        return roots;
    }
    roots.push_back("ui/mcu/display_bus.hpp");
    switch (it.layout.bus.kind) {
        case BusKind::spi:
            roots.push_back("ui/mcu/spi_polled.hpp");
            break;
        case BusKind::spi_timed:
            roots.push_back("ui/mcu/spi_timed.hpp");
            break;
        case BusKind::usart_spi:
            roots.push_back("ui/mcu/usart_spi.hpp");
            break;
        case BusKind::parallel8:
            roots.push_back("ui/mcu/parallel8.hpp");
            break;
    }
    return roots;
}

std::string wiring_header(const Emitting& it) {
    const Display& display = it.layout.display;
    const auto figure = [](std::optional<double> number, const std::string& unit) {
        return number ? " (this one: " + plain_number(*number) + unit + ")" : std::string{};
    };
    std::string text =
        filled(head,
               {{"title", in_comment(it.layout.title)},
                {"limit", figure(display.logic_absolute_max_v, " V at the very most")},
                {"backlight", figure(display.backlight_ma, " mA")}});
    if (!it.pins) return text + board_pins(it);
    text += filled(clock_check,
                   {{"hertz", std::to_string(std::llround(it.layout.clock.value))},
                    {"mhz", plain_number(it.layout.clock.value * 1e-6)}});
    std::vector<std::string> includes;
    for (const std::string& root : engine_roots(it)) {
        if (root.starts_with("ui/mcu/") && root != "ui/mcu/flash_bytes.hpp" &&
            root != "ui/mcu/context_core.hpp" && root != "ui/mcu/runs_core.hpp") {
            includes.push_back(root.substr(root.rfind('/') + 1));
        } else if (root == "ui/touch_calibration.hpp") {
            includes.push_back("touch_calibration.hpp");
        }
    }
    std::sort(includes.begin(), includes.end());
    for (const std::string& name : includes) {
        text += "#include \"" + std::string(engine_folder) + name + "\"\n";
    }
    text +=
        "\n#include <stdint.h>\n\nnamespace wiring {\n\nusing dialplate::NoPin;\n"
        "using dialplate::Pin;\nnamespace port = dialplate::port;\n\n";
    text += pins_text(it) + panel_text(it);
    if (!it.own_driver()) text += link_text(it.layout);
    if (it.touch()) text += touch_text(it);
    return text + "\n}  // namespace wiring\n";
}

}  // namespace dialplate
