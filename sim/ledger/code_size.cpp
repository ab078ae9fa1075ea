#include "sim/ledger/code_size.hpp"

#include "sim/display/bus_time.hpp"
#include "sim/ledger/measured_sizes.hpp"
#include "sim/ledger/size_terms.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdio>
#include <iterator>
#include <string>

namespace dialplate {
namespace {

/// How large the same drawing code was for another family, against the ATmega328P.
/// Source: one drawing engine of this kind, compiled once for each family with -Os: 1,242 bytes for the
/// ATmega328P, 1,070 Cortex-M0+, 1,066 Cortex-M3, 1,184 AVR with mapped flash, 1,358 RV32IMAC.
struct FamilyFactor {
    const char* family;
    double factor;
    const char* basis;
};
constexpr FamilyFactor family_factors[] = {
    {"avr-mapped", 1184.0 / 1242.0, "AVR with mapped flash"},
    {"cortex-m0plus", 1070.0 / 1242.0, "Cortex-M0+"},
    {"cortex-m3", 1066.0 / 1242.0, "Cortex-M3"},
    {"xtensa", 1358.0 / 1242.0, "RV32IMAC, in place of Xtensa"},
};

/// Bytes of a saved register and of a stack slot, against AVR: 32-bit families keep words.
/// UNVERIFIED: measuring the stack on such a part would settle it.
constexpr double wide_stack_factor = 2.0;

bool is_avr(const Mcu& mcu) {
    return mcu.family == "avr";
}

/// The chip that was compiled for, or one that runs the same instructions from as little flash.
bool is_measured(const Mcu& mcu) {
    return mcu.name == measured::part;
}

std::string basis_of_measurement() {
    char text[200];
    std::snprintf(
        text,
        sizeof text,
        "%s; a sum of parts, within %.1f %% of %d compiled engines that it was not fitted to",
        measured::toolchain,
        100.0 * measured::worst_error,
        measured::held_out);
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
    const auto* found = std::find_if(
        std::begin(family_factors), std::end(family_factors), [&mcu](const FamilyFactor& f) {
            return mcu.family == f.family;
        });
    if (found == std::end(family_factors)) {
        return {Bytes{std::lround(bytes)},
                Standing::estimate,
                std::string{"the size measured for the "} + measured::part + ", unchanged"};
    }
    return {Bytes{std::lround(bytes * found->factor)},
            Standing::estimate,
            std::string{"the size measured for the "} + measured::part +
                ", times the ratio of one drawing engine compiled for both: " + found->basis};
}

}  // namespace

CodeSize engine_size(PartSet parts, const Mcu& mcu) {
    const std::vector<double> terms = size_terms(parts);
    assert(terms.size() == std::size(measured::engine_terms));
    double bytes = 0.0;
    for (std::size_t i = 0; i < terms.size(); ++i) {
        bytes += terms[i] * measured::engine_terms[i];
    }
    return scaled(bytes, mcu, basis_of_measurement());
}

CodeSize driver_size(const Layout& layout) {
    const int pixel = bytes_per_pixel(layout.display, layout.bus.kind);
    const auto* found = std::find_if(
        std::begin(measured::drivers), std::end(measured::drivers), [&](const measured::Driver& d) {
            return d.kind == layout.bus.kind && d.bytes_per_pixel == pixel;
        });
    assert(found != std::end(measured::drivers));
    return scaled(found->bytes,
                  layout.mcu,
                  std::string{measured::toolchain} + "; " + bus_driver(layout.bus.kind).name);
}

Bytes engine_state(const Mcu& mcu) {
    // Pointers and padding: a 32-bit part needs up to twice the room of an 8-bit one.
    const double factor = mcu.family.rfind("avr", 0) == 0 ? 1.0 : wide_stack_factor;
    return Bytes{std::lround(measured::engine_state * factor)};
}

CodeSize stack_size(const Mcu& mcu) {
    const std::string bound =
        std::string{"longest path of calls in the compiled engine with all parts, "} +
        measured::toolchain + "; interrupts come on top";
    if (mcu.family.rfind("avr", 0) == 0) {
        return {Bytes{measured::stack},
                is_measured(mcu) ? Standing::measured : Standing::estimate,
                bound};
    }
    return {Bytes{std::lround(measured::stack * wide_stack_factor)},
            Standing::estimate,
            "twice that of the " + std::string{measured::part} + ": " + bound};
}

}  // namespace dialplate
