// The commands of the MIPI Display Command Set that a picture needs, and no others.
// Source: MIPI DCS; codes as standards BUS-01, bits of the address mode as BUS-02.
#pragma once

#include <stdint.h>

namespace dialplate {

namespace display_command {
constexpr uint8_t soft_reset = 0x01, exit_sleep_mode = 0x11, enter_invert_mode = 0x21,
                  set_display_on = 0x29, set_column_address = 0x2A, set_page_address = 0x2B,
                  write_memory_start = 0x2C, set_address_mode = 0x36, set_pixel_format = 0x3A;

// Parameter of set_address_mode. Which of the mirrors goes with which turn differs by module.
constexpr uint8_t mirror_pages = 0x80, mirror_columns = 0x40, exchange = 0x20, blue_first = 0x08;

// Parameter of set_pixel_format.
constexpr uint8_t sixteen_bits = 0x55, eighteen_bits = 0x66;
}  // namespace display_command

}  // namespace dialplate
