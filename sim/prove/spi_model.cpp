#include "sim/prove/spi_model.hpp"

#include <utility>

namespace dialplate {
namespace {

constexpr std::uint8_t spe = 0x40, mstr = 0x10, spr = 0x03;     // SPCR
constexpr std::uint8_t spif = 0x80, wcol = 0x40, spi2x = 0x01;  // SPSR

}  // namespace

SpiModel::SpiModel(SpiTiming timing, ByteSink sink) : timing_(timing), sink_(std::move(sink)) {}

CycleCount SpiModel::byte_cycles() const {
    constexpr CycleCount dividers[] = {4, 16, 64, 128};
    return 8 * dividers[control_ & spr] / (doubled_ ? 2 : 1);
}

void SpiModel::settle(CycleCount now) {
    if (in_flight_ && now >= out_) {
        in_flight_ = false;
        flag_ = true;
        status_was_read_ = false;
        sink_(out_, byte_);
    }
}

bool SpiModel::shifting(CycleCount now) {
    settle(now);
    return in_flight_;
}

void SpiModel::write_status(CycleCount now, std::uint8_t value) {
    settle(now);
    doubled_ = (value & spi2x) != 0;
}

void SpiModel::write_data(CycleCount now, std::uint8_t byte) {
    settle(now);
    if ((control_ & (spe | mstr)) != (spe | mstr)) return;
    if (now < next_write_) {
        ++collisions_;
        collided_ = true;
        return;
    }
    if (status_was_read_) flag_ = collided_ = status_was_read_ = false;
    byte_ = byte;
    in_flight_ = true;
    out_ = now + byte_cycles() + timing_.flag_after;
    next_write_ = now + byte_cycles() + timing_.write_after;
    // With a model that takes a write before the flag shows, the flag of the byte before comes first.
    if (next_write_ < out_) out_ = next_write_;
}

std::uint8_t SpiModel::read_status(CycleCount now) {
    settle(now);
    status_was_read_ = status_was_read_ || flag_ || collided_;
    return static_cast<std::uint8_t>((flag_ ? spif : 0) | (collided_ ? wcol : 0) |
                                     (doubled_ ? spi2x : 0));
}

std::uint8_t SpiModel::read_data(CycleCount now) {
    settle(now);
    if (status_was_read_) flag_ = collided_ = status_was_read_ = false;
    return 0xFF;  // Nothing is wired to the input.
}

}  // namespace dialplate
