// The terms of which the size of an engine is the weighted sum.
//
// Compiling the engine for each layout would take a second, so its size is predicted: one term for each
// part, one for each group of parts that share or repeat code, and one for each pair, which the fit leaves near
// nothing unless the sizes insist: two callers of a function keep the compiler from putting it in place. What a term weighs was fitted to
// compiled engines with parts drawn at random (tests/firmware/measure_sizes.cpp, measured_sizes.hpp);
// others, kept out of the fit, bound the error.
#pragma once

#include "sim/prototype/parts_used.hpp"

#include <cstddef>
#include <vector>

namespace dialplate {

/// Without what makes no difference: what only a meter has, where there is no meter, and so on.
PartSet effective(PartSet parts);

/// The terms for these parts, each 0 or 1, always as many; the first is 1.
std::vector<double> size_terms(PartSet parts);

/// Whether a term stands for code that is known; else it is one of all the pairs.
bool is_expected(std::size_t term);

}  // namespace dialplate
