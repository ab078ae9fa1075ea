// USART0 of an AVR as an SPI master, transmitting: a shift register and one byte of buffer.
//
// Modelled: UDRE, TXC, the clock from the baud register, writes ignored while the buffer is full.
// Not modelled: receiving, interrupts, mode and bit order, the ordinary serial port (the simulator's own
// model serves that). Compared with: the data sheet's words only (from memory): frames follow back to
// back at two cycles a bit, TXC when the shift register runs dry, cleared by writing a one.
// UNVERIFIED: back-to-back frames at exactly 16 cycles, and the delay of the first; a scope settles both.
#pragma once

#include "sim/prove/serial_byte.hpp"

#include <cstdint>

namespace dialplate {

class UsartModel {
public:
    explicit UsartModel(ByteSink sink);

    void write_mode(std::uint8_t value) { mode_ = value; }
    void write_control(CycleCount now, std::uint8_t value);
    void write_baud(std::uint16_t value) { baud_ = value; }
    void write_data(CycleCount now, std::uint8_t byte);
    void write_status(CycleCount now, std::uint8_t value);
    [[nodiscard]] std::uint8_t read_status(CycleCount now);

    /// Whether the registers are those of an SPI master now.
    [[nodiscard]] bool is_spi() const;
    /// Hands on the bytes that have left by now.
    void settle(CycleCount now);
    /// Whether a byte is on the wire or waits for it.
    [[nodiscard]] bool shifting(CycleCount now);
    /// Writes that were ignored because the buffer was full.
    [[nodiscard]] std::int64_t overruns() const { return overruns_; }

private:
    [[nodiscard]] CycleCount byte_cycles() const { return 16 * (CycleCount{baud_} + 1); }

    ByteSink sink_;
    std::uint8_t mode_ = 0, control_ = 0;
    std::uint16_t baud_ = 0;
    bool shifting_ = false, buffered_ = false, done_flag_ = false;
    std::uint8_t byte_ = 0, buffer_ = 0;
    CycleCount out_ = 0;
    std::int64_t overruns_ = 0;
};

}  // namespace dialplate
