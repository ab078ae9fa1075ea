#include "sim/prove/weigh_display.hpp"

#include "sim/emit/emission.hpp"
#include "sim/emit/text.hpp"
#include "sim/prototype/parts_used.hpp"
#include "sim/prove/proof_firmware.hpp"

#include <fstream>

namespace dialplate {
namespace {

// What the sketch hands over comes from registers, so that the compiler can fold none of it away.
constexpr std::string_view with_display = R"(#include "layout.hpp"
#include "wiring.hpp"

#include <avr/io.h>

#include <stdint.h>

static uint8_t memory[layout::memory_bytes];
static layout::Screen<wiring::Bus> screen(wiring::Bus{}, layout::image(), memory);
@finger@
// A function of its own, as in the programs that the ledger's sizes are from.
__attribute__((noinline)) static void service() {
    screen.service(TCNT1);
}

int main() {
    wiring::Bus::start();
@touch_start@    for (;;) {
        screen.set(GPIOR0, GPIOR1);
@touch@        if (GPIOR0 == 1) {
            screen.use_palette(GPIOR1);
        }
        if (GPIOR0 == 2) {
            screen.show_page(GPIOR1);
        }
        service();
    }
}
)";

constexpr const char* touch_start = "    wiring::Touch::begin();\n";

constexpr const char* touch_calls = R"(        read_finger();
        dialplate::Event event;
        if (screen.next_event(event)) {
            GPIOR0 = static_cast<uint8_t>(event.key);
        }
)";

constexpr const char* without_display = R"(#include <avr/io.h>

#include <stdint.h>

int main() {
    for (;;) {
        GPIOR0 = GPIOR1;
    }
}
)";

constexpr const char* with_elf = "with.elf";
constexpr const char* without_elf = "without.elf";

}  // namespace

std::string build_weights(const Toolchain& toolchain,
                          const Layout& layout,
                          const BuiltImage& built,
                          const std::filesystem::path& directory) {
    const bool touch = parts_used(layout, built).has(Part::touch);
    const std::filesystem::path with = directory / "with_display.cpp",
                                without = directory / "without_display.cpp";
    std::ofstream(with) << filled(with_display,
                                  {{"finger", touch ? finger_reading() : ""},
                                   {"touch_start", touch ? touch_start : ""},
                                   {"touch", touch ? touch_calls : ""}});
    std::ofstream(without) << without_display;
    const std::string complaint =
        build_for(toolchain, layout, {with, directory / "image.cpp"}, directory / with_elf);
    if (!complaint.empty()) return complaint;
    return build_for(toolchain, layout, {without}, directory / without_elf);
}

FirmwareSize weight(const Layout& layout, const std::filesystem::path& directory) {
    Board with(board_for(layout)), without(board_for(layout));
    if (with.load(directory / with_elf) || without.load(directory / without_elf)) return {};
    return {.flash = with.size().flash - without.size().flash,
            .data = with.size().data - without.size().data};
}

}  // namespace dialplate
