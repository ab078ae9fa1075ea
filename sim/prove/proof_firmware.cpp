#include "sim/prove/proof_firmware.hpp"

#include "sim/emit/emission.hpp"
#include "sim/emit/pieces.hpp"
#include "sim/emit/pins.hpp"
#include "sim/emit/text.hpp"

#include <algorithm>
#include <fstream>

namespace dialplate {
namespace {

/// What orders and marks mean stands in the header.
constexpr std::string_view bench_main = R"(#include "layout.hpp"
#include "wiring.hpp"

#include <avr/io.h>

#include <stdint.h>

__attribute__((always_inline)) inline void mark(uint8_t value) {
    asm volatile("out %0, %1" : : "I"(_SFR_IO_ADDR(GPIOR0)), "r"(value) : "memory");
}
static uint16_t next_word() {
    const uint8_t low = GPIOR1;
    return static_cast<uint16_t>(low | (GPIOR1 << 8));
}

static uint8_t memory[layout::memory_bytes];
static layout::Screen<wiring::Bus> screen(wiring::Bus{}, layout::image(), memory);
static uint16_t now;

static void set() {
    const uint8_t value = GPIOR1;
    const uint16_t low = next_word();
    const uint16_t high = next_word();
    screen.set(value, static_cast<int32_t>(static_cast<uint32_t>(high) << 16 | low));
}

// A function of its own, so that all the stack of the engine is below the call.
__attribute__((noinline)) static bool service() {
    return screen.service(now);
}

static void serve() {
    uint16_t left = next_word();
    mark(@begun@);
    while (service()) {
        mark(@served@);
        if (--left == 0) {
            wiring::Bus::finish();
            return;
        }
    }
    mark(@idle@);
    wiring::Bus::finish();
}
@touch@
int main() {
    wiring::Bus::start();
@begin@    for (;;) {
        mark(@ready@);
        switch (GPIOR1) {
            case @set@:
                set();
                break;
            case @page@:
                screen.show_page(GPIOR1);
                break;
            case @palette@:
                screen.use_palette(GPIOR1);
                break;
            case @time@:
                now = next_word();
                break;
            case @serve@:
                serve();
                break;
@cases@            default:
                break;
        }
    }
}
)";

constexpr std::string_view touch_functions = R"(
static void tell_word(uint16_t word) {
    GPIOR2 = static_cast<uint8_t>(word);
    GPIOR2 = static_cast<uint8_t>(word >> 8);
}

static void touch() {
    const uint16_t x = next_word();
    const uint16_t y = next_word();
    screen.touch(dialplate::Point{x, y});
}

static void listen() {
    dialplate::Event event;
    while (screen.next_event(event)) {
        GPIOR2 = static_cast<uint8_t>(event.what);
        GPIOR2 = event.held;
        tell_word(event.key);
    }
}

static void feel() {
    dialplate::RawTouch raw;
    if (!wiring::Touch::read(raw)) {
        GPIOR2 = 0;
        screen.lift();
        return;
    }
    const dialplate::GlassPoint at = dialplate::map_touch(wiring::calibration, raw);
    GPIOR2 = 1;
    tell_word(static_cast<uint16_t>(at.x));
    tell_word(static_cast<uint16_t>(at.y));
    screen.touch(dialplate::Point{static_cast<uint16_t>(at.x), static_cast<uint16_t>(at.y)});
}
)";

constexpr std::string_view touch_cases = R"(            case @touch@:
                touch();
                break;
            case @lift@:
                screen.lift();
                break;
            case @listen@:
                listen();
                break;
            case @feel@:
                feel();
                break;
)";

std::string number(std::uint8_t byte) {
    return std::to_string(int{byte});
}

std::string main_text(bool touch) {
    const std::string cases = filled(touch_cases,
                                     {{"touch", number(order::touch)},
                                      {"lift", number(order::lift)},
                                      {"listen", number(order::listen)},
                                      {"feel", number(order::feel)}});
    return filled(bench_main,
                  {{"begun", number(proof_mark::begun)},
                   {"served", number(proof_mark::served)},
                   {"idle", number(proof_mark::idle)},
                   {"ready", number(proof_mark::ready)},
                   {"set", number(order::set)},
                   {"page", number(order::page)},
                   {"palette", number(order::palette)},
                   {"time", number(order::time)},
                   {"serve", number(order::serve)},
                   {"touch", touch ? std::string(touch_functions) : std::string{}},
                   {"begin", touch ? "    wiring::Touch::begin();\n" : ""},
                   {"cases", touch ? cases : std::string{}}});
}

PinPlace place_of(const AvrPin& pin) {
    return {pin.port, pin.bit};
}

bool write_file(const std::filesystem::path& path, const std::string& text) {
    std::error_code ignored;
    std::filesystem::create_directories(path.parent_path(), ignored);
    std::ofstream file(path, std::ios::binary);
    file << text;
    return file.good();
}

}  // namespace

bool can_simulate(const Mcu& mcu) {
    return mcu.name == "ATmega328P" || mcu.name == "ATmega2560";
}

BoardOptions board_for(const Layout& layout) {
    const Pins pins = *usual_pins(layout.mcu, layout.bus.kind);
    BoardOptions options;
    options.mcu = gcc_name(layout.mcu);
    options.clock = layout.clock;
    options.display.bus = layout.bus.kind;
    options.display.data_or_command = place_of(pins.display.data_or_command);
    options.display.select = place_of(pins.display.select);
    options.display.write = place_of(pins.display.write);
    const DataLines& lines = pins.display.lines;
    for (int bit = 0; bit < 8; ++bit) {
        const bool low = (lines.low_mask >> bit & 1) != 0;
        options.display.data[static_cast<std::size_t>(bit)] = {low ? lines.low : lines.high, bit};
    }
    return options;
}

std::optional<TouchWiring> sheet_of(const Layout& layout, const BuiltImage& built) {
    const std::optional<Pins> pins = usual_pins(layout.mcu, layout.bus.kind);
    if (!pins || !parts_used(layout, built).has(Part::touch)) return std::nullopt;
    return TouchWiring{.clock = place_of(pins->touch.clock),
                       .in = place_of(pins->touch.in),
                       .out = place_of(pins->touch.out),
                       .select = place_of(pins->touch.select),
                       .pen = place_of(pins->touch.pen)};
}

bool write_code(const std::vector<EmittedFile>& code, const std::filesystem::path& directory) {
    return std::all_of(code.begin(), code.end(), [&](const EmittedFile& file) {
        return write_file(directory / file.name, file.text);
    });
}

std::string build_for(const Toolchain& toolchain,
                      const Layout& layout,
                      const std::vector<std::filesystem::path>& sources,
                      const std::filesystem::path& elf) {
    FirmwareSources what;
    what.sources = sources;
    what.include_directories = {elf.parent_path()};
    what.mcu = gcc_name(layout.mcu);
    what.clock = layout.clock;
    what.output = elf;
    return build_firmware(toolchain, what);
}

std::string build_proof_firmware(const Toolchain& toolchain,
                                 const Layout& layout,
                                 const BuiltImage& built,
                                 const std::filesystem::path& elf) {
    const std::filesystem::path main = elf.parent_path() / "proof_main.cpp";
    if (!write_file(main, main_text(sheet_of(layout, built).has_value()))) {
        return "cannot write " + main.string();
    }
    return build_for(toolchain, layout, {main, elf.parent_path() / "image.cpp"}, elf);
}

}  // namespace dialplate
