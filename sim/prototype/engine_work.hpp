// What the engine did, counted while it ran on the PC: a measure of the time that it needs on the receiver.
//
// Each step of the engine reads the image, and which field it reads tells which code runs. So most kinds of
// work are "read this field of ui/image.md": a group, and the field's place in it. Of a number of two bytes the
// lower counts, of a rect or a point the byte of the high bits. The rest is what the bus is told, and what
// follows from the bits of a glyph or from the size of a number.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>

namespace dialplate {

namespace work {
/// What a window belongs to.
enum class Subject : std::uint8_t {
    page,
    readout,
    box,
    meter,
    scale,
    plain,
    runs,
    context,
    large_context,  ///< Enlarged.
    segment,
    plain_tones,
    context_tones,  ///< From `plain` on: a glyph or a strip in that packing.
    changed_runs,
    changed_segments,  ///< A digit that becomes another by what differs.
};

// Groups of kinds of work; each has as many kinds as the next begins after it.
constexpr int nothing = 0;  ///< Bytes that count with another.
constexpr int header = 1, value = header + 32, paint = value + 4, tone = paint + 1,
              page_place = tone + 3, page = page_place + 1, fill_group = page + 10,
              fill_rect = fill_group + 2, text_group = fill_rect + 1, text_line = text_group + 4,
              text = text_line + 2, readout = text + 2, box = readout + 20, box_line = box + 20,
              meter = box_line + 3, scale = meter + 27, picture_item = scale + 36,
              face_place = picture_item + 12;
/// A face by its packing: its bytes, of plain and runs the place of a glyph.
constexpr int face = face_place + 1, face_kinds = 6, face_fields = 8;
/// A glyph, plain, runs and plain in tones: advance, the byte behind it.
constexpr int glyph = face + face_kinds * face_fields, glyph_kinds = 3, glyph_fields = 2;
/// A face in context: glyphs that a look-up passes, and changes of columns.
constexpr int metric = glyph + glyph_kinds * glyph_fields;
/// A strip: plain, runs, context, plain in tones, context in tones: its first byte.
constexpr int picture_place = metric + 2, picture = picture_place + 1, strip_data = picture + 9,
              strip_kinds = 5, reads = strip_data + strip_kinds;

constexpr int subjects = 14;
constexpr int window = reads, push = window + subjects, empty_push = push + subjects,
              row = empty_push + subjects;  ///< Rows of the windows.
/// Bits of a bitmap in runs: rows that are read, rows that repeat the one above, runs, their ones, low bits.
constexpr int runs_row = row + subjects, runs_same = runs_row + 1, runs_run = runs_row + 2,
              runs_one = runs_row + 3, runs_low = runs_row + 4;
/// Bits of a plain bitmap: rows with bits, rows without, bits, changes between ground and ink.
constexpr int plain_row = runs_row + 5, plain_blank = plain_row + 1, plain_bit = plain_row + 2,
              plain_change = plain_row + 3;
/// Rows sent, counted again for each enlarged one, and strokes in them.
constexpr int sent_row = plain_row + 4, sent_stroke = sent_row + 1;
/// Decisions of a bitmap in context: rows that are decided, rows that repeat the one above, pixels, of them ink,
/// bits taken; columns gone through after a repeated row, and to send. Then the same of an enlarged one.
constexpr int context = sent_row + 2, context_fields = 7, large_context = context + context_fields;
enum ContextField {
    rows_decided,
    rows_same,
    pixels_decided,
    pixels_inked,
    bits_taken,
    columns_renewed,
    columns_sent
};
/// The decisions of a bitmap of two bits a pixel, pixels counted for each bit, and its columns gone through before a
/// row that is decided. Then a plain one: as of one bit, and the pixels around its bits.
constexpr int context_tones = large_context + context_fields,
              tones_row = context_tones + context_fields, tones_blank = tones_row + 1,
              tones_pixel = tones_row + 2, tones_change = tones_row + 3,
              tones_ground = tones_row + 4;
/// Rows of a segment glyph: at its top and bottom, in its middle, between, of dots.
constexpr int segment_end = tones_row + 5, segment_middle = segment_end + 1,
              segment_upright = segment_end + 2, segment_dots = segment_end + 3;
/// Rows of a box among round corners; columns tried for where they begin.
constexpr int corner_row = segment_end + 4, corner_column = corner_row + 1;
/// Digits taken off a number, and the bytes that it has each time; a value inside a meter's range.
constexpr int digit = corner_row + 2, digit_byte = digit + 1, on_meter = digit + 2;
/// Of the reads of a readout's count and cells those while it is drawn.
constexpr int drawn_count = digit + 3, drawn_cell = drawn_count + 1;
/// Ticks of a scale that are walked over and not sent.
constexpr int scale_step = drawn_count + 2;
/// Digits that become others by what differs, in `plain` or `runs`: the two that are compared; their rows, as far
/// as they are read; runs; bits of runs; plain bits. Of segments: digits, rows drawn.
constexpr int compared = scale_step + 1, compared_row = compared + 1, compared_run = compared + 2,
              compared_bit = compared + 3, compared_plain_bit = compared + 4,
              unlike_segments = compared + 5, unlike_row = compared + 6;
constexpr int service = compared + 7;  ///< Calls.
/// The bus: pixels, of them those whose colour has two equal bytes; pushes of such.
constexpr int pixel = service + 1, even_pixel = pixel + 1, even_push = pixel + 2;
constexpr int kinds = pixel + 3;
}  // namespace work

/// "readout, byte 9", for tables.
std::string name_of_work(int kind);

/// How often each kind of work was done.
struct EngineWork {
    std::array<std::int32_t, work::kinds> times{};

    friend EngineWork operator-(const EngineWork& later, const EngineWork& earlier) {
        EngineWork between;
        for (std::size_t i = 0; i < later.times.size(); ++i) {
            between.times[i] = later.times[i] - earlier.times[i];
        }
        return between;
    }
};

}  // namespace dialplate
