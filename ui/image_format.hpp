// The figures of the image. What they mean, with the grammar: image.md.
#pragma once

#include <stdint.h>

namespace dialplate {

constexpr uint8_t image_mark = 0xD1;
constexpr uint8_t image_version = 1;

namespace header {
constexpr uint8_t mark = 0, version = 1, size = 2, width = 4, height = 6, pages = 8, palettes = 9,
                  paints = 10, faces = 11, values = 12, pictures = 13, tones = 14, band = 15,
                  at_pages = 16, at_paints = 18, at_faces = 20, at_values = 22, at_tones = 24,
                  at_pictures = 26, hold = 28, repeat_after = 29, repeat_every = 30, bytes = 32;
}  // namespace header

enum class Kind : uint8_t { readout = 1, box, meter, scale, picture };

namespace value_type {
constexpr uint8_t number = 0, choice = 1, flag = 2, level = 3;
}
constexpr uint16_t value_place = 0x3FFF;
constexpr uint8_t value_type_shift = 14;

namespace packing {
constexpr uint8_t plain = 0, runs = 1, context = 2, segment = 3;
/// Added to plain or context: two bits a pixel.
constexpr uint8_t tones = 4;
}  // namespace packing
/// Of the packing `context`; image.md, "Contexts".
namespace context_model {
constexpr uint8_t pixels = 128, repeats = 3, most_repeats = 2, bank = 4, contexts = 135,
                  least_chance = 2;
/// What a decoder keeps of each column, in the bits of a context that it comes into: the row above; of the row
/// above that the column to the left.
constexpr uint8_t above = 0x20, above_that = 0x02;
/// The pixel to the left in a context; what stands to the left of a bitmap in the row above; what stays of a
/// context when it moves one column on.
constexpr uint8_t left = 0x40, left_edge = 0x0C, moved_on = 0x1D;
/// Of bitmaps of two bits a pixel: the first context of the second bits, and contexts of both.
constexpr uint16_t middle = contexts, all = middle + pixels;
}  // namespace context_model
namespace face {
constexpr uint8_t packing = 0, height = 1, enlarged = 2, glyphs = 3, advance = 4, parameters = 5,
                  places = 6, segment_gap = 6, segment_bytes = 7, lengths = 5, widths = 6,
                  metrics = 7;
constexpr uint8_t most_enlarged = 7;   // bits of `enlarged`
constexpr uint8_t changed_runs = 128;  // beside `enlarged`: a digit becomes another by what differs
/// A byte in front of a glyph in `context`: below `columns` its metrics; else the least columns become as many more
/// as it is above `same_columns`.
constexpr uint8_t columns = 224, same_columns = 240;
}  // namespace face
/// Strokes in a row of a bitmap that is packed in `runs`, or enlarged.
constexpr uint8_t most_strokes = 12;
/// Strokes in a row of a digit that changes by runs.
constexpr uint8_t most_digit_strokes = 4;
namespace segment_glyph {
constexpr uint8_t minus = 10, point = 11, colon = 12;
}
namespace picture {
constexpr uint8_t width = 0, height = 2, packing = 4, parameters = 5, strip_rows = 6, strips = 7,
                  places = 8;
}
namespace page {
constexpr uint8_t first_key = 0, fills = 2, texts = 4, items = 6, count = 8, bytes = 10;
}
namespace text_group {
constexpr uint8_t face = 0, ink = 1, ground = 2, count = 3, bytes = 4, each = 5;
}
namespace item {
constexpr uint8_t size = 0, kind = 1, place = 2;
}
namespace readout {
constexpr uint8_t value = 5, face = 6, ink = 7, ground = 8, drop = 9, least = 10, zero = 11,
                  minus = 12, tuning = 13, gap = 14, thickness = 15, choices = 16, count = 17,
                  cells = 18;
constexpr uint8_t sign_cell = 127, separator_cell = 128, most_cells = 16;
}  // namespace readout
namespace box {
constexpr uint8_t tones = 7, behind = 8, radius = 9, edge = 10, face = 11, flags = 12, rest = 13;
constexpr uint8_t key = 1, active = 2, holds = 4, enabled_by = 8, tap_page = 16, hold_page = 32,
                  repeats = 64, words = 128;
}  // namespace box
namespace meter {
constexpr uint8_t value = 7, flags = 8, ink = 9, unlit = 10, over = 11, over_from = 12, from = 14,
                  to = 18, peak = 22, peak_ticks = 23, block = 24, gap = 25, gap_paint = 26;
constexpr uint8_t upright = 1, has_peak = 2, has_blocks = 4;
}  // namespace meter
namespace scale {
constexpr uint8_t value = 7, flags = 8, face = 9, ink = 10, ground = 11, label_ink = 12,
                  pointer_ink = 13, minor_tick = 14, major_tick = 15, zero = 16, point = 17,
                  minus = 18, decimals = 19, minor = 20, major = 22, units = 24, from = 28,
                  divide = 32;
constexpr uint8_t tape = 1, apart = 2;
}  // namespace scale
namespace picture_item {
constexpr uint8_t number = 7, ink = 8, ground = 9, lighter = 10, darker = 11;
}
constexpr uint8_t none = 255;
constexpr uint8_t rect_bytes = 5;
constexpr uint8_t point_bytes = 3;
constexpr uint8_t tone_bytes = 3;
constexpr uint8_t clock_tick_ms = 20;  // unit of hold and repeat times

}  // namespace dialplate
