#include "sim/ledger/code_size.hpp"

#include "sim/display/bus_time.hpp"
#include "sim/ledger/measured_ratios.hpp"
#include "sim/ledger/measured_sizes.hpp"
#include "sim/ledger/size_terms.hpp"
#include "sim/ledger/stack_paths.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdio>
#include <iterator>
#include <optional>
#include <string>

namespace dialplate {
namespace {

/// A family that nothing was compiled for here. Source: one small drawing engine, compiled once for each family
/// with -Os: 1,242 bytes for the ATmega328P, 1,358 for RV32IMAC, which stands for Xtensa.
constexpr const char* xtensa = "xtensa";
constexpr double xtensa_ratio = 1358.0 / 1242.0;

/// Bytes of a saved register and of a stack slot, against AVR: 32-bit families keep words.
/// UNVERIFIED: measuring the stack on such a part would settle it.
constexpr double wide_stack_factor = 2.0;

/// What was measured for a family other than the classic AVR; null: nothing.
const measured::FamilyRatio* ratio_of(const Mcu& mcu) {
    const auto* found = std::find_if(std::begin(measured::family_ratios),
                                     std::end(measured::family_ratios),
                                     [&mcu](const auto& r) { return mcu.family == r.family; });
    return found == std::end(measured::family_ratios) ? nullptr : found;
}

bool is_avr(const Mcu& mcu) {
    return mcu.family == "avr";
}

/// The chip that was compiled for, or one that runs the same instructions from as little flash.
bool is_measured(const Mcu& mcu) {
    return mcu.name == measured::part;
}

std::string basis_of_measurement() {
    char text[300];
    std::snprintf(
        text,
        sizeof text,
        "%s; a sum of parts: of %d compiled programs that it was not fitted to, nine of ten within "
        "%.1f %%, all within %.1f %%",
        measured::toolchain,
        measured::held_out,
        100.0 * measured::nine_of_ten_error,
        100.0 * measured::worst_error);
    return text;
}

CodeSize scaled(double bytes, const Mcu& mcu, const std::string& measured_basis) {
    if (is_measured(mcu)) {
        return {Bytes{std::lround(bytes)}, Standing::measured, measured_basis};
    }
    if (is_avr(mcu)) {
        return {Bytes{std::lround(bytes * measured::large_avr_factor)},
                Standing::estimate,
                std::string{"the size measured for the "} + measured::part +
                    ", times what the whole engine grows by for the " + measured::large_avr_part};
    }
    const std::string carried_over = std::string{"the size measured for the "} + measured::part;
    if (const measured::FamilyRatio* ratio = ratio_of(mcu)) {
        char text[250];
        std::snprintf(
            text,
            sizeof text,
            ", times %.2f: what the same %d engines took that were compiled for both, %.2f to "
            "%.2f, by %s",
            ratio->engine,
            measured::ratio_engines,
            ratio->least,
            ratio->greatest,
            ratio->toolchain);
        return {Bytes{std::lround(bytes * ratio->engine)}, Standing::estimate, carried_over + text};
    }
    if (mcu.family == xtensa) {
        return {Bytes{std::lround(bytes * xtensa_ratio)},
                Standing::estimate,
                carried_over +
                    ", times the ratio of one small drawing engine compiled for both: "
                    "RV32IMAC, in place of Xtensa"};
    }
    return {Bytes{std::lround(bytes)}, Standing::estimate, carried_over + ", unchanged"};
}

/// The sum of the terms that hold, of all rows or of one.
template <std::size_t count>
double weighed(const DisplayProgram& program,
               const double (&weights)[count],
               std::optional<SizeRow> row = std::nullopt) {
    const std::vector<SizeTerm> terms = size_terms(program);
    assert(terms.size() == count);
    double bytes = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        bytes += terms[i].holds && row.value_or(terms[i].row) == terms[i].row ? weights[i] : 0.0;
    }
    return bytes;
}

CodeSize weighed_row(const DisplayProgram& program, SizeRow row, const Mcu& mcu) {
    return scaled(weighed(program, measured::flash_terms, row), mcu, basis_of_measurement());
}

constexpr const char* of_the_same_sum = "a term of the sum that the engine is from: ";

}  // namespace

