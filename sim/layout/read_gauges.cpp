// Meters and scales: values along a line.
#include "sim/layout/read_item.hpp"

#include <algorithm>
#include <limits>

namespace dialplate {
namespace {

constexpr MemberName block_members[] = {{"size", true}, {"gap"}};
constexpr MemberName over_members[] = {{"from", true}, {"ink", true}};
constexpr MemberName peak_members[] = {{"ink", true}, {"hold_ms"}};
constexpr MemberName mark_members[] = {{"at", true}, {"text"}};

// The engine multiplies a value's distance from `from` by the bar's length in 32 bits.
constexpr std::int64_t largest_product = std::numeric_limits<std::int32_t>::max();

void read_marks(const Members& members, Meter& meter, const Draft& draft) {
    const Node* const list = members.list("marks", {0, most_meter_marks});
    bool words = false;
    for (std::size_t i = 0; list != nullptr && i < list->elements.size(); ++i) {
        const std::string pointer = members.pointer_of("marks") + pointer_part(i);
        const Members entry(
            list->elements[i], pointer, {"mark of a meter"}, mark_members, draft.mistakes);
        MeterMark mark;
        mark.at =
            entry.whole_or("at", {meter.from, meter.to, "the meter's from and to"}, meter.from);
        mark.text = entry.text("text", {.most = 20}).value_or("");
        mark.pointer = pointer;
        words = words || !mark.text.empty();
        meter.marks.push_back(std::move(mark));
    }
    meter.face = draft.faces.find_or(members, "face", 0);
    if (words && !members.has("face")) {
        members.fail_whole("missing-member", "lacks \"face\" for the words of its marks");
    }
}

// from and to: the value's own range if left out.
bool read_ends(const Members& members, const Value& value, const Box& box, Meter& meter) {
    // One below the greatest number, so that "beyond to" is a number too.
    constexpr std::int64_t most = std::numeric_limits<std::int32_t>::max() - 1;
    const Range allowed{any_number().least, most, "32 bits"};
    meter.from = members.whole_or("from", allowed, value.min);
    meter.to =
        members.whole_or("to", allowed, static_cast<int>(std::min<std::int64_t>(value.max, most)));
    if (meter.from >= meter.to) {
        members.fail(members.has("to") ? "to" : "from",
                     "out-of-range",
                     "leaves a range from " + std::to_string(meter.from) + " to " +
                         std::to_string(meter.to) + "; \"from\" has to be below \"to\"");
        return false;
    }
    const std::int64_t range = std::int64_t{meter.to} - meter.from;
    const std::int64_t length = meter.upright ? box.height : box.width;
    if (range * length > largest_product) {
        members.fail("to",
                     "out-of-range",
                     "makes a range of " + std::to_string(range) + " on " + std::to_string(length) +
                         " px; their product is at most " + std::to_string(largest_product));
    }
    return true;
}

}  // namespace

void read_meter(const Members& members, PaintId ground, Item& item, const Draft& draft) {
    Meter& meter = item.meter;
    const auto id = value_ref(members, "value", draft, {ValueType::level, ValueType::number});
    meter.value = id.value_or(0);
    meter.upright = members.flag("upright").value_or(false);
    const int across = meter.upright ? item.box.width : item.box.height;
    const int thickest = std::min(across, 255);
    meter.bar = members.whole_or(
        "bar", {1, thickest, "the item's own thickness"}, std::min(meter.bar, thickest));
    meter.ink = draft.paints.find_or(members, "ink", 0);
    meter.ground = draft.paints.find_or(members, "ground", ground);
    meter.unlit = draft.paints.find_or(members, "unlit", meter.ground);
    meter.mark_ink = draft.paints.find_or(members, "mark_ink", meter.ink);
    meter.tick = members.whole_or(
        "tick", {0, thickest, "the item's own thickness"}, std::min(meter.tick, thickest));
    const bool ends =
        id &&
        read_ends(members, draft.layout.values[static_cast<std::size_t>(*id)], item.box, meter);
    if (!ends) {
        meter.from = std::numeric_limits<std::int32_t>::min();
        meter.to = std::numeric_limits<std::int32_t>::max() - 1;
    }
    if (const Node* const node = members.find("blocks")) {
        const Members blocks(
            *node, members.pointer_of("blocks"), {"set of blocks"}, block_members, draft.mistakes);
        meter.block = blocks.whole_or("size", {1, 255}, 1);
        meter.gap = blocks.whole_or("gap", {0, 255}, 1);
    }
    meter.over = meter.ink;
    meter.over_from = meter.to + 1;
    if (const Node* const node = members.find("over")) {
        const Members over(
            *node, members.pointer_of("over"), {"over range"}, over_members, draft.mistakes);
        meter.over_from = over.whole_or(
            "from", {meter.from, meter.to, "the meter's from and to"}, meter.over_from);
        meter.over = draft.paints.find_or(over, "ink", meter.ink);
    }
    if (const Node* const node = members.find("peak")) {
        const Members peak(
            *node, members.pointer_of("peak"), {"peak of a meter"}, peak_members, draft.mistakes);
        meter.peak = true;
        meter.peak_ink = draft.paints.find_or(peak, "ink", meter.ink);
        meter.peak_hold_ms = peak.whole_or("hold_ms", {20, 5000}, meter.peak_hold_ms);
    }
    read_marks(members, meter, draft);
}

void read_scale(const Members& members, PaintId ground, Item& item, const Draft& draft) {
    Scale& scale = item.scale;
    const auto id = value_ref(members, "value", draft, {ValueType::number});
    scale.value = id.value_or(0);
    static constexpr Word<bool> movements[] = {{"tape", true}, {"pointer", false}};
    scale.tape = members.one_of("moves", std::span<const Word<bool>>(movements)).value_or(true);
    const Range upwards{1, any_number().most};
    scale.per_pixel = members.whole_or("per_pixel", upwards, 1);
    const int least = id ? draft.layout.values[static_cast<std::size_t>(*id)].min : 0;
    scale.from = members.whole_or("from", any_number(), least);
    const auto minor = members.whole("minor", upwards);
    const auto major = members.whole("major", upwards);
    scale.minor = static_cast<std::int32_t>(minor.value_or(scale.per_pixel));
    scale.major = static_cast<std::int32_t>(major.value_or(scale.minor));
    const bool pixels_known = members.has("per_pixel");
    constexpr int most_pixels = 65535;  // u16 in the image
    const auto check_distance = [&](std::string_view name, std::int32_t distance) {
        if (!pixels_known) return;
        if (distance % scale.per_pixel != 0) {
            const std::int64_t below = std::int64_t{distance} / scale.per_pixel * scale.per_pixel;
            members.fail(name,
                         "out-of-range",
                         "is " + std::to_string(distance) +
                             ", which is no whole number of pixels at " +
                             std::to_string(scale.per_pixel) + " a pixel; nearest are " +
                             (below > 0 ? std::to_string(below) + " and " : std::string()) +
                             std::to_string(below + scale.per_pixel));
        } else if (distance / scale.per_pixel > most_pixels) {
            members.fail(name,
                         "out-of-range",
                         "puts its ticks " + std::to_string(distance / scale.per_pixel) +
                             " px apart; allowed are at most " + std::to_string(most_pixels));
        }
    };
    if (minor) check_distance("minor", scale.minor);
    if (major) check_distance("major", scale.major);
    if (minor && major && scale.major < scale.minor) {
        members.fail("major",
                     "out-of-range",
                     "is " + std::to_string(scale.major) + ", less than \"minor\", which is " +
                         std::to_string(scale.minor));
    }
    scale.divide = members.whole_or("divide", upwards, 1);
    scale.decimals = members.whole_or("decimals", {0, 9}, 0);
    const int thickest = std::min(item.box.height, 255);
    const Range tick{0, thickest, "the item's height"};
    scale.minor_tick = members.whole_or("minor_tick", tick, std::min(scale.minor_tick, thickest));
    scale.major_tick = members.whole_or("major_tick", tick, std::min(scale.major_tick, thickest));
    scale.face = draft.faces.find_or(members, "face", 0);
    scale.ink = draft.paints.find_or(members, "ink", 0);
    scale.ground = draft.paints.find_or(members, "ground", ground);
    scale.label_ink = draft.paints.find_or(members, "label_ink", scale.ink);
    scale.pointer_ink = draft.paints.find_or(members, "pointer_ink", scale.ink);
}

}  // namespace dialplate
