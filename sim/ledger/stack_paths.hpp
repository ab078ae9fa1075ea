// The ways on which the calls below the engine's service function go deep, for predicting the stack.
//
// The stack that a display takes is that of its deepest path: something that draws (a page's texts, a readout, ...),
// the call for a glyph, and what decodes it. Which of them is the deepest is not known beforehand, and the depth of
// each changes with few parts of the engine. So every path is a sum of terms, the stack is the greatest of the
// sums, and what the terms weigh is fitted to compiled programs (tests/firmware/measure_sizes.cpp).
#pragma once

#include "sim/ledger/size_terms.hpp"

#include <vector>

namespace dialplate {

/// Who draws, what it decodes, and what makes either take more.
namespace stack_term {
enum : int {
    service,
    page,
    readout,
    box,
    scale,
    picture,
    change,
    plain,
    runs,
    context,
    sent_context,
    segment,
    plain_tones,
    context_tones,
    changed_bitmap,
    changed_segments,
    beside_pictures,
    beside_enlarged,
    readout_with_mark,
    change_with_mark,
    scale_with_tape,
    plain_beside_tones,
    context_beside_tones,
    context_beside_others,
    context_beside_plain_tones,
    context_tones_beside_plain,
    context_tones_beside_changes,
    sent_context_beside_tones,
    changed_bitmap_beside_segments,
    changed_plain,
    changed_bitmap_beside_pictures,
    changed_bitmap_own_bus,
    changed_bitmap_usart,
    count
};
}  // namespace stack_term

struct StackPath {
    int history = 0;         ///< Bytes that its decoder keeps of the columns of the widest bitmap.
    std::vector<int> terms;  ///< Of stack_term, each once.
};

/// The paths of a program; at least one.
std::vector<StackPath> stack_paths(const DisplayProgram& program);

/// @param weights  Bytes, stack_term::count of them.
double depth_of(const StackPath& path, const double* weights);

/// Bytes of the deepest.
double deepest(const std::vector<StackPath>& paths, const double* weights);

}  // namespace dialplate
