// Meter: a bar that follows a value, with marks, and a mark that stays at the peak for a while.
#pragma once

#include "ui/box.hpp"
#include "ui/image_format.hpp"
#include "ui/job.hpp"
#include "ui/values.hpp"

namespace dialplate {

template <class Bus, class Parts>
struct MeterArt {
    // What is shown: u16 end of the bar, u16 end of the peak mark. What is kept: u16 peak, u8 when it
    // was, in clock ticks.
    static constexpr uint8_t shown_bytes = 7;
    static constexpr uint8_t peak_mark = 2;  // pixels, where the bar has no blocks

    /// A state of the bar, in pixels from its start; `peak` is where the peak mark ends.
    struct Bar {
        uint16_t end, peak;
        bool operator==(const Bar& other) const { return end == other.end && peak == other.peak; }
    };

    struct Form {
        uint8_t value, flags;
        uint8_t ink, ground, unlit, over;
        int32_t from, to;
        Point at;  // of the bar, from the item's corner
        uint16_t length;
        uint8_t thickness;
        uint16_t over_from;
        uint8_t peak_paint, peak_ticks;
        uint8_t block, gap;
        bool upright() const { return Parts::upright && (flags & meter_flag::upright) != 0; }
        bool has_peak() const { return Parts::peak && (flags & meter_flag::peak) != 0; }
        bool has_blocks() const { return Parts::blocks && (flags & meter_flag::blocks) != 0; }
        uint16_t mark_length() const { return has_blocks() ? block : peak_mark; }
    };

    /// Takes the present value into account, and says whether the glass must follow. Called often: the
    /// peak falls back by itself. `waiting`: it will have to be asked again although nothing changed.
    static bool differs(
        Reader from, const Values& values, uint16_t now_ms, uint8_t* shown, bool& waiting) {
        const Form form = read(from);
        const Bar bar = follow(form, values, now_ms, shown);
        waiting = waiting || (form.has_peak() && bar.peak > bar.end);
        return !(bar == on_glass(shown));
    }

    static void begin(
        Reader from, const Values& values, uint16_t now_ms, uint8_t* shown, Job& job) {
        const Bar bar = follow(read(from), values, now_ms, shown);
        job.target = bar.peak;
        job.cells = bar.end;
    }

    static void commit(const Job& job, uint8_t* shown) {
        Values::store_word(shown, job.cells);
        Values::store_word(shown + 2, word(static_cast<uint32_t>(job.target)));
    }

    static void draw(
        Pen<Bus, Parts>& pen, Rect r, Reader from, const uint8_t* shown, const Job& job) {
        const Form form = read(from);
        const Bar is{job.cells, word(static_cast<uint32_t>(job.target))};
        if (job.whole) {
            draw_surroundings(pen, form, r, from);
        }
        uint16_t next = 0;
        for (uint16_t at = 0; at < form.length; at = next) {
            next = form.length;
            stop_at(next, at, is, form);
            const uint8_t paint = paint_at(form, is, at);
            bool changed = job.whole;
            if (!job.whole) {
                const Bar was = on_glass(shown);
                stop_at(next, at, was, form);
                changed = paint != paint_at(form, was, at);
            }
            if (changed) {
                draw_run(pen, form, r, at, next, pen.colour(paint), job.whole);
            }
        }
    }

private:
    static Form read(Reader& from) {
        Form form{};
        form.value = from.u8();
        form.flags = from.u8();
        form.ink = from.u8();
        form.ground = from.u8();
        form.unlit = from.u8();
        form.over = from.u8();
        form.from = from.i32();
        form.to = from.i32();
        form.at = read_point(from);
        form.length = from.u16();
        form.thickness = from.u8();
        form.over_from = from.u16();
        if (form.has_peak()) {
            form.peak_paint = from.u8();
            form.peak_ticks = from.u8();
        }
        if (form.has_blocks()) {
            form.block = from.u8();
            form.gap = from.u8();
        }
        return form;
    }

    static Bar on_glass(const uint8_t* shown) {
        return Bar{Values::load_word(shown), Values::load_word(shown + 2)};
    }

    static uint16_t pixels(const Form& form, int32_t value) {
        const int32_t inside = value < form.from ? form.from : value > form.to ? form.to : value;
        uint16_t end = word(static_cast<uint32_t>(inside - form.from) * form.length /
                            static_cast<uint32_t>(form.to - form.from));
        if (form.has_blocks()) {
            const uint16_t pitch = word(static_cast<uint32_t>(form.block) + form.gap);
            end = word(static_cast<uint32_t>(end) +
                       form.gap);  // the last block needs no gap after it
            end = word(static_cast<uint32_t>(end) - end % pitch);
        }
        return end;
    }