DisplayProgram display_program(const Layout& layout, const BuiltImage& built) {
    const PartSet parts = parts_used(layout, built);
    return {.parts = parts,
            .bus = layout.bus.kind,
            .bytes_per_pixel = bytes_per_pixel(layout.display, layout.bus.kind),
            .touch_sheet = parts.has(Part::touch),
            .context_columns = built.context_columns(),
            .faces_in = packings_of_faces(layout, built),
            .pictures_in = packings_of_pictures(built),
            .changed_bitmaps =
                std::any_of(built.faces.begin(), built.faces.end(), [](const FaceCost& face) {
                    return face.changed_runs && face.packing != "segment";
                })};
}

CodeSize engine_size(DisplayProgram program, const Mcu& mcu) {
    // The drivers are for AVRs.
    if (!is_avr(mcu)) program.bus.reset();
    return weighed_row(program, SizeRow::engine, mcu);
}

CodeSize driver_size(const DisplayProgram& program, const Mcu& mcu) {
    assert(program.bus);
    if (is_avr(mcu)) {
        CodeSize size = weighed_row(program, SizeRow::driver, mcu);
        size.basis = std::string{of_the_same_sum} + bus_driver(*program.bus).name;
        return size;
    }
    return {Bytes{std::lround(weighed(program, measured::flash_terms, SizeRow::driver))},
            Standing::estimate,
            "there is no driver for this family: as much as the one for the " +
                std::string{measured::part} +
                ", for your own in its place; what your own takes in "
                "libraries comes on top"};
}

CodeSize touch_size(const DisplayProgram& program, const Mcu& mcu) {
    CodeSize size = weighed_row(program, SizeRow::touch, mcu);
    size.basis =
        std::string{of_the_same_sum} + "a 12-bit serial converter, filtered, with its calibration";
    if (!is_avr(mcu)) {
        size = {Bytes{std::lround(weighed(program, measured::flash_terms, SizeRow::touch))},
                Standing::estimate,
                "there is no reading of the touch sheet for this family: as much as for the " +
                    std::string{measured::part}};
    }
    return size;
}

Bytes engine_state(const DisplayProgram& program, const Mcu& mcu) {
    if (const measured::FamilyRatio* ratio = ratio_of(mcu)) {
        return Bytes{ratio->state};
    }
    const int state = measured::engine_state +
                      (program.parts.has(Part::segment) ? measured::segment_state : 0) +
                      (program.touch_sheet ? measured::touch_state : 0);
    // Pointers and padding: a 32-bit part needs up to twice the room of an 8-bit one.
    return Bytes{std::lround(state * (is_avr(mcu) ? 1.0 : wide_stack_factor))};
}

CodeSize stack_size(const DisplayProgram& program, const Mcu& mcu) {
    const std::string bound = "longest path of calls in the compiled engine with all parts, ";
    const std::string and_more = "; interrupts come on top";
    if (is_avr(mcu)) {
        const bool same = is_measured(mcu);
        char text[300];
        std::snprintf(text,
                      sizeof text,
                      "the deepest of the paths of calls, each a sum of parts: of %d compiled "
                      "programs that it was not fitted to, half within %.0f, nine of ten "
                      "within %.0f, all within %.0f bytes",
                      measured::held_out,
                      measured::stack_median_error,
                      measured::stack_nine_of_ten_error,
                      measured::stack_worst_error);
        const double bytes = deepest(stack_paths(program), measured::stack_terms) +
                             (same ? 0.0 : measured::large_avr_stack);
        return {Bytes{std::lround(bytes)},
                same ? Standing::measured : Standing::estimate,
                text + (same ? and_more
                             : std::string{"; on the "} + measured::part +
                                   ", and what its return addresses are longer" + and_more)};
    }
    if (const measured::FamilyRatio* ratio = ratio_of(mcu)) {
        return {Bytes{ratio->stack}, Standing::estimate, bound + ratio->toolchain + and_more};
    }
    return {Bytes{std::lround(measured::stack * wide_stack_factor)},
            Standing::estimate,
            "twice that of the " + std::string{measured::part} + ": " + bound +
                measured::toolchain + and_more};
}

Bytes stack_margin(const Mcu& mcu) {
    // The others have a bound of all programs for their stack, none for this one.
    return Bytes{is_avr(mcu) ? std::lround(measured::stack_margin) : 0};
}

}  // namespace dialplate
