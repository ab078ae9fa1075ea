// What every item draws with: fills and glyphs, as pieces of a drawing, on a bus.
#pragma once

#include "ui/changed_runs.hpp"
#include "ui/changed_segments.hpp"
#include "ui/context.hpp"
#include "ui/face_metrics.hpp"
#include "ui/geometry.hpp"
#include "ui/glyph.hpp"
#include "ui/image_format.hpp"
#include "ui/pieces.hpp"
#include "ui/rom.hpp"
#include "ui/row.hpp"
#include "ui/run_glyph.hpp"
#include "ui/segment.hpp"
#include "ui/segment_rows.hpp"
#include "ui/tones.hpp"

#include <stdint.h>

namespace dialplate {

/// Bus: see bus.hpp. Parts: see parts.hpp.
template <class Bus, class Parts>
class Pen {
public:
    using Image = Rom<typename Parts::Bytes>;

    Pen(const Bus& bus, const Image& image) : rom(image), bus_(bus) { use_palette(0); }

    const Image rom;
    Pieces pieces;

    void use_palette(uint8_t palette) {
        paints_ = word(rom.u16(header::at_paints) + 2u * palette * rom.u8(header::paints));
    }
    __attribute__((noinline)) uint16_t colour(uint8_t paint) const {
        return rom.u16(word(paints_ + 2u * paint));
    }
    /// The colour of the paint whose number stands at `at` in the image.
    __attribute__((noinline)) uint16_t colour_at(uint16_t at) const { return colour(rom.u8(at)); }
    Bus& bus() { return bus_; }

    /// Begins a slice of the drawing.
    void slice() { pieces.slice(slice_pixels()); }
    /// A piece: a rectangle of one colour, as many rows a slice as fit.
    __attribute__((noinline)) void fill(Rect r, uint16_t paint_colour) {
        if (open_band(r)) {
            push_rows(r, paint_colour);
        }
    }

    /// A piece of rectangle `r`: if it is its turn, opens the window for the rows that fit into the slice,
    /// and leaves them in `r`.
    __attribute__((noinline)) bool open_band(Rect& r) {
        if (r.w == 0 || r.h == 0 || !pieces.mine()) {
            return false;
        }
        const uint16_t done = pieces.row();
        const uint16_t rows = smaller(pieces.rows_that_fit(r.w), word(r.h - done));
        if (rows == 0) {
            return false;
        }
        pieces.sent(word(static_cast<unsigned>(rows) * r.w));
        pieces.drawn_rows(rows, r.h);
        r.y = word(r.y + done);
        r.h = rows;
        bus_.window(r.x, r.y, r.w, r.h);
        return true;
    }

    /// Sends a rectangle that fits into the slice.
    __attribute__((noinline)) void block(const Rect& r, uint16_t paint_colour) {
        pieces.sent(word(static_cast<unsigned>(r.w) * r.h));
        bus_.window(r.x, r.y, r.w, r.h);
        push_rows(r, paint_colour);
    }

    __attribute__((noinline)) uint16_t face_at(uint8_t number) const {
        return rom.u16(word(rom.u16(header::at_faces) + 2u * number));
    }
    uint8_t enlarged(uint16_t face_at) const {
        return Parts::enlarged ? byte(rom.u8(word(face_at + face::enlarged)) & face::most_enlarged)
                               : uint8_t{1};
    }
    /// Rows of a cell, enlarged.
    __attribute__((noinline)) uint16_t height(uint16_t face_at) const {
        return enlarge(rom.u8(word(face_at + face::height)), face_at);
    }
    /// Columns of a digit's cell, enlarged.
    __attribute__((noinline)) uint16_t digit_advance(uint16_t face_at) const {
        uint8_t columns = rom.u8(word(face_at + face::advance));
        if (Parts::segment && is_segment(face_at)) {
            columns =
                byte(columns + static_cast<unsigned>(rom.u8(word(face_at + face::segment_gap))));
        }
        return enlarge(columns, face_at);
    }
    /// Columns of a glyph's cell, enlarged.
    __attribute__((noinline)) uint16_t advance(uint16_t face_at, uint8_t glyph) const {
        return enlarge(metrics(face_at, glyph).advance, face_at);
    }

    /// A piece: one glyph, its whole cell.
    __attribute__((noinline)) void glyph(Point at,
                                         uint16_t face_at,
                                         uint8_t number,
                                         Colours colours) {
        if (!pieces.mine()) {
            return;
        }
        const GlyphMetrics glyph = metrics(face_at, number);
        if (open_whole(Rect{at.x, at.y, enlarge(glyph.advance, face_at), height(face_at)})) {
            send_glyph(face_at, glyph, colours);
        }
    }

