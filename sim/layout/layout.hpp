// A layout as values: what a layout document says once it has been read and every name in it resolved.
//
// Coordinates everywhere in this project: origin at the top left of the glass as the reader sees it
// (after `turn`), x to the right, y down, rectangles half-open (left <= x < right), pixel (0, 0) covers
// [0, 1) x [0, 1).
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/units.hpp"

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// A figure of a part with its standing, as layouts/parts/*.json states it.
struct SourceMark {
    std::string text;      ///< Where the figure comes from.
    std::string standing;  ///< "read", "read, second-hand", "memory" or "derived".
};

enum class BusKind { spi, spi_timed, usart_spi, parallel8 };

/// How one turn of the picture is asked of the controller: set_address_mode and the offset of the
/// glass in the controller's memory.
struct TurnMode {
    std::uint8_t address_mode = 0;  ///< Parameter of set_address_mode (0x36).
    int column_offset = 0;          ///< Added to x before set_column_address.
    int page_offset = 0;            ///< Added to y before set_page_address.
};

/// A display module: data-sheet figures, unturned (as the controller scans it).
struct Display {
    std::string name;
    std::string controller;  ///< "ILI9341", ...
    int width = 0;           ///< Pixels across, unturned.
    int height = 0;
    Millimetres active_width;  ///< Of the active area, unturned.
    Millimetres active_height;
    int memory_width = 0;  ///< Controller memory, pixels, unturned.
    int memory_height = 0;
    std::array<TurnMode, 4> turns;  ///< For 0, 90, 180, 270 degrees.
    bool inverted = false;          ///< Panel needs enter_invert_mode to show true colours.
    int bytes_per_pixel = 2;        ///< On the serial bus: 2 (RGB565) or 3 (18 bit).
    std::optional<double> luminance_cd_m2;
    std::optional<double> panel_contrast;        ///< Dark-room ratio.
    std::optional<double> serial_write_ns;       ///< Least serial write cycle.
    std::optional<double> parallel_write_ns;     ///< Least 8080 write cycle.
    std::optional<double> logic_supply_max_v;    ///< Recommended upper limit.
    std::optional<double> logic_absolute_max_v;  ///< Absolute maximum rating.
    std::optional<double> backlight_ma;
    std::optional<double> reflectance;          ///< Diffuse, of the dark glass, 0..1.
    std::map<std::string, SourceMark> sources;  ///< By member name of the part file.
};

/// A supply and the greatest clock that is safe at it.
struct SpeedGrade {
    double volts = 0;
    Hertz clock;
};

/// A microcontroller: data-sheet figures.
struct Mcu {
    std::string name;
    std::string family;  ///< "avr", "avr-mapped", "cortex-m0plus", "cortex-m3", "xtensa".
    Bytes flash;
    Bytes ram;
    Bytes boot;  ///< Flash kept by the boot loader that is usual with it.
    Hertz clock_max;
    std::optional<Bytes> object_max;  ///< Greatest single object the compiler can place.
    /// By rising supply, the least one first; straight lines between. Empty: not known.
    std::vector<SpeedGrade> speed_grades;
    std::map<std::string, SourceMark> sources;
};

struct Bus {
    BusKind kind = BusKind::spi;
    Hertz clock;  ///< Serial clock, or write strobes a second for `parallel8`.
};

struct Taken {
    Bytes flash;  ///< Used by the rest of the program.
    Bytes ram;
};

struct Viewing {
    Millimetres distance{500.0};  ///< Eye to glass. Default: standards LEG-22.
    Degrees tilt{0.0};            ///< Line of sight off the normal, about the horizontal axis.
    Lux light{300.0};             ///< Illuminance on the glass.
};

/// The hole in the front panel, measured on the glass: the opening's rectangle in millimetres from
/// the top left corner of the active area (negative: the opening shows more than the active area).
struct Opening {
    Millimetres left, top, width, height;
    Millimetres depth;    ///< Front of the bezel to the glass.
    Millimetres overlap;  ///< Width of the bezel trim around the opening, for drawing.
};

