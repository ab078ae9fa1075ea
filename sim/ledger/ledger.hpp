// The ledger: what a layout costs in flash, RAM and time on the receiver, item by item.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"

#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// How firm a figure is: `exact` follows from the layout alone; `measured` was taken from compiled code
/// for this microcontroller; `estimate` was carried over from another one, or derived.
enum class Standing { exact, measured, estimate };

const char* name_of(Standing standing);

/// A part of the program that was sized once by compiling it, not from this layout.
struct CodeSize {
    Bytes bytes;
    Standing standing = Standing::estimate;
    std::string basis;  ///< What the figure stands on, one sentence.
};

/// Program memory. `image` is the sum of faces, pictures, pages, texts, contexts and `rest`;
/// `total` = engine + driver + touch + image; `left` = capacity - boot - taken - total, negative when it does
/// not fit.
struct FlashAccount {
    Bytes capacity;  ///< All the flash of the part.
    Bytes boot;      ///< Kept by the boot loader that is usual with it.
    Bytes taken;     ///< By the rest of the program, as the layout says.
    CodeSize engine;
    CodeSize driver;
    CodeSize touch;  ///< Reading the touch sheet; 0 without keys.
    std::vector<FaceCost> faces;
    std::vector<PictureCost> pictures;
    Bytes pages, texts;
    Bytes contexts;  ///< Table of the packing `context`; 0 without.
    Bytes rest;      ///< Header, tables of paints and values.
    Bytes image;
    Bytes total;
    Bytes left;
};

/// Data memory. `engine` holds the values and what is on the glass; `total` = engine + stack, as they are expected;
/// `left` = capacity - taken - total - margin.
struct RamAccount {
    Bytes capacity;
    Bytes taken;
    Bytes engine;
    CodeSize stack;
    Bytes total;
    Bytes margin;  ///< Kept free, should the stack be deeper than expected.
    Bytes left;
};

/// What kind of thing happened, for judging how long it may take.
enum class EventKind { tuning, key, value, page };

const char* name_of(EventKind kind);

/// Something that happens on the receiver and what the display costs then.
struct EventTime {
    EventKind kind = EventKind::value;
    int page =
        0;  ///< On which it happens; an event of several pages is listed where it costs most.
    std::string event;  ///< Short name: "tuning step", "worst carry", "page bands", ...
    std::string what;   ///< What was done for it, for people.
    Bytes bus_bytes;
    std::int64_t pixels = 0;
    std::int64_t windows = 0;
    Cycles cycles;  ///< Of the microcontroller, bus and decoding together.
    Milliseconds time;
    double share_of_limit =
        0;  ///< Time that the bus alone would need at its clock, as part of `time`; 0..1.
    Milliseconds longest_slice;  ///< Longest piece after which the sketch gets control back.
    Standing standing = Standing::estimate;
    std::string basis;
};

struct Ledger {
    std::string mcu;
    Hertz clock;
    FlashAccount flash;
    RamAccount ram;
    std::vector<EventTime> time;

    [[nodiscard]] bool flash_fits() const { return flash.left.value >= 0; }
    [[nodiscard]] bool ram_fits() const { return ram.left.value >= 0; }
    /// The longest of the events that follow a turn of the tuning knob; null without a frequency.
    [[nodiscard]] const EventTime* slowest_tuning() const;
    /// The longest event of all; null for a layout in which nothing ever happens.
    [[nodiscard]] const EventTime* slowest() const;
};

/// The flash alone, which needs no run.
/// @pre `built` was made from `layout` without errors.
FlashAccount flash_account(const Layout& layout, const BuiltImage& built);

/// Accounts for a layout. Flash is exact for the image; engine, driver and stack carry their standing.
/// The time comes from running the prototype through each event once.
/// @pre `built` was made from `layout` without errors.
Ledger account(const Layout& layout, const BuiltImage& built);

}  // namespace dialplate