    /// Whether the digits of a face become each other by what differs.
    bool has_changed_runs(uint16_t face_at) const {
        return Parts::changed_runs &&
               (rom.u8(word(face_at + face::enlarged)) & face::changed_runs) != 0;
    }
    /// A piece: a digit becomes another. Charged to the slice as the whole cell, which takes about as long at most.
    /// @pre The face has changed runs, and the cell the same colours as before.
    __attribute__((noinline)) void change(
        Point at, uint16_t face_at, uint8_t was, uint8_t number, Colours colours) {
        if (!Parts::changed_runs || !pieces.mine()) {
            return;
        }
        const uint16_t columns = digit_advance(face_at);
        if (take_whole(columns, height(face_at))) {
            send_change(at, face_at, was, number, colours);
        }
    }

    /// A piece: a picture strip whose bits start at `at`.
    void strip(Rect where, uint16_t at, uint8_t coding, uint8_t k, Colours colours) {
        if (!pieces.mine() || !open_whole(where)) {
            return;
        }
        const Extent extent{where.w, where.h, 1};
        if (Parts::context && coding == packing::context) {
            send_contexts(at, byte(where.w), byte(where.h), 1, colours);
        } else if (Parts::runs && coding == packing::runs) {
            send_runs(at, extent, k, colours);
        } else if (Parts::plain) {
            send_plain(at, extent, Rect{0, 0, where.w, where.h}, colours);
        }
    }

    /// A piece: a strip in tones.
    void strip(Rect where, uint16_t at, uint8_t coding, const Shades& shades) {
        if (!pieces.mine() || !open_whole(where)) {
            return;
        }
        send_tones(at, Extent{where.w, where.h, 1}, coding, Rect{0, 0, where.w, where.h}, shades);
    }

private:
    using Contexts = typename ContextsOf<Bus, typename Parts::Contexts>::Core;

    // What draws a face that has tones.
    static constexpr bool any_context = Parts::context || (Parts::smooth && Parts::tones_context);
    static constexpr bool any_other =
        Parts::plain || Parts::runs || (Parts::smooth && Parts::tones_plain);
    // Whether a raster face is in context.
    bool is_in_context(uint16_t face_at) const {
        return any_context && (!any_other || coding(face_at) == packing::context);
    }
    bool is_smooth(uint16_t face_at) const {
        return Parts::smooth && (rom.u8(face_at) & packing::tones) != 0;
    }
    // Of a raster face, without whether it is smooth.
    uint8_t coding(uint16_t face_at) const {
        return Parts::smooth ? byte(rom.u8(face_at) & ~unsigned{packing::tones}) : rom.u8(face_at);
    }
    uint16_t slice_pixels() const { return word(16u * rom.u8(header::band)); }
    // Opens the window of a piece that cannot be cut. False: the slice has no room for it.
    bool open_whole(const Rect& r) {
        if (!take_whole(r.w, r.h)) {
            return false;
        }
        bus_.window(r.x, r.y, r.w, r.h);
        return true;
    }
    // Charges the slice with a piece that cannot be cut.
    __attribute__((noinline)) bool take_whole(uint16_t columns, uint16_t rows) {
        const uint32_t area = static_cast<uint32_t>(columns) * rows;
        const uint16_t pixels = area > 0x7FFF ? uint16_t{0x7FFF} : static_cast<uint16_t>(area);
        if (!pieces.fits(pixels)) {
            return false;
        }
        pieces.sent(pixels);
        pieces.drawn();
        return true;
    }
    void push_rows(const Rect& r, uint16_t paint_colour) {
        for (uint16_t rows = r.h; rows != 0; --rows) {
            bus_.push(paint_colour, r.w);
        }
    }

    uint16_t enlarge(uint8_t pixels, uint16_t face_at) const {
        return word(static_cast<unsigned>(pixels) * enlarged(face_at));
    }
    bool is_segment(uint16_t face_at) const { return rom.u8(face_at) == packing::segment; }
    // Of a glyph; of a segment face with its number for its place.
    __attribute__((noinline)) GlyphMetrics metrics(uint16_t face_at, uint8_t number) const {
        if (Parts::segment && is_segment(face_at)) {
            return GlyphMetrics{segment(face_at, number).advance(), number};
        }
        const FaceMetrics<Image> face_metrics{rom, face_at};
        if (is_in_context(face_at)) {
            return Contexts::metrics(rom, face_at, number);
        }
        return any_other ? face_metrics.of_others(number) : GlyphMetrics{};
    }
    SegmentShape segment(uint16_t face_at, uint8_t number) const {
        return SegmentShape{rom.u8(word(face_at + face::advance)),
                            rom.u8(word(face_at + face::height)),
                            rom.u8(word(face_at + face::parameters)),
                            rom.u8(word(face_at + face::segment_gap)),
                            number};
    }

