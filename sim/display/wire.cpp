#include "sim/display/wire.hpp"

#include "sim/display/bus_time.hpp"

#include <cassert>

namespace dialplate {

Wire::Wire(Controller& controller, const Display& display, int turn, BusKind bus)
    : controller_(&controller),
      mode_(display.turns[static_cast<std::size_t>(turn / 90)]),
      inverted_(display.inverted),
      bytes_per_pixel_(bytes_per_pixel(display, bus)) {
    assert(turn == 0 || turn == 90 || turn == 180 || turn == 270);
    assert(bytes_per_pixel_ == 2 || bytes_per_pixel_ == 3);
}

void Wire::command(std::uint8_t code) {
    if (observer_) observer_(true, code);
    controller_->command(code);
}

void Wire::data(std::uint8_t byte) {
    if (observer_) observer_(false, byte);
    controller_->data(byte);
}

void Wire::range(int first, int count) {
    const int last = first + count - 1;
    for (const int end : {first, last}) {
        data(static_cast<std::uint8_t>((end >> 8) & 0xFF));
        data(static_cast<std::uint8_t>(end & 0xFF));
    }
}

void Wire::start() {
    command(dcs::soft_reset);
    command(dcs::exit_sleep_mode);
    command(dcs::set_pixel_format);
    data(bytes_per_pixel_ == 3 ? dcs::pixel_18_bit : dcs::pixel_16_bit);
    command(dcs::set_address_mode);
    data(mode_.address_mode);
    if (inverted_) command(dcs::enter_invert_mode);
    command(dcs::set_display_on);
}

void Wire::window(std::uint16_t x, std::uint16_t y, std::uint16_t width, std::uint16_t height) {
    assert(width >= 1 && height >= 1);
    command(dcs::set_column_address);
    range(x + mode_.column_offset, width);
    command(dcs::set_page_address);
    range(y + mode_.page_offset, height);
    command(dcs::write_memory_start);
}

void Wire::push(std::uint16_t colour, std::uint16_t count) {
    // The controller takes a run at once only if it reads the bytes as this wire would send them.
    if (!observer_ && controller_->bytes_per_pixel() == bytes_per_pixel_) {
        controller_->pixels(colour, count);
        return;
    }
    for (std::uint16_t i = 0; i < count; ++i) {
        if (bytes_per_pixel_ == 2) {
            for (const std::uint8_t byte : sixteen_bit(colour))
                data(byte);
        } else {
            for (const std::uint8_t byte : eighteen_bit(colour))
                data(byte);
        }
    }
}

}  // namespace dialplate
