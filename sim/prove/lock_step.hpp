// The same engine twice, side by side: on the PC, and as firmware on the board. Everything that happens is
// told to both; after each service the bytes on the two buses are compared, and when nothing is left to
// draw, what the two glasses show and what the keys reported.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"
#include "sim/prove/board.hpp"
#include "sim/prove/touch_chip.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// How long the finger is down during a tap, as in Prototype::tap().
inline constexpr int tap_ms = 80;

/// The first byte in which the buses differ.
struct FirstDifference {
    std::int64_t byte = 0;                 ///< Number of the byte since the start, from 0.
    std::optional<std::uint8_t> expected;  ///< By the PC; absent: it sent nothing more.
    std::optional<std::uint8_t> actual;    ///< By the firmware; absent: nothing came.
    bool expected_command = false, actual_command = false;
    std::string place;   ///< "pixel 12 in columns 0 to 319, rows 0 to 8".
    std::string during;  ///< What was being done.
};

/// What an update took on the board.
struct Served {
    std::int64_t bytes = 0;
    CycleCount cycles = 0;  ///< From before the first service to behind the last.
};

struct Comparison {
    std::int64_t frames = 0;  ///< Times that the glasses were compared.
    std::int64_t services = 0;
    std::int64_t bytes = 0;             ///< On the board's bus.
    std::int64_t pixels_different = 0;  ///< Summed over the frames.
    std::int64_t bytes_different = 0;
    std::optional<FirstDifference> first;
    std::string trouble;  ///< What else made the run end: a crash, a wrong event. Empty: nothing.
    std::int64_t unknown_commands = 0, bad_windows = 0;  ///< As the display counts them.
    std::int64_t stray_bytes = 0, short_windows = 0;
    int stack = 0;  ///< Bytes below the call of the engine's service function, at its deepest.
};

class LockStep {
public:
    /// @pre `board` holds the proof firmware of `layout`, not yet started, and outlives this.
    /// @param sheet  Where the firmware reads its touches; absent: no key on any page.
    LockStep(const Layout& layout,
             const BuiltImage& built,
             Board& board,
             const std::optional<TouchWiring>& sheet);
    ~LockStep();
    LockStep(const LockStep&) = delete;
    LockStep& operator=(const LockStep&) = delete;

    /// Runs to where the firmware takes orders; the start-up bytes are compared.
    void start();
    /// False after a difference: all that follows then does nothing.
    [[nodiscard]] bool going() const;
    /// What is being done, for the report of a difference.
    void doing(std::string what);

    void set(ValueId value, std::int32_t to);
    [[nodiscard]] std::int32_t get(ValueId value) const;
    void turn(int detents);
    void show_page(int page);
    /// On the PC; keys turn pages too.
    [[nodiscard]] int page() const;
    void use_palette(int palette);
    /// A finger on the glass, told to both engines.
    void touch(int x, int y);
    void lift();
    /// The same through the simulated converter and the firmware's reading of it.
    void press_sheet(int x, int y);
    void lift_sheet();
    [[nodiscard]] bool has_sheet() const;
    /// Lets time pass in small steps, drawing after each.
    void pass(int milliseconds);
    /// Draws until nothing is left; keys act meanwhile as they do in the simulator.
    Served settle();
    /// Draws a few pieces only.
    void serve(int at_most);

    [[nodiscard]] const Comparison& result() const;
    /// What the two glasses show now: RGB565, row-major.
    [[nodiscard]] std::vector<std::uint16_t> expected_glass() const;
    [[nodiscard]] std::vector<std::uint16_t> actual_glass() const;

private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

}  // namespace dialplate