/// How the display is wired to the microcontroller, as far as the layout says.
struct Wiring {
    enum class Backlight { unstated, logic_pin, switched, supply };

    std::optional<double> supply_v;             ///< Of the microcontroller.
    std::optional<bool> level_shifted;          ///< Every line into the display is shifted.
    Backlight backlight = Backlight::unstated;  ///< What feeds the back-light.
};

/// Finger and timing figures for keys.
struct Touch {
    int hold_ms = 700;          ///< Press to hold event, 20..5000.
    int repeat_after_ms = 500;  ///< Press to first repeat, 20..5000.
    int repeat_every_ms = 120;  ///< Between repeats, 20..5000.
    /// Standard deviation of where a finger lands, each way (standards TCH-22: no agreed value).
    Millimetres scatter{1.5};
    Millimetres finger{10.0};  ///< Diameter of the pad of the finger that touches.
};

using PaintId = int;  ///< Index into Layout::paints.
using FaceId = int;   ///< Index into Layout::faces.
using ValueId = int;  ///< Index into Layout::values.

/// A named colour: as typed, and as the display holds it.
struct Paint {
    std::string name;
    std::uint32_t rgb888 = 0;           ///< As typed, 0xRRGGBB.
    std::uint16_t rgb565 = 0;           ///< As stored and drawn (standards C565-01).
    std::vector<std::uint16_t> others;  ///< rgb565 in each further palette, in order.
    std::string pointer;
};

enum class FaceKind { raster, segment };
enum class PackingWish { automatic, plain, runs, context };

/// What may be put in a face's place when the layout is fitted to a flash budget.
struct Latitude {
    std::vector<std::string> files;  ///< Other fonts; the face's own always counts.
    int least_size = 0;              ///< Inclusive; 0: the size stays.
    int greatest_size = 0;           ///< Inclusive.
    bool smooth = false;             ///< Whether it may become smoothed, or cease to be.
};

/// A font at one size.
struct Face {
    std::string name;
    FaceKind kind = FaceKind::raster;
    std::string file;  ///< As written; found beside the layout, in fonts/, or by absolute path.
    int size = 0;      ///< Em size in pixels for outlines; strike height for BDF; unscaled.
    int scale = 1;     ///< Enlarged 1..4 times.
    int spacing = 0;   ///< Blank columns more to the right of each character, before enlarging.
    PackingWish packing = PackingWish::automatic;
    bool smooth = false;  ///< Four tones between ground and ink instead of two.
    std::optional<Latitude> latitude;
    // Segment digits, from geometry:
    int segment_width = 0;  ///< Cell width without the gap to the next digit.
    int segment_height = 0;
    int segment_stroke = 0;
    int segment_gap = 0;  ///< Blank columns to the right of each digit.
    std::string pointer;
};

enum class ValueType { number, choice, flag, level };

/// What the simulated receiver plays on a value.
enum class Role {
    none,
    frequency,
    step,
    band,
    mode,
    bandwidth,
    attenuator,
    signal,
    clock_hours,
    clock_minutes,
    clock_seconds,
};

/// One state of a `choice` value.
struct Choice {
    std::string text;
    std::optional<std::int32_t>
        number;  ///< What it stands for, in the value's unit: a band's first
                 ///< frequency, a step in hertz, an attenuation in dB.
    std::optional<std::int32_t> low, high;  ///< A band's edges.
    std::optional<std::string> mode;        ///< A band's usual mode.
    std::string pointer;
};

/// What the receiver tells the display.
struct Value {
    std::string name;
    ValueType type = ValueType::number;
    std::string unit;  ///< numbers and levels: "Hz", "dB", "dBm"; may be empty.
    Role role = Role::none;
    std::int32_t min = 0;  ///< number, level: inclusive. choice: 0. flag: 0.
    std::int32_t max = 0;  ///< choice: count - 1. flag: 1. Levels fit 16 bits.
    std::int32_t start = 0;
    std::vector<Choice> choices;
    std::optional<double> per_second;  ///< How often it changes at its fastest.
    std::string pointer;
};

