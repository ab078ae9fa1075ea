// From bytes on the display bus to processor cycles and milliseconds.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/layout/units.hpp"

namespace dialplate {

/// How a driver feeds the bus.
struct BusDriver {
    BusKind kind;
    const char* name;
    /// Serial: processor cycles a byte beyond the shifting of its eight bits. Parallel: all cycles
    /// of a byte (data, strobe low, strobe high).
    int own_cycles;
    /// Timed by counting instructions; otherwise an average over long runs of many colours.
    bool exact;
    const char* source;
};

/// The drivers of ui/mcu, by kind.
[[nodiscard]] const BusDriver& bus_driver(BusKind kind);

/// A bus as a layout asks for it.
struct BusClocks {
    Hertz processor;  ///< > 0.
    Hertz bus;        ///< Serial clock, or write strobes a second for `parallel8`; > 0.
};

/// The fastest serial clock of an AVR: half the processor clock.
/// Source: standards BUS-12 (AVR data sheet, SPSR.SPI2X).
[[nodiscard]] Hertz fastest_serial_clock(Hertz processor);

/// Processor cycles that a driver needs for each byte of a long run, the bus clock permitting.
/// Serial: the eight bits, in whole cycles, and the driver's own. Parallel: the driver's own, or
/// more if the strobes may not follow so fast.
[[nodiscard]] Cycles cycles_per_byte(BusKind kind, const BusClocks& clocks);

/// Bytes to set up a window: 0x2A + 4, 0x2B + 4, 0x2C (standards BUS-04).
inline constexpr Bytes window_bytes{11};

/// A rectangle of pixels sent with its window.
struct SentRectangle {
    int width = 0;
    int height = 0;
    int bytes_per_pixel = 2;
};
/// Source: the first factor of standards BUS-18.
[[nodiscard]] Bytes rectangle_bytes(const SentRectangle& sent);

/// Bytes a pixel on a bus: 2, or what the part's serial bus demands (standards BUS-09).
[[nodiscard]] int bytes_per_pixel(const Display& display, BusKind kind);

[[nodiscard]] Cycles bus_cycles(Bytes bytes, BusKind kind, const BusClocks& clocks);
[[nodiscard]] Milliseconds time_of(Cycles cycles, Hertz processor);

/// The least time that a controller's write cycle allows for some bytes.
/// @param write_ns  Least write cycle: of one bit on a serial bus, of one byte on a parallel one;
/// ns.
/// Source: standards BUS-17, BUS-11.
[[nodiscard]] Milliseconds controller_floor(Bytes bytes, BusKind kind, double write_ns);

}  // namespace dialplate
