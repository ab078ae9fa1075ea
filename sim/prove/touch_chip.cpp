#include "sim/prove/touch_chip.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {
namespace {

// Channel bits of the control byte (converters' data sheets, differential mode; from memory).
constexpr unsigned channel_y = 1, channel_z1 = 3, channel_z2 = 4, channel_x = 5;
constexpr double full_scale = 4095.0;

}  // namespace

TouchChip::TouchChip(Board& board, const TouchWiring& wiring, const TouchSheet& sheet)
    : board_(&board), wiring_(wiring), sheet_(sheet), random_(sheet.seed) {
    board.watch(wiring_.clock, [this](bool level) { clock_moved(level); });
    board.watch(wiring_.select, [this](bool level) { select_moved(level); });
    board.drive(wiring_.out, false);
    show_pen();
}

void TouchChip::press(double x, double y) {
    pressed_ = true;
    x_ = x;
    y_ = y;
    show_pen();
}

void TouchChip::lift() {
    pressed_ = false;
    show_pen();
}

void TouchChip::show_pen() {
    // Open drain: pulls down or leaves the line to the pull-up.
    if (pressed_ && !converter_on_) {
        board_->drive(wiring_.pen, false);
    } else {
        board_->let_go(wiring_.pen);
    }
}

void TouchChip::select_moved(bool level) {
    selected_ = !level;
    clocks_ = 0;
}

double TouchChip::reading(unsigned channel) const {
    if (!pressed_) return channel == channel_z2 ? full_scale : 0.0;
    // Pressure: current through part of the x plate and the contact (standards RES-02 solved for Z1
    // and Z2; the y plate's part of it only lowers both alike and is left out).
    const double of_x = x_ / (full_scale + 1) * sheet_.plate_ohm;
    const double through = full_scale / (of_x + sheet_.contact_ohm + sheet_.plate_ohm / 2);
    switch (channel) {
        case channel_x:
            return x_;
        case channel_y:
            return y_;
        case channel_z1:
            return through * of_x;
        case channel_z2:
            return through * (of_x + sheet_.contact_ohm);
        default:
            return 0.0;
    }
}

void TouchChip::clock_moved(bool level) {
    if (!selected_) return;
    if (level) {
        const bool in = board_->output(wiring_.in);
        if (clocks_ == 0) {
            if (!in) return;  // No start bit yet.
            control_ = 0;
        }
        ++clocks_;
        if (clocks_ <= 8) control_ = control_ << 1 | static_cast<unsigned>(in);
        if (clocks_ == 24) clocks_ = 0;
        return;
    }
    if (clocks_ == 8) {
        ++conversions_;
        const unsigned channel = control_ >> 4 & 7u;
        const double settled = reading(channel);
        double sample = settled;
        if (channel != last_channel_) sample += (last_reading_ - settled) * sheet_.unsettled;
        if (sheet_.noise > 0.0) sample += std::normal_distribution<>(0.0, sheet_.noise)(random_);
        last_channel_ = channel;
        last_reading_ = settled;
        result_ = static_cast<unsigned>(std::lround(std::clamp(sample, 0.0, full_scale)));
        converter_on_ = (control_ & 3u) != 0;
        show_pen();
    } else if (clocks_ >= 9 && clocks_ < 21) {
        board_->drive(wiring_.out, (result_ >> (20 - clocks_) & 1u) != 0);
    } else {
        board_->drive(wiring_.out, false);
    }
}

}  // namespace dialplate