/// Rectangle on the glass in pixels; half-open.
struct Box {
    int x = 0, y = 0, width = 0, height = 0;
    [[nodiscard]] constexpr int right() const { return x + width; }
    [[nodiscard]] constexpr int bottom() const { return y + height; }
    friend constexpr bool operator==(const Box&, const Box&) = default;
};

enum class Align { left, centre, right };

/// Ink, fill and edge of a key or lamp in one state.
struct Tones {
    PaintId ink = 0, fill = 0, edge = 0;
};

/// How keys look in their four states; shared by name.
struct Look {
    std::string name;
    Tones idle, pressed, active, disabled;
    std::string pointer;
};

/// What a key does in the simulator. On the receiver the same key is an event; only `page` is acted
/// upon by the engine itself.
enum class ActionKind { none, set, step, toggle, page };
struct Action {
    ActionKind kind = ActionKind::none;
    ValueId value = 0;        ///< set, step, toggle.
    std::int32_t amount = 0;  ///< set: the value (choice index, number); step: by how much.
    bool around = false;      ///< step: wrap at the ends.
    int page = 0;             ///< page: index into Layout::pages.
    std::string pointer;
};

/// A number in groups: the frequency.
struct Readout {
    ValueId value = 0;
    FaceId face = 0;
    PaintId ink = 0, ground = 0;
    std::vector<int>
        groups;  ///< Digits per group, left to right; their sum is the digit count, <= 10.
    std::string separator;  ///< One character between groups; empty: none.
    int drop = 0;           ///< Trailing decimal digits not shown, 0..9.
    int least = 1;          ///< Digits always shown; those to their left are blank when zero.
    Align align = Align::right;
    std::string unit;  ///< Text after the number, in unit_face.
    FaceId unit_face = 0;
    PaintId unit_ink = 0;
    std::optional<ValueId> tuning;  ///< The value that holds the tuning step; its digit is marked.
    enum class Mark { underline, invert } mark = Mark::underline;
    std::optional<Milliseconds> within;  ///< Time that a change of one digit may take.
};

struct Key {
    std::string text;  ///< One to three lines, separated by a line feed.
    FaceId face = 0;
    int look = 0;    ///< Index into Layout::looks.
    int radius = 0;  ///< Corner radius, 0: square.
    int edge = 1;    ///< Edge width, 0..8.
    Action tap, hold;
    bool repeat = false;                  ///< Repeats `tap` while held.
    std::optional<ValueId> active_value;  ///< Drawn active while this value equals active_at.
    std::int32_t active_at = 0;
    std::optional<ValueId> enabled_by;  ///< A flag; disabled while it is off.
};

struct Legend {
    std::string text;  ///< One to three lines.
    FaceId face = 0;
    PaintId ink = 0, ground = 0;
    Align align = Align::left;
};

/// Shows one state of a value: either lit while the value equals `when`, or the present choice's own
/// words.
struct Lamp {
    ValueId value = 0;
    std::optional<std::int32_t>
        when;          ///< Lit at this value; absent: shows the present choice's text.
    std::string text;  ///< With `when`: the words in it.
    FaceId face = 0;
    Tones lit, unlit;
    int radius = 0;
    int edge = 0;
};

struct MeterMark {
    std::int32_t at = 0;
    std::string text;  ///< May be empty: a tick alone.
    std::string pointer;
};

struct Meter {
    ValueId value = 0;  ///< number or level.
    std::int32_t from = 0, to = 0;
    int bar = 8;  ///< Height of the bar (width, if upright), px.
    bool upright = false;
    int block = 0;  ///< Block length, px; 0: a solid bar.
    int gap = 0;    ///< Blank between blocks.
    PaintId ink = 0, ground = 0, unlit = 0;
    PaintId over = 0;            ///< Ink beyond `over_from`.
    std::int32_t over_from = 0;  ///< Above `to`: never.
    bool peak = false;
    PaintId peak_ink = 0;
    int peak_hold_ms = 1000;
    std::vector<MeterMark> marks;
    FaceId face = 0;  ///< Of the marks.
    PaintId mark_ink = 0;
    int tick = 4;  ///< Length of a mark's tick, px.
};