    static Bar follow(const Form& form, const Values& values, uint16_t now_ms, uint8_t* shown) {
        Bar bar{pixels(form, values.get(form.value)), 0};
        if (!form.has_peak()) {
            return bar;
        }
        const uint8_t now = byte(now_ms / clock_tick_ms);
        const uint16_t kept = Values::load_word(shown + 4);
        const bool over = byte(now - static_cast<uint32_t>(shown[6])) >= form.peak_ticks;
        if (bar.end >= kept || over) {
            Values::store_word(shown + 4, bar.end);
            shown[6] = now;
            bar.peak = bar.end;
        } else {
            bar.peak = kept;
        }
        return bar;
    }

    // The nearest place after `at` where the paint may change.
    static void stop_at(uint16_t& next, uint16_t at, const Bar& bar, const Form& form) {
        const uint16_t places[] = {bar.end, bar.peak, peak_start(form, bar), form.over_from};
        for (const uint16_t place : places) {
            if (place > at && place < next) {
                next = place;
            }
        }
    }
    static uint16_t peak_start(const Form& form, const Bar& bar) {
        const uint16_t length = form.mark_length();
        const uint16_t end =
            form.has_blocks() ? word(static_cast<uint32_t>(bar.peak) - form.gap) : bar.peak;
        return bar.peak == 0
                   ? uint16_t{0}
                   : greater(bar.end, word(static_cast<uint32_t>(end) - smaller(end, length)));
    }
    static uint8_t paint_at(const Form& form, const Bar& bar, uint16_t at) {
        if (at < bar.end) {
            return at < form.over_from ? form.ink : form.over;
        }
        if (form.has_peak() && at < bar.peak && at >= peak_start(form, bar)) {
            return form.peak_paint;
        }
        return form.unlit;
    }

    // Pieces from `at` to `end` along the bar in one colour; gaps between blocks only when `whole`.
    static void draw_run(Pen<Bus, Parts>& pen,
                         const Form& form,
                         Rect r,
                         uint16_t at,
                         uint16_t end,
                         uint16_t colour,
                         bool whole) {
        if (!form.has_blocks()) {
            pen.fill(part(form, r, at, end), colour);
            return;
        }
        const uint16_t pitch = word(static_cast<uint32_t>(form.block) + form.gap);
        const uint16_t ground = pen.colour(form.ground);
        while (at < end) {
            const uint16_t into = word(at % pitch);
            const bool lit = into < form.block;
            const uint16_t stop =
                smaller(end, word(static_cast<uint32_t>(at) - into + (lit ? form.block : pitch)));
            if (lit) {
                pen.fill(part(form, r, at, stop), colour);
            } else if (whole) {
                pen.fill(part(form, r, at, stop), ground);
            }
            at = stop;
        }
    }

    // The rectangle on the glass of a stretch of the bar.
    static Rect part(const Form& form, Rect r, uint16_t at, uint16_t end) {
        const uint16_t x = word(static_cast<uint32_t>(r.x) + form.at.x);
        const uint16_t y = word(static_cast<uint32_t>(r.y) + form.at.y);
        const uint16_t length = word(end - static_cast<uint32_t>(at));
        if (form.upright()) {
            return Rect{
                x, word(static_cast<uint32_t>(y) + form.length - end), form.thickness, length};
        }
        return Rect{word(static_cast<uint32_t>(x) + at), y, length, form.thickness};
    }

    // Everything of the item but the bar: marks with their labels, and the ground between.
    static void draw_surroundings(Pen<Bus, Parts>& pen, const Form& form, Rect r, Reader from) {
        const uint16_t ground = pen.colour(form.ground);
        // Across the bar: what is before it, and after it; along it: its two ends.
        Rect bar = part(form, r, 0, form.length);
        const uint16_t right = word(static_cast<uint32_t>(r.x) + r.w),
                       below = word(static_cast<uint32_t>(r.y) + r.h);
        const uint16_t bar_right = word(static_cast<uint32_t>(bar.x) + bar.w);
        const uint16_t bar_below = word(static_cast<uint32_t>(bar.y) + bar.h);
        Rect before, after;
        if (form.upright()) {
            pen.fill(Rect{bar.x, r.y, bar.w, word(bar.y - static_cast<uint32_t>(r.y))}, ground);
            pen.fill(Rect{bar.x, bar_below, bar.w, word(below - static_cast<uint32_t>(bar_below))},
                     ground);
            before = Rect{r.x, r.y, word(bar.x - static_cast<uint32_t>(r.x)), r.h};
            after = Rect{bar_right, r.y, word(right - static_cast<uint32_t>(bar_right)), r.h};
        } else {
            pen.fill(Rect{r.x, bar.y, word(bar.x - static_cast<uint32_t>(r.x)), bar.h}, ground);
            pen.fill(Rect{bar_right, bar.y, word(right - static_cast<uint32_t>(bar_right)), bar.h},
                     ground);
            before = Rect{r.x, r.y, r.w, word(bar.y - static_cast<uint32_t>(r.y))};
            after = Rect{r.x, bar_below, r.w, word(below - static_cast<uint32_t>(bar_below))};
        }
        if (!Parts::marks || (form.flags & meter_flag::marks) == 0) {
            pen.fill(before, ground);
            pen.fill(after, ground);
        } else if (form.flags & meter_flag::marks_after) {
            pen.fill(before, ground);
            draw_marks(pen, form, r, after, from, bar);
        } else {
            pen.fill(after, ground);
            draw_marks(pen, form, r, before, from, bar);
        }
    }

