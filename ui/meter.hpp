// Meter: a bar that follows a value, and a mark that stays at the peak for a while. Its marks and labels
// never change and belong to the page.
#pragma once

#include "ui/image_format.hpp"
#include "ui/job.hpp"
#include "ui/pen.hpp"
#include "ui/values.hpp"

namespace dialplate {

template <class Bus, class Parts>
struct MeterArt {
    using Brush = Pen<Bus, Parts>;
    using State = Values<typename Brush::Image>;
    using Image = typename Brush::Image;

    // What is shown: u16 end of the bar, u16 end of the peak mark. What is kept: u16 the peak, u8 when it
    // was, in clock ticks.
    static constexpr uint8_t shown_bytes = Parts::peak ? 4 : 2, kept_bytes = Parts::peak ? 3 : 0;
    static constexpr uint8_t peak_mark = 2;  // pixels, where the bar has no blocks

    /// There is no peak yet.
    static void forget(Spot item) {
        if (Parts::peak) {
            State::store_word(item.shown + 4, 0);
        }
    }

    /// Takes the present value into account. Called often, for the peak falls back by itself; `waiting` is
    /// set if it will have to be asked again.
    static void plan(const Image& rom,
                     const State& values,
                     uint16_t now_ms,
                     Spot item,
                     Job& job,
                     bool& waiting) {
        const Bar bar = follow(rom, values, now_ms, item);
        waiting = waiting || bar.peak > bar.end;
        State::store_word(job.next, bar.end);
        if (Parts::peak) {
            State::store_word(job.next + 2, bar.peak);
        }
    }

    /// Sends the runs of one paint that differ. The turn of the pieces is the place along the bar, so that
    /// no slice looks at what earlier ones have dealt with.
    __attribute__((noinline)) static void draw(Brush& pen, Spot item, const Job& job) {
        const Image& rom = pen.rom;
        const Rect r = read_rect(rom, word(item.at + item::place));
        const uint8_t flags = rom.u8(word(item.at + meter::flags));
        const bool upright = Parts::upright && (flags & meter::upright);
        const uint16_t length = upright ? r.h : r.w;
        const uint16_t breadth = upright ? r.w : r.h;
        const Bar is = bar(job.next);
        // After a turn of the page, what was shown is another page's.
        const Bar was = job.whole ? is : bar(item.shown);
        uint16_t next = 0;
        for (uint16_t at = pen.pieces.turn(); at < length; at = next) {
            next = length;
            uint8_t paint = paint_at(rom, item.at, is, at, next);
            const uint8_t paint_was = paint_at(rom, item.at, was, at, next);
            bool changed = job.whole || paint != paint_was;
            if (Parts::blocks && (flags & meter::has_blocks)) {
                const uint8_t block = rom.u8(word(item.at + meter::block));
                const uint8_t pitch =
                    byte(static_cast<unsigned>(block) + rom.u8(word(item.at + meter::gap)));
                const uint8_t into = byte(at % pitch);
                const bool lit = into < block;
                if (changed) {
                    next = smaller(next, word(at - into + (lit ? block : pitch)));
                }
                if (!lit) {
                    paint = rom.u8(word(item.at + meter::gap_paint));
                    changed = job.whole;
                }
            }
            if (changed) {
                const uint16_t run = smaller(pen.pieces.rows_that_fit(breadth), word(next - at));
                if (run == 0) {
                    return;
                }
                const Rect part = upright ? Rect{r.x, word(r.y + length - at - run), r.w, run}
                                          : Rect{word(r.x + at), r.y, run, r.h};
                pen.block(part, pen.colour(paint));
                next = word(at + run);
                pen.pieces.go_on_to(next);
            }
        }
    }

private:
    /// A state of the bar, in pixels from its start; `peak` is where the peak mark ends.
    struct Bar {
        uint16_t end, peak;
    };

    static Bar bar(const uint8_t* shown) {
        const uint16_t end = State::load_word(shown);
        return Bar{end, Parts::peak ? State::load_word(shown + 2) : end};
    }

    static Bar follow(const Image& rom, const State& values, uint16_t now_ms, Spot item) {
        const uint16_t end = pixels(rom, item.at, values.get(rom.u8(word(item.at + meter::value))));
        Bar bar{end, end};
        if (Parts::peak && (rom.u8(word(item.at + meter::flags)) & meter::has_peak)) {
            const uint8_t now = static_cast<uint8_t>(now_ms / clock_tick_ms);
            const uint16_t kept = State::load_word(item.shown + 4);
            if (end >= kept || byte(now - static_cast<unsigned>(item.shown[6])) >=
                                   rom.u8(word(item.at + meter::peak_ticks))) {
                State::store_word(item.shown + 4, end);
                item.shown[6] = now;
            } else {
                bar.peak = kept;
            }
        }
        return bar;
    }

    // Where the bar ends for a value. (to - from) x length fits 31 bits: the layout was checked for it.
    static uint16_t pixels(const Image& rom, uint16_t item, int32_t value) {
        const int32_t from = rom.i32(word(item + meter::from));
        const int32_t to = rom.i32(word(item + meter::to));
        const Rect r = read_rect(rom, word(item + item::place));
        const uint8_t flags = rom.u8(word(item + meter::flags));
        const uint16_t length = Parts::upright && (flags & meter::upright) ? r.h : r.w;
        if (value <= from) {
            return 0;
        }
        uint16_t end = length;
        if (value < to) {
            end = static_cast<uint16_t>(static_cast<uint32_t>(value - from) * length /
                                        static_cast<uint32_t>(to - from));
        }
        if (Parts::blocks && (flags & meter::has_blocks)) {
            // Whole blocks only; the last needs no gap after it.
            const uint8_t gap = rom.u8(word(item + meter::gap));
            const uint8_t pitch =
                byte(static_cast<unsigned>(gap) + rom.u8(word(item + meter::block)));
            end = word(end + gap);
            end = word(end - end % pitch);
        }
        return end;
    }

    // The paint at a place along the bar; `next` comes nearer if the paint may change before it.
    static uint8_t paint_at(
        const Image& rom, uint16_t item, const Bar& bar, uint16_t at, uint16_t& next) {
        uint8_t mark = peak_mark, gap = 0;
        if (Parts::blocks && (rom.u8(word(item + meter::flags)) & meter::has_blocks)) {
            mark = rom.u8(word(item + meter::block));
            gap = rom.u8(word(item + meter::gap));
        }
        const uint16_t mark_end = word(bar.peak - gap);
        const uint16_t mark_start =
            bar.peak > bar.end ? greater(bar.end, word(mark_end - mark)) : bar.peak;
        const uint16_t over_from = rom.u16(word(item + meter::over_from));
        const uint16_t stops[] = {bar.end, bar.peak, mark_start, over_from};
        for (const uint16_t stop : stops) {
            if (stop > at && stop < next) {
                next = stop;
            }
        }
        return rom.u8(word(item + (at < bar.end       ? at < over_from ? meter::ink : meter::over
                                   : at >= bar.peak   ? meter::unlit
                                   : at >= mark_start ? meter::peak
                                                      : meter::unlit)));
    }
};

}  // namespace dialplate