/// A moving tuning scale.
struct Scale {
    ValueId value = 0;  ///< number.
    bool tape = true;   ///< true: the tape moves under a fixed pointer; false: the pointer moves.
    std::int32_t per_pixel = 1;            ///< Units a pixel.
    std::int32_t from = 0;                 ///< Moving pointer: the value at the left end.
    std::int32_t minor = 10, major = 100;  ///< Units between ticks; multiples of per_pixel.
    std::int32_t divide = 1;               ///< Label shows value / divide ...
    int decimals = 0;  ///< ... with so many decimals of that quotient's last digits.
    int minor_tick = 4, major_tick = 8;
    FaceId face = 0;
    PaintId ink = 0, ground = 0, label_ink = 0, pointer_ink = 0;
};

struct Picture {
    std::string file;  ///< PNG, 1-bit reduction at half luminance; beside the layout.
    PaintId ink = 0, ground = 0;
    std::vector<PaintId> tones;  ///< Four paints from ground to ink, 2 bits a pixel; empty: 1 bit.
    PackingWish packing = PackingWish::automatic;
};

/// A box or a rule. Items may lie inside a filled frame: its fill is then their backdrop.
struct Frame {
    PaintId ink = 0;
    int line = 1;                 ///< Edge width; 0: none.
    std::optional<PaintId> fill;  ///< Absent: what is behind shows through.
};

enum class ItemKind { readout, key, legend, lamp, meter, scale, picture, frame };

/// One thing drawn on a page. Exactly the member named by `kind` is meaningful.
struct Item {
    ItemKind kind = ItemKind::legend;
    std::string name;  ///< As written, or made from kind and number.
    Box box;
    Readout readout;
    Key key;
    Legend legend;
    Lamp lamp;
    Meter meter;
    Scale scale;
    Picture picture;
    Frame frame;
    std::string pointer;
};

struct Page {
    std::string name;
    PaintId ground = 0;
    std::vector<Item> items;
    std::string pointer;
};

struct Waiver {
    std::string rule;
    std::string item;  ///< JSON Pointer; empty: wherever the rule speaks.
    std::string reason;
    std::string pointer;
};

/// A figure of a rule that the layout sets for itself.
struct Threshold {
    std::string rule;    ///< "touch-size"
    std::string figure;  ///< Name of the figure, as the rule lists it.
    double value = 0;    ///< In the figure's own unit.
    std::string pointer;
};

struct Layout {
    std::string file;       ///< As given on the command line; "-" is standard input.
    std::string directory;  ///< Where relative file names are looked up.
    std::string title;
    Display display;
    int turn = 0;  ///< 0, 90, 180, 270.
    Mcu mcu;
    Hertz clock;  ///< Of the microcontroller.
    Bus bus;
    Taken taken;
    Viewing viewing;
    std::optional<Opening> opening;
    Touch touch;
    Wiring wiring;
    std::string profile;                ///< Set of thresholds for the rules; empty: "bench".
    std::vector<Threshold> thresholds;  ///< Over those of the profile.
    int region = 1;                     ///< ITU Region for band edges, 1..3.
    std::vector<Paint> paints;
    std::vector<std::string> palettes;  ///< Names; the first is the paints as typed, "main".
    std::vector<Look> looks;
    std::vector<Face> faces;
    std::vector<Value> values;
    std::vector<Page> pages;
    std::vector<Waiver> waived;
    std::map<std::string, Place> places;  ///< By JSON Pointer: where each member's value starts.

    /// Size of the glass as the reader sees it, turned.
    [[nodiscard]] int glass_width() const {
        return turn % 180 == 0 ? display.width : display.height;
    }
    [[nodiscard]] int glass_height() const {
        return turn % 180 == 0 ? display.height : display.width;
    }
    /// Pixel pitch, across and down, as the reader sees it.
    [[nodiscard]] Millimetres pitch_x() const;
    [[nodiscard]] Millimetres pitch_y() const;
};

}  // namespace dialplate
