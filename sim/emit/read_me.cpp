#include "sim/display/bus_time.hpp"
#include "sim/emit/compiler_flags.hpp"
#include "sim/emit/pieces.hpp"
#include "sim/emit/text.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace dialplate {
namespace {

constexpr std::string_view page_text = R"(# @title@

The display of a receiver as code for its microcontroller, written by dialplate from a layout.

| file | holds | after another emit |
|---|---|---|
| `layout.hpp` | values, choices, keys, pages; the calls that matter | new |
| `image.cpp` | pages, faces, pictures and texts: @image@ bytes of flash | new |
| `wiring.hpp` | @wiring_holds@ | yours, if you changed it |
| `@sketch@.ino` | an example that runs as it stands | yours, if you changed it |
@more_rows@| `src/dialplate/` | the engine@and_driver@, and its licence | new |
| `emitted.txt` | what was written here, so that another emit knows it | new |

In a sketch of your own you need all of it but `@sketch@.ino`@not_main@.

## Build it

@bare@With Arduino's tools: the folder must be named `@sketch@`, as they want it; open it and choose @board@.

@ram@

## Before you switch on

- Most display modules take 3.3 V on their logic lines@limit@. From a microcontroller at 5 V every line into
  the display and its touch converter needs a level shifter or a divider; a series resistor alone only leans on the
  input's protection diode.
- What comes back from a 3.3 V touch converter is read by a 5 V AVR with 0.3 V to spare: keep that wire short.
- The touch converter takes about 2.5 MHz, less than the display: it has lines of its own here.
- The back light draws tens of milliamperes@backlight@: not from a logic pin.
- Unplug the supply before you change a wire.
)";

std::string bare_text(const Emitting& it) {
    if (!it.pins) {
        return "dialplate has no bus driver for the " + in_comment(it.layout.mcu.name) +
               ": the display is driven by the two functions in `own_display.hpp`, "
               "`choose_area` and `write`, which do it slowly through the functions of the "
               "board's Arduino core until you put your own in their place. `layout.hpp`, "
               "`image.cpp` and the engine compile for any processor.\n\n";
    }
    return filled(R"(Without Arduino's core, by avr-g++ and avr-libc:

    avr-g++ -mmcu=@mcu@ -DF_CPU=@hertz@UL @flags@ \
        *.cpp -o @sketch@.elf

The sizes and times that dialplate names are those of these flags. Arduino's tools take none of their own for a
sketch: there the same code is some hundreds of bytes larger, besides the core itself.

)",
                  {{"mcu", gcc_name(it.layout.mcu)},
                   {"hertz", std::to_string(std::llround(it.layout.clock.value))},
                   {"flags", compiler_flags},
                   {"sketch", it.names.sketch}});
}

std::string board_of(const Mcu& mcu) {
    if (mcu.name == "ATmega328P") return "the board Uno, or a Nano";
    if (mcu.name == "ATmega2560") return "the board Mega 2560";
    return "a board with the " + in_comment(mcu.name);
}

}  // namespace

std::string gcc_name(const Mcu& mcu) {
    std::string name = mcu.name;
    std::transform(name.begin(), name.end(), name.begin(), [](unsigned char c) {
        return static_cast<char>(std::tolower(c));
    });
    return name;
}

std::string read_me(const Emitting& it) {
    const Display& display = it.layout.display;
    const auto figure = [](std::optional<double> number, const std::string& unit) {
        return number ? " (this one: " + plain_number(*number) + unit + ")" : std::string{};
    };
    const std::string holds = std::string("the pins") +
                              (it.own_driver() ? "" : ", how the display is mounted, the bus") +
                              (it.touch() ? ", the touch sheet's calibration" : "");
    std::string rows;
    if (it.own_driver()) {
        rows +=
            "| `own_display.hpp` | stands for the display driver that you have | yours, if you "
            "changed it |\n";
    }
    if (it.pins) rows += "| `main.cpp` | the sketch without Arduino's core | new |\n";
    const bool far = it.layout.mcu.flash.value > 65536 && it.layout.mcu.family == "avr";
    return filled(
        page_text,
        {{"title", in_comment(it.layout.title)},
         {"sketch", it.names.sketch},
         {"image", std::to_string(it.built.bytes.size())},
         {"wiring_holds", holds},
         {"more_rows", rows},
         {"not_main", it.pins ? " and `main.cpp`" : ""},
         {"and_driver",
          it.own_driver()
              ? std::string{}
              : std::string(" and its bus driver (") + bus_driver(it.layout.bus.kind).name + ")"},
         {"bare", bare_text(it)},
         {"board", board_of(it.layout.mcu)},
         {"ram",
          "The screen takes " + std::to_string(it.memory_bytes) +
              " bytes of RAM for values and for what the glass shows, and the engine's own state." +
              (far ? "\n\nThe image is read by near pointers, which reach 64 KiB of flash: "
                     "`DIALPLATE_IN_FLASH` (`src/dialplate/flash_bytes.hpp`) has the linker put it "
                     "in "
                     "front of all other constants, however many your sketch has."
                   : "")},
         {"limit", figure(display.logic_absolute_max_v, " V at the very most")},
         {"backlight", figure(display.backlight_ma, " mA")}});
}

}  // namespace dialplate
