// The MIPI Display Command Set as far as small TFT controllers share it: codes, names spelled as
// in the standard, and how many parameter bytes follow each. Source: standards BUS-01, BUS-02,
// BUS-03.
#pragma once

#include <cstdint>

namespace dialplate::dcs {

inline constexpr std::uint8_t nop = 0x00;
inline constexpr std::uint8_t soft_reset = 0x01;
inline constexpr std::uint8_t enter_sleep_mode = 0x10;
inline constexpr std::uint8_t exit_sleep_mode = 0x11;
inline constexpr std::uint8_t enter_partial_mode = 0x12;
inline constexpr std::uint8_t enter_normal_mode = 0x13;
inline constexpr std::uint8_t exit_invert_mode = 0x20;
inline constexpr std::uint8_t enter_invert_mode = 0x21;
inline constexpr std::uint8_t set_display_off = 0x28;
inline constexpr std::uint8_t set_display_on = 0x29;
inline constexpr std::uint8_t set_column_address = 0x2A;
inline constexpr std::uint8_t set_page_address = 0x2B;
inline constexpr std::uint8_t write_memory_start = 0x2C;
inline constexpr std::uint8_t read_memory_start = 0x2E;
inline constexpr std::uint8_t set_partial_rows = 0x30;
inline constexpr std::uint8_t set_scroll_area = 0x33;
inline constexpr std::uint8_t set_tear_off = 0x34;
inline constexpr std::uint8_t set_tear_on = 0x35;
inline constexpr std::uint8_t set_address_mode = 0x36;
inline constexpr std::uint8_t set_scroll_start = 0x37;
inline constexpr std::uint8_t exit_idle_mode = 0x38;
inline constexpr std::uint8_t enter_idle_mode = 0x39;
inline constexpr std::uint8_t set_pixel_format = 0x3A;
inline constexpr std::uint8_t write_memory_continue = 0x3C;

// Bits of set_address_mode.
inline constexpr std::uint8_t mirror_pages = 0x80;    ///< MY, page address order.
inline constexpr std::uint8_t mirror_columns = 0x40;  ///< MX, column address order.
inline constexpr std::uint8_t exchange = 0x20;        ///< MV, page/column order.
inline constexpr std::uint8_t blue_first = 0x08;      ///< BGR.

// Parameters of set_pixel_format.
inline constexpr std::uint8_t pixel_16_bit = 0x55;
inline constexpr std::uint8_t pixel_18_bit = 0x66;

}  // namespace dialplate::dcs
