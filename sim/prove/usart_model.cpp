#include "sim/prove/usart_model.hpp"

#include <utility>

namespace dialplate {
namespace {

constexpr std::uint8_t txc = 0x40, udre = 0x20;  // UCSR0A
constexpr std::uint8_t txen = 0x08;              // UCSR0B
constexpr std::uint8_t umsel = 0xC0;             // UCSR0C: both set, SPI master

// UDR0 lies beyond the reach of OUT, and STS takes two cycles: the byte is there at their end.
constexpr CycleCount store_cycles = 2;

}  // namespace

UsartModel::UsartModel(ByteSink sink) : sink_(std::move(sink)) {}

bool UsartModel::is_spi() const {
    return (mode_ & umsel) == umsel;
}

void UsartModel::write_control(CycleCount now, std::uint8_t value) {
    settle(now);
    control_ = value;
}

void UsartModel::settle(CycleCount now) {
    while (shifting_ && now >= out_) {
        const CycleCount done = out_;
        const std::uint8_t byte = byte_;
        if (buffered_) {
            byte_ = buffer_;
            buffered_ = false;
            out_ = done + byte_cycles();
        } else {
            shifting_ = false;
            done_flag_ = true;
        }
        sink_(done, byte);
    }
}

bool UsartModel::shifting(CycleCount now) {
    settle(now);
    return shifting_;
}

void UsartModel::write_data(CycleCount now, std::uint8_t byte) {
    settle(now);
    if (!(control_ & txen)) return;
    if (!shifting_) {
        shifting_ = true;
        byte_ = byte;
        out_ = now + store_cycles + byte_cycles();
    } else if (!buffered_) {
        buffered_ = true;
        buffer_ = byte;
    } else {
        ++overruns_;
    }
}

void UsartModel::write_status(CycleCount now, std::uint8_t value) {
    settle(now);
    if (value & txc) done_flag_ = false;
}

std::uint8_t UsartModel::read_status(CycleCount now) {
    settle(now);
    return static_cast<std::uint8_t>((done_flag_ ? txc : 0) | (buffered_ ? 0 : udre));
}

}  // namespace dialplate
