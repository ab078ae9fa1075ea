// The SPI of an AVR as a master, seen through its three registers.
//
// Modelled: the shift time from the clock bits, the single data register (a write while a byte shifts is
// lost and sets WCOL), SPIF and its clearing by reading the status and then touching the data register.
// Not modelled: slave mode, the SPI interrupt, mode and bit order (bytes, not waveforms), a level on the
// SS pin. Compared with: the AVR data sheets' words (from memory), and one published hardware measurement
// of a byte at half the clock: flag readable 17 cycles after the write, next write good after 18 and lost
// after 17. Both are parameters; the strict ones are the default.
// UNVERIFIED: 17 or 18; a capture on a real chip settles it.
// UNVERIFIED: a flag that rises again between the reading of the status and the touching of the data stays
// up here, the stricter of two readings of the data sheet.
//
// There are no timers: the model remembers the cycle of a write and works out what is due whenever a
// register is touched, a pin moves or the run ends.
#pragma once

#include "sim/prove/serial_byte.hpp"

#include <cstdint>

namespace dialplate {

/// Beyond the eight bit times of a byte.
struct SpiTiming {
    CycleCount flag_after = 1;   ///< Until SPIF can be read.
    CycleCount write_after = 2;  ///< Until the next write is taken.
};

class SpiModel {
public:
    SpiModel(SpiTiming timing, ByteSink sink);

    void write_control(std::uint8_t value) { control_ = value; }
    /// Only SPI2X can be written.
    void write_status(CycleCount now, std::uint8_t value);
    void write_data(CycleCount now, std::uint8_t byte);
    [[nodiscard]] std::uint8_t read_status(CycleCount now);
    [[nodiscard]] std::uint8_t read_data(CycleCount now);

    /// Hands on a byte that has left by now.
    void settle(CycleCount now);
    /// Whether a byte is on the wire.
    [[nodiscard]] bool shifting(CycleCount now);
    [[nodiscard]] std::int64_t collisions() const { return collisions_; }

private:
    [[nodiscard]] CycleCount byte_cycles() const;

    SpiTiming timing_;
    ByteSink sink_;
    std::uint8_t control_ = 0;
    bool doubled_ = false;
    bool in_flight_ = false;
    std::uint8_t byte_ = 0;
    CycleCount out_ = 0;         // Flag time of the byte in flight.
    CycleCount next_write_ = 0;  // First cycle at which a write is taken.
    bool flag_ = false, collided_ = false, status_was_read_ = false;
    std::int64_t collisions_ = 0;
};

}  // namespace dialplate
