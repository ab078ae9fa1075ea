#include "sim/display/controller.hpp"

#include "sim/display/pixel_format.hpp"

#include <algorithm>
#include <cassert>
#include <utility>

namespace dialplate {

namespace {

/// Red and blue exchanged.
std::uint16_t swap_red_blue(std::uint16_t colour) {
    return static_cast<std::uint16_t>((colour & 0x07E0u) | (colour >> 11) |
                                      ((colour & 0x001Fu) << 11));
}

}  // namespace

BusCounters operator-(const BusCounters& later, const BusCounters& earlier) {
    return {.bytes = later.bytes - earlier.bytes,
            .windows = later.windows - earlier.windows,
            .pixels = later.pixels - earlier.pixels,
            .pixels_twice = later.pixels_twice - earlier.pixels_twice,
            .unknown_commands = later.unknown_commands - earlier.unknown_commands,
            .bad_windows = later.bad_windows - earlier.bad_windows,
            .short_windows = later.short_windows - earlier.short_windows,
            .stray_parameters = later.stray_parameters - earlier.stray_parameters};
}

Controller::Controller(const Display& display, BusKind bus)
    : display_(display),
      bus_(bus),
      memory_size_{std::max({display.memory_width, display.width, 1}),
                   std::max({display.memory_height, display.height, 1})},
      memory_(static_cast<std::size_t>(memory_size_.width) *
              static_cast<std::size_t>(memory_size_.height)),
      written_in_(memory_.size()) {
    reset();
}

void Controller::reset() {
    address_mode_ = 0;
    map_ = AddressMap(address_mode_, memory_size_);
    bytes_per_pixel_ = 3;
    on_ = awake_ = inverted_ = false;
    columns_ = {0, map_.columns - 1};
    pages_ = {0, map_.pages - 1};
    window_half_set_ = false;
    write_ = {};
}

void Controller::expect(int parameters) {
    expecting_ = parameters > 0 ? Expecting::parameters : Expecting::nothing;
    wanted_ = parameters;
}

void Controller::command(std::uint8_t code) {
    ++counters_.bytes;
    if (expecting_ == Expecting::pixels) {
        counters_.stray_parameters += taken_count_;  // A pixel was left half sent.
    } else if (expecting_ == Expecting::parameters &&
               (code_ == dcs::set_column_address || code_ == dcs::set_page_address)) {
        window_half_set_ = true;
    }
    code_ = code;
    taken_count_ = 0;
    expect(0);
    switch (code) {
        case dcs::soft_reset:
            reset();
            break;
        case dcs::enter_sleep_mode:
            awake_ = false;
            break;
        case dcs::exit_sleep_mode:
            awake_ = true;
            break;
        case dcs::exit_invert_mode:
            inverted_ = false;
            break;
        case dcs::enter_invert_mode:
            inverted_ = true;
            break;
        case dcs::set_display_off:
            on_ = false;
            break;
        case dcs::set_display_on:
            on_ = true;
            break;
        case dcs::set_column_address:
        case dcs::set_page_address:
        case dcs::set_partial_rows:
            expect(4);
            break;
        case dcs::set_scroll_area:
            expect(6);
            break;
        case dcs::set_scroll_start:
            expect(2);
            break;
        case dcs::set_address_mode:
        case dcs::set_pixel_format:
        case dcs::set_tear_on:
            expect(1);
            break;
        case dcs::write_memory_start:
            ++counters_.windows;
            begin_write();
            break;
        case dcs::write_memory_continue:
            // Goes on where the last write stopped; without one, it is a beginning in all but name.
            if (write_.area == 0) begin_write();
            expecting_ = Expecting::pixels;
            break;
        case dcs::nop:
        case dcs::read_memory_start:
        case dcs::enter_partial_mode:
        case dcs::enter_normal_mode:
        case dcs::set_tear_off:
        case dcs::exit_idle_mode:
        case dcs::enter_idle_mode:
            break;
        default:
            ++counters_.unknown_commands;
            expecting_ = Expecting::anything;
            break;
    }
}

void Controller::data(std::uint8_t byte) {
    ++counters_.bytes;
    switch (expecting_) {
        case Expecting::anything:
            return;
        case Expecting::nothing:
            ++counters_.stray_parameters;
            return;
        case Expecting::parameters:
            taken_[static_cast<std::size_t>(taken_count_++)] = byte;
            if (taken_count_ == wanted_) {
                expecting_ = Expecting::nothing;
                parameters_complete();
            }
            return;
        case Expecting::pixels:
            taken_[static_cast<std::size_t>(taken_count_++)] = byte;
            if (taken_count_ == bytes_per_pixel_) {
                taken_count_ = 0;
                // High byte first: standards BUS-20.
                run(bytes_per_pixel_ == 2 ? static_cast<std::uint16_t>((taken_[0] << 8) | taken_[1])
                                          : rgb565_of({taken_[0], taken_[1], taken_[2]}),
                    1);
            }
            return;
    }
}

void Controller::parameters_complete() {
    const std::array<int, 2> range{(taken_[0] << 8) | taken_[1], (taken_[2] << 8) | taken_[3]};
    switch (code_) {
        case dcs::set_column_address:
            columns_ = range;
            window_half_set_ = false;
            break;
        case dcs::set_page_address:
            pages_ = range;
            window_half_set_ = false;
            break;
        case dcs::set_address_mode:
            address_mode_ = taken_[0];
            map_ = AddressMap(address_mode_, memory_size_);
            break;
        case dcs::set_pixel_format: {
            // The low three bits are those of the bus that writes to memory; the high ones belong
            // to the video interface, which these modules do not use.
            const int format = taken_[0] & 7;
            const bool serial_18_only = bus_ != BusKind::parallel8 && display_.bytes_per_pixel == 3;
            if (format == (dcs::pixel_18_bit & 7)) {
                bytes_per_pixel_ = 3;
            } else if (format == (dcs::pixel_16_bit & 7) && !serial_18_only) {
                bytes_per_pixel_ = 2;
            } else {
                ++counters_.unknown_commands;
            }
            break;
        }
        default:  // Scroll, partial rows, tearing line: taken, without effect on the picture.
            break;
    }
}

void Controller::begin_write() {
    if (write_.area > 0 && write_.left_over > 0) ++counters_.short_windows;
    expecting_ = Expecting::pixels;
    const auto [left, right] = columns_;
    const auto [top, bottom] = pages_;
    const bool empty = right < left || bottom < top;
    const bool outside = right >= map_.columns || bottom >= map_.pages;
    if (empty || outside || window_half_set_) ++counters_.bad_windows;
    window_half_set_ = false;
    write_ = {.left = left,
              .right = right,
              .top = top,
              .bottom = bottom,
              .column = left,
              .page = top,
              .area = empty ? 0
                            : static_cast<std::int64_t>(right - left + 1) *
                                  static_cast<std::int64_t>(bottom - top + 1)};
    write_.left_over = write_.area;

    SentWindow sent;
    const int last_column = std::min(right, map_.columns - 1);
    const int last_page = std::min(bottom, map_.pages - 1);
    if (left <= last_column && top <= last_page) {
        const MemoryPixel a = map_.memory_pixel(left, top);
        const MemoryPixel b = map_.memory_pixel(last_column, last_page);
        sent.box = {.x = std::min(a.x, b.x),
                    .y = std::min(a.y, b.y),
                    .width = std::max(a.x, b.x) - std::min(a.x, b.x) + 1,
                    .height = std::max(a.y, b.y) - std::min(a.y, b.y) + 1};
    }
    windows_.push_back(sent);
}

void Controller::pixels(std::uint16_t colour, std::int64_t count) {
    if (expecting_ == Expecting::pixels && taken_count_ == 0) {
        counters_.bytes += count * bytes_per_pixel_;
        run(colour, count);
        return;
    }
    // Bytes that are not, or not yet, pixels: take them one by one.
    for (std::int64_t i = 0; i < count; ++i) {
        if (bytes_per_pixel_ == 2) {
            for (const std::uint8_t byte : sixteen_bit(colour))
                data(byte);
        } else {
            for (const std::uint8_t byte : eighteen_bit(colour))
                data(byte);
        }
    }
}

void Controller::run(std::uint16_t colour, std::int64_t count) {
    counters_.pixels += count;
    if (!windows_.empty()) windows_.back().pixels += count;
    if (write_.area == 0) return;  // Start after end: nowhere to go.
    while (count > 0) {
        if (write_.left_over == 0) {
            if (!write_.past_end) ++counters_.bad_windows;
            write_.past_end = true;
            write_.column = write_.left;
            write_.page = write_.top;
            write_.left_over = write_.area;
        }
        const int in_row = write_.right - write_.column + 1;
        const int now = static_cast<int>(std::min<std::int64_t>(count, in_row));
        fill(colour, now);
        count -= now;
        write_.left_over -= now;
        write_.column += now;
        if (write_.column > write_.right) {
            write_.column = write_.left;
            ++write_.page;
        }
    }
}

/// Writes `count` pixels of the present row, all inside the window.
void Controller::fill(std::uint16_t colour, int count) {
    if (write_.page >= map_.pages) return;
    const int end = std::min(write_.column + count, map_.columns);
    if (write_.column >= end) return;
    const int length = end - write_.column;
    int at = map_.index(write_.column, write_.page);
    int step = map_.column_step;
    if (step == -1) {  // The same pixels forwards: contiguous, which the compiler can vectorise.
        at -= length - 1;
        step = 1;
    }
    std::uint16_t* pixel = memory_.data() + at;
    std::uint32_t* stamp = written_in_.data() + at;
    std::int64_t twice = 0;
    constexpr int short_run = 16;  // below, starting vectors takes longer than the pixels
    if (step == 1 && length >= short_run) {
        std::fill_n(pixel, length, colour);
        twice = std::count(stamp, stamp + length, update_);
        std::fill_n(stamp, length, update_);
    } else {
        for (int i = 0; i < length; ++i) {
            pixel[i * step] = colour;
            twice += stamp[i * step] == update_ ? 1 : 0;
            stamp[i * step] = update_;
        }
    }
    counters_.pixels_twice += twice;
}

void Controller::begin_update() {
    windows_.clear();
    if (++update_ == 0) {  // After four thousand million updates the stamps begin anew.
        std::fill(written_in_.begin(), written_in_.end(), 0u);
        update_ = 1;
    }
}

const TurnMode& Controller::mounting(int turn) const {
    assert(turn == 0 || turn == 90 || turn == 180 || turn == 270);
    return display_.turns[static_cast<std::size_t>(turn / 90)];
}

std::vector<SentWindow> Controller::take_windows(int turn) {
    const TurnMode& mode = mounting(turn);
    const AddressMap map(mode.address_mode, memory_size_);
    std::vector<SentWindow> taken = std::exchange(windows_, {});
    for (SentWindow& sent : taken) {
        if (sent.box.width == 0) continue;
        const MemoryPixel a = map.address_of({sent.box.x, sent.box.y});
        const MemoryPixel b = map.address_of({sent.box.right() - 1, sent.box.bottom() - 1});
        sent.box = {.x = std::min(a.x, b.x) - mode.column_offset,
                    .y = std::min(a.y, b.y) - mode.page_offset,
                    .width = std::max(a.x, b.x) - std::min(a.x, b.x) + 1,
                    .height = std::max(a.y, b.y) - std::min(a.y, b.y) + 1};
    }
    return taken;
}

std::vector<std::uint16_t> Controller::glass(int turn) const {
    const TurnMode& mode = mounting(turn);
    const bool upright = turn % 180 == 0;
    const int width = upright ? display_.width : display_.height;
    const int height = upright ? display_.height : display_.width;
    std::vector<std::uint16_t> seen(static_cast<std::size_t>(width) *
                                    static_cast<std::size_t>(height));
    if (!on()) return seen;

    const AddressMap map(mode.address_mode, memory_size_);
    const bool swapped = ((address_mode_ ^ mode.address_mode) & dcs::blue_first) != 0;
    const std::uint16_t negative = inverted_ != display_.inverted ? 0xFFFF : 0;
    const int first = std::max(0, -mode.column_offset);
    const int last = std::min(width, map.columns - mode.column_offset);
    for (int y = 0; y < height; ++y) {
        const int page = y + mode.page_offset;
        if (page < 0 || page >= map.pages) continue;
        std::uint16_t* row =
            seen.data() + static_cast<std::size_t>(y) * static_cast<std::size_t>(width);
        for (int x = first; x < last; ++x) {
            const auto at = static_cast<std::size_t>(map.index(x + mode.column_offset, page));
            const std::uint16_t held = swapped ? swap_red_blue(memory_[at]) : memory_[at];
            row[x] = held ^ negative;
        }
    }
    return seen;
}

}  // namespace dialplate
