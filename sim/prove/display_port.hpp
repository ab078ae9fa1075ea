// The display's end of the wires: which byte arrives as command, which as data, and what went wrong on
// the way.
//
// A byte is taken with the levels that the select and data/command lines have while it shifts; an edge on
// either meanwhile is a fault of the driver. On the parallel bus a byte is taken at the rising edge of
// the write line.
#pragma once

#include "sim/prove/serial_byte.hpp"
#include "sim/prove/wiring.hpp"

#include <cstdint>
#include <functional>
#include <limits>
#include <string>

namespace dialplate {

/// Hears every byte that reaches the display.
using BusObserver = std::function<void(bool is_command, std::uint8_t byte)>;

class DisplayPort {
public:
    explicit DisplayPort(const DisplayWiring& wiring) : wiring_(wiring) {}

    void observe(BusObserver observer) { observer_ = std::move(observer); }

    /// A byte has left the serial unit that the display is wired to.
    void take(std::uint8_t byte) {
        if (selected_) deliver(byte);
    }

    /// The outputs of a port have changed.
    /// @param levels    Bit by bit: 0 where the pin drives low, 1 where it drives high or floats.
    /// @param shifting  Whether a serial byte is on its way at `now`; asked only when a line moves.
    template <class Shifting>
    void port_changed(char port, std::uint8_t levels, CycleCount now, Shifting&& shifting);

    [[nodiscard]] std::int64_t bytes() const { return bytes_; }
    /// Edges of the select or data/command line while a byte was shifting.
    [[nodiscard]] std::int64_t edges_while_shifting() const { return edges_; }
    /// Cycle of the first such edge.
    [[nodiscard]] CycleCount first_edge() const { return first_edge_; }
    /// Shortest distance of two write strobes, in cycles; the greatest number if there were not two.
    [[nodiscard]] CycleCount fastest_write() const { return fastest_write_; }

private:
    void deliver(std::uint8_t byte) {
        ++bytes_;
        if (observer_) observer_(!data_, byte);
    }
    [[nodiscard]] std::uint8_t parallel_byte() const;

    DisplayWiring wiring_;
    BusObserver observer_;
    std::array<std::uint8_t, 16> levels_ = all_high();  // By port letter from 'A'.
    bool selected_ = !wiring_.select.has_value();
    bool data_ = true, written_ = true;
    std::int64_t bytes_ = 0, edges_ = 0;
    CycleCount first_edge_ = 0;
    CycleCount last_write_ = 0, fastest_write_ = std::numeric_limits<CycleCount>::max();
    bool wrote_before_ = false;

    [[nodiscard]] static constexpr std::array<std::uint8_t, 16> all_high() {
        std::array<std::uint8_t, 16> levels{};
        levels.fill(0xFF);
        return levels;
    }
    [[nodiscard]] bool level(const PinPlace& pin) const {
        return (levels_[static_cast<std::size_t>(pin.port - 'A')] >> pin.bit & 1) != 0;
    }
};

inline std::uint8_t DisplayPort::parallel_byte() const {
    unsigned byte = 0;
    for (std::size_t bit = 0; bit < wiring_.data.size(); ++bit) {
        byte |= static_cast<unsigned>(level(wiring_.data[bit])) << bit;
    }
    return static_cast<std::uint8_t>(byte);
}

template <class Shifting>
void DisplayPort::port_changed(char port,
                               std::uint8_t levels,
                               CycleCount now,
                               Shifting&& shifting) {
    levels_[static_cast<std::size_t>(port - 'A')] = levels;
    if (wiring_.bus == BusKind::parallel8) {
        selected_ = !wiring_.select || !level(*wiring_.select);
        data_ = level(wiring_.data_or_command);
        const bool write = level(wiring_.write);
        if (write && !written_ && selected_) {
            if (wrote_before_ && now - last_write_ < fastest_write_) {
                fastest_write_ = now - last_write_;
            }
            wrote_before_ = true;
            last_write_ = now;
            deliver(parallel_byte());
        }
        written_ = write;
        return;
    }
    const bool select_now = !wiring_.select || !level(*wiring_.select);
    const bool data_now = level(wiring_.data_or_command);
    if (select_now == selected_ && data_now == data_) return;
    if (shifting() && (selected_ || select_now)) {
        if (edges_ == 0) first_edge_ = now;
        ++edges_;
    }
    selected_ = select_now;
    data_ = data_now;
}

}  // namespace dialplate