    // Marks in `strip`, the rectangle beside the bar: ticks next to the bar, then labels.
    static void draw_marks(
        Pen<Bus, Parts>& pen, const Form& form, Rect r, Rect strip, Reader from, Rect bar) {
        const uint8_t tick = from.u8(), face = from.u8(), paint = from.u8(), count = from.u8();
        const uint16_t ground = pen.colour(form.ground), ink = pen.colour(paint);
        const bool after = (form.flags & meter_flag::marks_after) != 0;
        Rect ticks = strip, labels = strip;
        if (form.upright()) {
            ticks.w = tick;
            labels.w = word(labels.w - static_cast<uint32_t>(tick));
            (after ? labels.x : ticks.x) =
                word(strip.x + static_cast<uint32_t>(after ? ticks.w : labels.w));
        } else {
            ticks.h = tick;
            labels.h = word(labels.h - static_cast<uint32_t>(tick));
            (after ? labels.y : ticks.y) =
                word(strip.y + static_cast<uint32_t>(after ? ticks.h : labels.h));
        }
        draw_ticks(pen, form, ticks, from, count, Colours{ink, ground}, bar);
        draw_labels(pen, form, r, labels, from, count, pen.face_at(face), Colours{ink, ground});
    }

    static void draw_ticks(Pen<Bus, Parts>& pen,
                           const Form& form,
                           Rect strip,
                           Reader from,
                           uint8_t count,
                           Colours colours,
                           Rect bar) {
        const bool up = form.upright();
        uint16_t at = up ? strip.y : strip.x;
        const uint16_t end = word(static_cast<uint32_t>(at) + (up ? strip.h : strip.w));
        for (; count != 0; --count) {
            const uint16_t along = from.u16();
            from.skip(point_bytes + 2);
            const uint16_t place =
                up ? word(static_cast<uint32_t>(bar.y) + form.length - 1u - along)
                   : word(static_cast<uint32_t>(bar.x) + along);
            pen.fill(stretch(strip, up, at, place), colours.ground);
            pen.fill(stretch(strip, up, place, word(place + 1u)), colours.ink);
            at = word(place + 1u);
        }
        pen.fill(stretch(strip, up, at, end), colours.ground);
    }

    static Rect stretch(Rect strip, bool up, uint16_t from, uint16_t to) {
        const uint16_t length = to > from ? word(to - static_cast<uint32_t>(from)) : uint16_t{0};
        return up ? Rect{strip.x, from, strip.w, length} : Rect{from, strip.y, length, strip.h};
    }

    // Labels in drawing order: left to right, or for an upright meter top to bottom.
    static void draw_labels(Pen<Bus, Parts>& pen,
                            const Form& form,
                            Rect r,
                            Rect strip,
                            Reader from,
                            uint8_t count,
                            uint16_t face_at,
                            Colours colours) {
        const uint16_t rows = pen.height(face_at);
        const uint16_t right = word(static_cast<uint32_t>(strip.x) + strip.w);
        const uint16_t below = word(static_cast<uint32_t>(strip.y) + strip.h);
        uint16_t x = strip.x, y = strip.y;
        bool in_row = false;  // labels of a lying meter share one row
        for (; count != 0; --count) {
            from.skip(2);
            const Point off = read_point(from);
            const uint16_t text = from.u16();
            if (text == 0) {
                continue;
            }
            const Point at{word(static_cast<uint32_t>(r.x) + off.x),
                           word(static_cast<uint32_t>(r.y) + off.y)};
            if (!in_row) {
                pen.fill(Rect{strip.x, y, strip.w, word(at.y - static_cast<uint32_t>(y))},
                         colours.ground);
                x = strip.x;
                y = at.y;
            }
            pen.fill(Rect{x, y, word(at.x - static_cast<uint32_t>(x)), rows}, colours.ground);
            x = draw_text(pen, at, face_at, text, colours);
            in_row = !form.upright();
            if (!in_row) {
                pen.fill(Rect{x, y, word(right - static_cast<uint32_t>(x)), rows}, colours.ground);
                y = word(static_cast<uint32_t>(y) + rows);
            }
        }
        if (in_row) {
            pen.fill(Rect{x, y, word(right - static_cast<uint32_t>(x)), rows}, colours.ground);
            y = word(static_cast<uint32_t>(y) + rows);
        }
        pen.fill(Rect{strip.x, y, strip.w, word(below - static_cast<uint32_t>(y))}, colours.ground);
    }
};

}  // namespace dialplate
