// What is played on the engine in the simulator and on the emitted one, and what of it is compared: two programs, each
// with its own engine. C++14, as the emitted code.
#pragma once

#include <initializer_list>
#include <stdint.h>

namespace bus_traffic {

/// A checksum of all windows and pixels, however the pixels came in pushes. The parameters of FNV-1a, 64 bits: 2^40 +
/// 2^8 + 0xb3 and 14695981039346656037.
struct Record {
    uint64_t print = 0xCBF29CE484222325U;
    long pixels = 0, windows = 0;
    uint16_t colour = 0;  ///< Of the latest pixels,
    long alike = 0;       ///< and how many these are.

    void add(uint64_t word) { print = (print ^ word) * 0x100000001B3U; }
    void end_run() {
        add(colour);
        add(static_cast<uint64_t>(alike));
        alike = 0;
    }
    /// The checksum of everything; once, at the end.
    uint64_t finished() {
        end_run();
        return print;
    }
};

struct RecordingBus {
    Record* record;
    void window(uint16_t x, uint16_t y, uint16_t w, uint16_t h) {
        record->end_run();
        ++record->windows;
        for (const uint16_t word : {x, y, w, h})
            record->add(word);
    }
    void push(uint16_t colour, uint16_t count) {
        record->pixels += count;
        if (colour != record->colour) record->end_run();
        record->colour = colour;
        record->alike += count;
    }
};

/// Of a value.
struct Range {
    int32_t start, min, max;
};

/// Start values, every page; then each value to its ends and back, drawn after each, on every page; and taps all over.
template <class Point, class Event, class Screen>
void play(Screen& screen, const Range* ranges, int values, int pages) {
    uint16_t now = 0;
    const auto settle = [&] {
        while (screen.service(now)) {
        }
        now = static_cast<uint16_t>(now + 10);
    };
    for (int v = 0; v < values; ++v)
        screen.set(static_cast<uint8_t>(v), ranges[v].start);
    for (int p = 0; p < pages; ++p) {
        screen.show_page(static_cast<uint8_t>(p));
        settle();
        for (int v = 0; v < values; ++v) {
            for (const int32_t to : {ranges[v].max, ranges[v].min, ranges[v].start}) {
                screen.set(static_cast<uint8_t>(v), to);
                settle();
            }
        }
        for (uint16_t x = 0; x < 480; x = static_cast<uint16_t>(x + 61)) {
            for (uint16_t y = 0; y < 480; y = static_cast<uint16_t>(y + 53)) {
                screen.touch(Point{x, y});
                settle();
                now = static_cast<uint16_t>(now + 1000);
                settle();
                screen.lift();
                settle();
                Event event;
                while (screen.next_event(event)) {
                }
                screen.show_page(static_cast<uint8_t>(p));
            }
        }
    }
}

}  // namespace bus_traffic
