// The display controller, fed with bus traffic only.
//
// Modelled: the MIPI DCS commands that a driver for a small TFT sends (standards BUS-01..03):
// window, memory write and continue, address mode, pixel format (16 and 18 bit), sleep, display
// on/off, inversion, reset, nop; scroll, partial area, tearing line and idle mode (parameters
// taken, picture unaffected). Pixels past the end of a window start again at its beginning; those
// outside the memory are ignored (ST7735 data sheet V1.7, 10.1.19).
//
// Not modelled: reading back, gamma and power registers of the makers (their codes count as
// unknown commands, their parameters are swallowed), timing, the noise in the memory at power-on
// (here: zero).
//
// Assumed about the panel behind the controller: the part's `turns` table is right. For each
// mounting it says how the glass pixel (x, y), as the reader then sees it, is addressed; so the
// same address mode and offsets show the picture upright and in its true colours, and any other
// address mode shows it mirrored, turned, shifted, or with red and blue exchanged, as on the
// bench. Likewise `inverted`: a panel that needs enter_invert_mode shows negative colours without
// it.
// UNVERIFIED: that the BGR bit acts on the whole picture at once, not only on pixels written
// later; a module on the bench would settle it. A driver that sets the bit once at start-up sees
// no difference.
// UNVERIFIED: some data sheets let a soft reset leave address mode and pixel format alone; here it
// returns everything except the memory to its power-on state (address mode 0, 18 bit, asleep,
// off).
//
// Compared with: a slow twin in tests/display that keeps one pixel at a time, over random traffic.
#pragma once

#include "sim/display/address_map.hpp"
#include "sim/layout/layout.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace dialplate {

/// What a driver did wrong, and how much it did.
struct BusCounters {
    std::int64_t bytes = 0;             ///< Commands and parameters and pixels.
    std::int64_t windows = 0;           ///< Memory writes begun (0x2C).
    std::int64_t pixels = 0;            ///< Whole pixels received, also those that landed nowhere.
    std::int64_t pixels_twice = 0;      ///< Written again within one update.
    std::int64_t unknown_commands = 0;  ///< Also a pixel format that the model or the bus lacks.
    std::int64_t bad_windows = 0;    ///< Write into a window with start after end, reaching outside
                                     ///< the memory or half set; or a pixel past its end.
    std::int64_t short_windows = 0;  ///< Left for another write before they were full.
    std::int64_t stray_parameters = 0;  ///< Bytes that no command asked for; half-sent pixels.

    friend bool operator==(const BusCounters&, const BusCounters&) = default;
    /// What happened between two readings.
    friend BusCounters operator-(const BusCounters& later, const BusCounters& earlier);
};

/// A rectangle in the order it was sent, for showing what an update touched. Glass coordinates.
struct SentWindow {
    Box box;
    std::int64_t pixels = 0;
};

class Controller {
public:
    /// Asleep and off, as after power-on.
    /// @param bus  A part that takes 18-bit pixels only on its serial bus refuses 16 bit there.
    explicit Controller(const Display& display, BusKind bus = BusKind::spi);

    void command(std::uint8_t code);  ///< One byte with D/C low.
    void data(std::uint8_t byte);     ///< One byte with D/C high.

    /// The same as the data bytes of `count` pixels of one colour in the present pixel format, but
    /// fast.
    /// @param colour  RGB565; in 18-bit format, sent as eighteen_bit() codes it
    /// (pixel_format.hpp).
    void pixels(std::uint16_t colour, std::int64_t count);

    /// Begins a new update: the next write of any pixel is its first, and the list of windows is
    /// empty.
    void begin_update();
    [[nodiscard]] const BusCounters& counters() const { return counters_; }

    /// The windows written to since begin_update() or the last call, in order; a write into a bad
    /// window has the part of it that lies in the memory.
    /// @param turn  0, 90, 180, 270: how the module is mounted; see glass().
    [[nodiscard]] std::vector<SentWindow> take_windows(int turn);

    /// What the reader sees: glass pixels as RGB565, row-major, width x height of the turned glass.
    /// Black while the display is off or asleep.
    /// @param turn  0, 90, 180, 270: how the module is mounted.
    [[nodiscard]] std::vector<std::uint16_t> glass(int turn) const;

    [[nodiscard]] bool on() const { return on_ && awake_; }
    [[nodiscard]] std::uint8_t address_mode() const { return address_mode_; }
    /// Of the present pixel format: 2 or 3.
    [[nodiscard]] int bytes_per_pixel() const { return bytes_per_pixel_; }

private:
    enum class Expecting { nothing, parameters, pixels, anything };

    /// A memory write: the window as it stood at 0x2C, and how far it is filled.
    struct Write {
        int left = 0, right = 0, top = 0, bottom = 0;  ///< Columns and pages, inclusive.
        int column = 0, page = 0;                      ///< Next pixel.
        std::int64_t area = 0;                         ///< 0: none begun, or start after end.
        std::int64_t left_over = 0;                    ///< Pixels until the window is full.
        bool past_end = false;                         ///< Already counted as bad.
    };

    void reset();
    void expect(int parameters);
    void parameters_complete();
    void begin_write();
    void run(std::uint16_t colour, std::int64_t count);
    void fill(std::uint16_t colour, int count);
    [[nodiscard]] const TurnMode& mounting(int turn) const;

    Display display_;
    BusKind bus_;
    MemorySize memory_size_;
    BusCounters counters_;

    std::uint8_t address_mode_ = 0;
    AddressMap map_;  ///< Of address_mode_.
    int bytes_per_pixel_ = 3;
    bool on_ = false, awake_ = false, inverted_ = false;
    std::array<int, 2> columns_{}, pages_{};  ///< Start and end of the window, inclusive.
    bool window_half_set_ = false;

    Expecting expecting_ = Expecting::nothing;
    std::uint8_t code_ = 0;
    std::array<std::uint8_t, 6> taken_{};  ///< Parameters, or bytes of a pixel, so far.
    int taken_count_ = 0;
    int wanted_ = 0;
    Write write_;

    std::vector<std::uint16_t> memory_;      ///< RGB565 as sent; row-major, unturned.
    std::vector<std::uint32_t> written_in_;  ///< Number of the last update that wrote each pixel.
    std::uint32_t update_ = 1;
    std::vector<SentWindow> windows_;  ///< Boxes in memory coordinates.
};

}  // namespace dialplate
