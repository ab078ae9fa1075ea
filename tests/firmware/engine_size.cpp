// The smallest sketch around the engine, for weighing it: compiled once for each choice of parts and
// each driver by measure_sizes. Never run.
//
//     PARTS   bit n: the n-th part of ui/parts.hpp, in its order; -1: no engine at all
//     PIXEL   bytes of a pixel on the wire, 2 or 3
//     TOUCH   1: the finger is read as an emitted example reads it
//     DRIVER  0 none: two empty functions; 1 SPI polled, 2 SPI timed, 3 USART as SPI, 4 parallel
#include "tests/firmware/chosen_parts.hpp"
#include "ui/mcu/flash_bytes.hpp"
#include "ui/screen.hpp"

#include <stdint.h>

#if defined(__AVR__) && __AVR_ARCH__ != 103
#include "ui/mcu/display_bus.hpp"
#include "ui/mcu/parallel8.hpp"
#include "ui/mcu/spi_polled.hpp"
#include "ui/mcu/spi_timed.hpp"
#include "ui/mcu/touch_serial.hpp"
#include "ui/mcu/usart_spi.hpp"
#include "ui/touch_calibration.hpp"

#include <avr/io.h>
#include <avr/pgmspace.h>
#else
// Somewhere outside that the compiler knows nothing about, under the AVR's names; the linker is told where.
extern volatile uint8_t GPIOR0, GPIOR1, GPIOR2, TCNT1;
#endif

using namespace dialplate;

#if DRIVER == 0
struct Bus {
    static void start() {}
    __attribute__((noinline)) static void window(uint16_t x, uint16_t y, uint16_t w, uint16_t h) {
        asm volatile("" : : "r"(x), "r"(y), "r"(w), "r"(h));
    }
    __attribute__((noinline)) static void push(uint16_t colour, uint16_t count) {
        asm volatile("" : : "r"(colour), "r"(count));
    }
};
#else
struct WeighedPanel {
    using Controller = Ili9341;
    static constexpr uint8_t address_mode = 0x28;
    static constexpr uint16_t column_offset = 0, page_offset = 0;
    static constexpr uint8_t bytes_per_pixel = PIXEL;
    static constexpr bool inverted = false;
};

#if DRIVER == 1
using Bus = DisplayBus<SpiPolled<Pin<port::b, 1>, Pin<port::b, 2>, Pin<port::b, 0>>, WeighedPanel>;
#elif DRIVER == 2
using Bus = DisplayBus<SpiTimed<Pin<port::b, 1>, Pin<port::b, 2>, Pin<port::b, 0>>, WeighedPanel>;
#elif DRIVER == 3
using Bus = DisplayBus<UsartSpi<Pin<port::b, 1>, Pin<port::b, 2>, Pin<port::b, 0>>, WeighedPanel>;
#elif DRIVER == 4
using Bus = DisplayBus<Parallel8<SplitPorts<port::b, port::d, 0x03>,
                                 Pin<port::c, 0>,
                                 Pin<port::c, 1>,
                                 Pin<port::c, 2>,
                                 Pin<port::c, 3>,
                                 Pin<port::c, 4>>,
                       WeighedPanel>;
#endif
#endif

extern const uint8_t image[];
const uint8_t image[] DIALPLATE_IN_FLASH = {0xD1, 1};

using Parts = ChosenParts<PARTS, FlashBytes<image>>;

#if (PARTS) >= 0
uint8_t memory[64];
Bus bus;
Screen<Bus, Parts> screen(bus, Rom<FlashBytes<image>>(FlashBytes<image>{}), memory);
#endif

#if TOUCH
using Touch = TouchSerial<Pin<port::d, 4>,
                          Pin<port::d, 5>,
                          Pin<port::d, 6>,
                          Pin<port::d, 7>,
                          Pin<port::d, 3>>;
constexpr TouchCalibration calibration = {{0, 5668, -1133514}, {4251, 0, -850135}};

static uint16_t on_glass(int16_t place, uint16_t size) {
    return place < 0                              ? 0
           : static_cast<uint16_t>(place) >= size ? static_cast<uint16_t>(size - 1)
                                                  : static_cast<uint16_t>(place);
}

static void read_finger() {
    static uint8_t misses = 3;
    RawTouch raw;
    if (Touch::read(raw)) {
        misses = 0;
        const GlassPoint at = map_touch(calibration, raw);
        screen.touch(Point{on_glass(at.x, 320), on_glass(at.y, 240)});
    } else if (misses < 3 && ++misses == 3) {
        screen.lift();
    }
}
#endif

#if (PARTS) >= 0
// A function of its own, so that all the stack of the engine is below the call.
__attribute__((noinline)) static void service() {
    screen.service(TCNT1);
}
#endif

int main() {
#if (PARTS) >= 0
    Bus::start();
#if TOUCH
    Touch::begin();
#endif
    for (;;) {
        screen.set(GPIOR0, GPIOR1);
        if (Parts::touch) {
#if TOUCH
            read_finger();
#else
            const uint8_t finger = GPIOR2;
            if (finger != 0) {
                screen.touch(Point{finger, GPIOR1});
            } else {
                screen.lift();
            }
#endif
            Event event;
            if (screen.next_event(event)) {
                GPIOR0 = byte(event.key);
            }
        }
        if (GPIOR0 == 1) {
            screen.use_palette(GPIOR1);
        }
        if (GPIOR0 == 2) {
            screen.show_page(GPIOR1);
        }
        service();
    }
#else
    for (;;) {
        GPIOR0 = GPIOR1;
    }
#endif
}
