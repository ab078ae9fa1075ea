// The terms of which the size of a display's program is the weighted sum.
//
// Compiling the program for each layout would take a second, so its size is predicted: one term for each part of
// the engine, one for each way of sending and for reading the touch sheet, one for each function that several parts
// share, and one for each group of parts that repeat code: two callers of a function keep the compiler from putting
// it in place. Which function is in which program follows from its parts; how large it is there varies by some
// bytes. What a term weighs was fitted to compiled programs with parts drawn at random
// (tests/firmware/measure_sizes.cpp, measured_sizes.hpp); others, kept out of the fit, bound the error.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/prototype/parts_used.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace dialplate {

/// Without what makes no difference: what only a meter has, where there is no meter, and so on.
PartSet effective(PartSet parts);

/// What draws and feels, apart from its image.
struct DisplayProgram {
    PartSet parts;
    std::optional<BusKind> bus{};  ///< Absent: two functions of the builder's own.
    int bytes_per_pixel = 2;       ///< 2 or 3.
    bool touch_sheet = false;      ///< Read through a serial converter.
    int context_columns = 1;       ///< Of the widest bitmap in `context`.
    /// Of the packings in `parts`, those that faces are in and those that pictures are in: a glyph is not drawn by what
    /// is there for pictures only. Makes no difference to the flash, but to the stack.
    PartSet faces_in{~std::uint32_t{0}}, pictures_in{~std::uint32_t{0}};
    /// Changed runs are for faces in `plain` or `runs`, and not for segments alone. This too is
    /// of the stack only.
    bool changed_bitmaps = true;
};

/// The row of the ledger that a term belongs to.
enum class SizeRow { engine, driver, touch };

struct SizeTerm {
    SizeRow row;
    bool holds;
};

/// The terms of this program, always as many; the first holds always.
std::vector<SizeTerm> size_terms(const DisplayProgram& program);

}  // namespace dialplate
