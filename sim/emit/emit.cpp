#include "sim/display/bus_time.hpp"
#include "sim/emit/emission.hpp"
#include "sim/emit/engine_files.hpp"
#include "sim/emit/pieces.hpp"
#include "sim/emit/text.hpp"

#include <algorithm>
#include <utility>

namespace dialplate {
namespace {

/// The two greatest things in an image, for an author who has to leave something out.
std::string greatest_parts(const Layout& layout, const BuiltImage& built) {
    std::vector<std::pair<std::int64_t, std::string>> parts;
    for (const FaceCost& face : built.faces) {
        parts.emplace_back(
            face.bytes.value,
            "face \"" + layout.faces[static_cast<std::size_t>(face.face)].name + '"');
    }
    for (const PictureCost& picture : built.pictures) {
        parts.emplace_back(picture.bytes.value, "picture \"" + picture.file + '"');
    }
    std::stable_sort(
        parts.begin(), parts.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    std::string text;
    for (std::size_t i = 0; i < parts.size() && i < 2; ++i) {
        text += (i == 0 ? "; the greatest parts are " : " and ") + parts[i].second + " with " +
                std::to_string(parts[i].first) + " bytes";
    }
    return text;
}

}  // namespace

Example usual_example(const Mcu& mcu) {
    return mcu.family == "avr" ? Example::driver : Example::own_driver;
}

std::optional<EmitRefusal> cannot_emit(const Layout& layout,
                                       const BuiltImage& built,
                                       Example example) {
    const auto size = static_cast<std::int64_t>(built.bytes.size());
    if (layout.mcu.object_max && size > layout.mcu.object_max->value) {
        return EmitRefusal{"the image takes " + std::to_string(size) +
                           " bytes, the compiler for the " + layout.mcu.name + " places at most " +
                           std::to_string(layout.mcu.object_max->value) + " in one object" +
                           greatest_parts(layout, built)};
    }
    if (example == Example::own_driver) return std::nullopt;
    if (layout.mcu.family != "avr") {
        return EmitRefusal{"the bus drivers know the classic AVR, not the " + layout.mcu.name +
                           ": use --example own-driver"};
    }
    const bool fixed =
        layout.bus.kind == BusKind::spi_timed || layout.bus.kind == BusKind::usart_spi;
    const Hertz fastest = fastest_serial_clock(layout.clock);
    if (fixed && layout.bus.clock.value < fastest.value * (1.0 - 1e-6)) {
        return EmitRefusal{std::string("the bus driver \"") + bus_driver(layout.bus.kind).name +
                           "\" runs at half the processor's clock, " +
                           plain_number(fastest.value * 1e-6) + " MHz, the layout says " +
                           plain_number(layout.bus.clock.value * 1e-6) +
                           " MHz: use the bus kind \"spi\", or that clock"};
    }
    return std::nullopt;
}

Emission emit(const Layout& layout, const BuiltImage& built, Example example) {
    const Emitting it{.layout = layout,
                      .built = built,
                      .example = example,
                      .parts = parts_used(layout, built),
                      .names = layout_names(layout, built),
                      .pins = usual_pins(layout.mcu, layout.bus.kind),
                      // An array has at least one element.
                      .memory_bytes = std::max(1, built.arena_values + built.arena_shown)};
    Emission emission;
    emission.sketch = it.names.sketch;
    emission.example = example;
    emission.memory_bytes = it.memory_bytes;
    emission.image = Bytes{static_cast<std::int64_t>(built.bytes.size())};
    emission.files = engine_files(engine_roots(it));
    const auto add = [&](const std::string& name, std::string text, bool authors) {
        emission.files.push_back({name, std::move(text), authors});
    };
    add("layout.hpp", layout_header(it), false);
    add("image.cpp", image_source(it), false);
    add("wiring.hpp", wiring_header(it), true);
    add(it.names.sketch + ".ino", sketch(it), true);
    add("README.md", read_me(it), false);
    if (it.pins) add("main.cpp", bare_main(it), false);
    if (it.own_driver()) add("own_display.hpp", own_display(it), true);
    std::sort(emission.files.begin(), emission.files.end(), [](const auto& a, const auto& b) {
        return a.name < b.name;
    });
    return emission;
}

}  // namespace dialplate
