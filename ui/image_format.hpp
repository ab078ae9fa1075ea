// The figures of the image. What they mean, with the grammar: image.md.
#pragma once

#include <stdint.h>

namespace dialplate {

constexpr uint8_t image_mark = 0xD1;
constexpr uint8_t image_version = 1;

namespace header {
constexpr uint8_t mark = 0, version = 1, size = 2, width = 4, height = 6, pages = 8, palettes = 9,
                  paints = 10, faces = 11, values = 12, looks = 13, pictures = 14, at_pages = 16,
                  at_paints = 18, at_faces = 20, at_values = 22, at_looks = 24, at_pictures = 26,
                  band = 15, hold = 28, repeat_after = 29, repeat_every = 30, bytes = 32;
}  // namespace header

enum class Kind : uint8_t { readout = 1, key, legend, lamp, meter, scale, picture };

namespace value_type {
constexpr uint8_t number = 0, choice = 1, flag = 2, level = 3;
}
constexpr uint16_t value_place = 0x3FFF;
constexpr uint8_t value_type_shift = 14;

namespace packing {
constexpr uint8_t plain = 0, runs = 1, context = 2, segment = 3;
}
namespace face {
constexpr uint8_t packing = 0, height = 1, enlarged = 2, glyphs = 3, parameters = 4, advance = 5,
                  places = 6, segment_gap = 6, segment_bytes = 7;
}
namespace segment_glyph {
constexpr uint8_t minus = 10, point = 11, colon = 12;
}
namespace picture {
constexpr uint8_t width = 0, height = 2, packing = 4, parameters = 5, strip_rows = 6, strips = 7,
                  places = 8;
}
namespace page {
constexpr uint8_t first_key = 0, groups = 2, items = 4, backdrop = 6;
}
namespace item {
constexpr uint8_t size = 0, kind = 1, rect = 2, rest = 7;
}
namespace readout_flag {
constexpr uint8_t tuning = 1, unit = 2;
}
namespace readout_cell {
constexpr uint8_t sign = 127, separator = 128;
}
namespace key_flag {
constexpr uint8_t active = 1, wide = 2, enabled_by = 4, page = 8, repeats = 16, holds = 32,
                  hold_page = 64;
}
namespace lamp_flag {
constexpr uint8_t when = 1, wide = 2;
}
namespace meter_flag {
constexpr uint8_t upright = 1, peak = 2, blocks = 4, marks = 8, marks_after = 16;
}
namespace scale_flag {
constexpr uint8_t tape = 1;
}
constexpr uint8_t look_bytes = 12;
constexpr uint8_t none = 255;
constexpr uint8_t rect_bytes = 5;
constexpr uint8_t point_bytes = 3;
constexpr uint8_t clock_tick_ms = 20;  // unit of hold and repeat times

}  // namespace dialplate
