// The two functions of ui/bus.hpp in terms of a link that sends bytes, and the start-up of a controller.
//
// A Link is a type of static functions: begin(), reset(), select(), command(byte), parameter(byte),
// window(columns, pages), run(first, second, count) and run(first, second, third, count) for runs of one
// colour, types Contexts for glyphs in `context` and Rows for rows of digits, void where pushes will do,
// finish() which returns when the last byte has left. The links stand beside this file: spi_polled.hpp,
// spi_timed.hpp, usart_spi.hpp, parallel8.hpp.
#pragma once

#include "ui/mcu/context_core.hpp"
#include "ui/mcu/controllers.hpp"
#include "ui/mcu/display_command.hpp"
#include "ui/mcu/wait.hpp"
#include "ui/mcu/window_commands.hpp"

#include <stdint.h>

namespace dialplate {

/// Bytes of a pixel on the wire. A type of its own, so that only the one in use is compiled.
template <uint8_t bytes>
struct PixelBytes;

/// RGB565, high byte first (standards BUS-20).
template <>
struct PixelBytes<2> {
    static constexpr uint8_t format = display_command::sixteen_bits;
    template <class Link>
    using Contexts = typename Link::Contexts;
    template <class Link>
    using Rows = typename Link::Rows;
    template <class Link>
    static void run(uint16_t colour, uint16_t count) {
        Link::run(static_cast<uint8_t>(colour >> 8), static_cast<uint8_t>(colour), count);
    }
};

/// Eighteen bits: a byte for each of red, green and blue (standards BUS-09), widened to eight bits by
/// repeating the top ones (standards C565-02); the controller looks at the upper six.
template <>
struct PixelBytes<3> {
    static constexpr uint8_t format = display_command::eighteen_bits;
    template <class Link>
    using Contexts = FastContextCore;
    template <class Link>
    using Rows = void;
    template <class Link>
    static void run(uint16_t colour, uint16_t count) {
        // RRRRRGGG GGGBBBBB; with the nibbles exchanged no bit has far to go (shifts go bit by bit).
        const uint8_t high = static_cast<uint8_t>(colour >> 8);
        const uint8_t low = static_cast<uint8_t>(colour);
        const uint8_t high_turned = __builtin_avr_swap(high);
        const uint8_t low_turned = __builtin_avr_swap(low);
        const uint8_t red = static_cast<uint8_t>((high & 0xF8) | ((high_turned >> 1) & 0x07));
        const uint8_t green = static_cast<uint8_t>(
            ((high_turned << 1) & 0xE0) | ((low_turned << 1) & 0x1C) | ((high >> 1) & 0x03));
        const uint8_t blue = static_cast<uint8_t>((low << 3) | ((low >> 2) & 0x07));
        Link::run(red, green, blue, count);
    }
};

/// A display behind a link.
/// @tparam Link   How bytes leave the microcontroller.
/// @tparam Panel  How the module is mounted, all constants: `Controller` (one of controllers.hpp),
///                uint8_t `address_mode` (turn and colour order), uint16_t `column_offset` and
///                `page_offset` (the glass in the controller's memory, turned), uint8_t
///                `bytes_per_pixel` (2 or 3), bool `inverted`.
template <class Link, class Panel>
struct DisplayBus {
    using Pixels = PixelBytes<Panel::bytes_per_pixel>;
    using Contexts = typename Pixels::template Contexts<Link>;
    using Rows = typename Pixels::template Rows<Link>;

    /// Wakes the display; takes about a quarter of a second. The glass shows whatever its memory holds
    /// until the first page is drawn, so switch the back-light on after that.
    static void start() {
        Link::begin();
        Link::reset();
        Link::select();
        Link::command(display_command::soft_reset);
        Link::finish();
        wait_ms(Panel::Controller::reset_wait_ms);
        Link::command(display_command::exit_sleep_mode);
        Link::finish();
        wait_ms(Panel::Controller::wake_wait_ms);
        Link::command(display_command::set_pixel_format);
        Link::parameter(Pixels::format);
        Link::command(display_command::set_address_mode);
        Link::parameter(Panel::address_mode);
        if (Panel::inverted) {
            Link::command(display_command::enter_invert_mode);
        }
        Link::command(display_command::set_display_on);
        Link::finish();
    }

    /// Opens a window; see ui/bus.hpp. 11 bytes.
    __attribute__((noinline)) static void window(uint16_t x,
                                                 uint16_t y,
                                                 uint16_t width,
                                                 uint16_t height) {
        Link::window(range(static_cast<uint16_t>(x + Panel::column_offset), width),
                     range(static_cast<uint16_t>(y + Panel::page_offset), height));
    }

    /// Sends `count` pixels of one colour; see ui/bus.hpp. May return before the last byte has left.
    __attribute__((noinline)) static void push(uint16_t colour, uint16_t count) {
        if (count != 0) {
            // Keeps the compiler from asking this same question again after every pixel.
            asm("" : "+r"(count));
            Pixels::template run<Link>(colour, count);
        }
    }

    /// Returns when the last byte has left; before anything else uses the display's lines.
    static void finish() { Link::finish(); }

private:
    static MemoryRange range(uint16_t first, uint16_t length) {
        return MemoryRange{first, static_cast<uint16_t>(first + length - 1)};
    }
};

}  // namespace dialplate