    __attribute__((noinline)) void send_glyph(uint16_t face_at,
                                              GlyphMetrics glyph,
                                              Colours colours) {
        const uint8_t rows = rom.u8(word(face_at + face::height));
        const uint8_t times = enlarged(face_at);
        if (Parts::segment && is_segment(face_at)) {
            send_segment_rows<Bus, Parts>(bus_,
                                          colours,
                                          segment(face_at, byte(glyph.at)),
                                          Columns{0, glyph.advance},
                                          RowRange{0, rows},
                                          times);
            return;
        }
        const uint16_t at = glyph.at;
        const Extent extent{glyph.advance, rows, times};
        if (is_smooth(face_at)) {
            const bool is_plain = coding(face_at) == packing::plain;
            send_tones(is_plain ? word(at + 4u) : at,
                       extent,
                       rom.u8(face_at),
                       is_plain ? inked_box(at) : Rect{},
                       shades_between(colours));
        } else if (Parts::context && is_in_context(face_at)) {
            send_contexts(at, glyph.advance, rows, times, colours);
        } else if (Parts::runs && rom.u8(face_at) == packing::runs) {
            send_run_glyph<Bus, Parts>(
                bus_,
                rom,
                RunShape{at, glyph.advance, rows, times, rom.u8(word(face_at + face::parameters))},
                colours);
        } else if (Parts::plain) {
            send_plain(word(at + 4u), extent, inked_box(at), colours);
        }
    }
    Rect inked_box(uint16_t at) const {
        return Rect{
            rom.u8(at), rom.u8(word(at + 1u)), rom.u8(word(at + 2u)), rom.u8(word(at + 3u))};
    }
    void send_tones(uint16_t at,
                    const Extent& extent,
                    uint8_t coding,
                    const Rect& inked,
                    const Shades& shades) {
        const ShadeSender<Bus> out(bus_, shades);
        if (Parts::tones_context && coding == (packing::context | packing::tones)) {
            send_context_tones<Contexts, Parts::context_columns>(rom, at, extent, out);
        } else if (Parts::tones_plain) {
            send_plain_tones(rom, at, extent, inked, out);
        }
    }

    // Each way has its memory for itself: what one needs is not on the stack of another.
    __attribute__((noinline)) void send_change(
        Point at, uint16_t face_at, uint8_t was, uint8_t number, const Colours& colours) {
        if (Parts::segment && is_segment(face_at)) {
            ChangedSegments<Bus, Parts>{bus_, at, enlarged(face_at), colours}.send(
                segment(face_at, number), was);
        } else if (Parts::plain || Parts::runs) {
            send_changed_runs(at, face_at, was, number, colours);
        }
    }
    __attribute__((noinline)) void send_changed_runs(
        Point at, uint16_t face_at, uint8_t was, uint8_t number, const Colours& colours) {
        using Changes = ChangedRuns<Bus, Parts>;
        typename Changes::Rows before(rom, face_at, metrics(face_at, was));
        typename Changes::Rows now(rom, face_at, metrics(face_at, number));
        Changes(bus_, at, enlarged(face_at), colours)
            .send(before,
                  now,
                  rom.u8(word(face_at + face::advance)),
                  rom.u8(word(face_at + face::height)));
    }
    __attribute__((noinline)) void send_runs(uint16_t at,
                                             const Extent& extent,
                                             uint8_t k,
                                             const Colours& colours) {
        RowSender<Bus> out(bus_, colours);
        BitBlock<Image>{Bits<Image>(rom, at), extent}.runs(k, out);
        out.finish();
    }
    void send_contexts(uint16_t at, uint8_t columns, uint8_t rows, uint8_t times, Colours colours) {
        if (Contexts::sends && (!Parts::enlarged || times == 1)) {
            Contexts::template send<Parts::context_columns>(rom, at, columns, rows, colours);
        } else {
            send_context_block(at, columns, rows, times, colours);
        }
    }
    __attribute__((noinline)) void send_context_block(
        uint16_t at, uint8_t columns, uint8_t rows, uint8_t times, const Colours& colours) {
        RowSender<Bus> out(bus_, colours);
        ContextBlock<Image, Contexts, Parts::context_columns>(rom, at, columns, rows)
            .send(times, out);
    }
    __attribute__((noinline)) void send_plain(uint16_t at,
                                              const Extent& extent,
                                              const Rect& inked,
                                              const Colours& colours) {
        RowSender<Bus> out(bus_, colours);
        BitBlock<Image>{Bits<Image>(rom, at), extent}.plain(inked, out);
        out.finish();
    }

    Bus bus_;
    uint16_t paints_ = 0;
};

}  // namespace dialplate
