// What differs between display controllers when they are woken.
//
// The start-up itself (display_bus.hpp) uses commands of the Display Command Set only: soft reset, sleep
// out, pixel format, address mode, inversion, display on. Gamma, power and frame-rate registers are
// makers' own and keep their reset defaults; the picture is then complete, its contrast and tint are
// what the controller's maker chose, not what a module's seller tuned.
// UNVERIFIED: that every module shows an agreeable picture with these defaults; a look at each settles it.
//
// Figures, with standing:
//   Sleep out: 5 ms before the next command, 120 ms before going back to sleep; after a reset likewise,
//   120 ms before sleep out if the controller was awake (standards BUS-05: ST7789V data sheet v1.3,
//   second-hand; ILI9341 the same, from memory). A microcontroller can restart while the display is
//   awake, so the wait after a reset is 120 ms everywhere.
//   ST7735R: 120 ms also after sleep out (data sheet, from memory).
//   ILI9488, ILI9486, ST7796S: as ILI9341 (data sheets, from memory).
//   ILI9488 over a serial bus takes 18 bits a pixel only (standards BUS-09, second-hand): three bytes.
//   ILI9486 likewise (from memory). Many serial modules sold under that name put shift registers in front of
//   its parallel bus and want 16 bits a command (from memory): those are not served.
//
// A type is named as the data sheet names the part, all but the first letter small.
#pragma once

#include <stdint.h>

namespace dialplate {

struct Ili9341 {
    static constexpr uint8_t reset_wait_ms = 120;
    static constexpr uint8_t wake_wait_ms = 5;
};

struct Ili9486 {
    static constexpr uint8_t reset_wait_ms = 120;
    static constexpr uint8_t wake_wait_ms = 5;
};

struct Ili9488 {
    static constexpr uint8_t reset_wait_ms = 120;
    static constexpr uint8_t wake_wait_ms = 5;
};

struct St7735r {
    static constexpr uint8_t reset_wait_ms = 120;
    static constexpr uint8_t wake_wait_ms = 120;
};

/// The same start-up; another memory, which is a matter of the mounting.
struct St7735s : St7735r {};

struct St7789v {
    static constexpr uint8_t reset_wait_ms = 120;
    static constexpr uint8_t wake_wait_ms = 5;
};

/// Later sheet of the same family: the same start-up, a faster bus.
struct St7789vw : St7789v {};

struct St7796s {
    static constexpr uint8_t reset_wait_ms = 120;
    static constexpr uint8_t wake_wait_ms = 5;
};

}  // namespace dialplate
