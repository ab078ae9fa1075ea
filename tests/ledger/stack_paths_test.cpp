// Which paths there are, and what is the deepest of them.
#include "sim/ledger/stack_paths.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

namespace dialplate {
namespace {

constexpr int columns = 40;

bool has_path(const DisplayProgram& program, int draws, int decodes, int history) {
    const std::vector<StackPath> paths = stack_paths(program);
    return std::any_of(paths.begin(), paths.end(), [&](const StackPath& path) {
        const auto has = [&path](int term) {
            return std::find(path.terms.begin(), path.terms.end(), term) != path.terms.end();
        };
        return has(draws) && has(decodes) && path.history == history;
    });
}

TEST(StackPaths, HoldAByteOfEachColumnForEachBitOfAPixelInContext) {
    // ui/context.hpp, ContextBlock, and ui/tones.hpp, send_context_tones: their arrays.
    PartSet parts;
    parts.add(Part::readout).add(Part::context).add(Part::smooth).add(Part::tones_context);
    const DisplayProgram program{.parts = parts, .bus = BusKind::spi, .context_columns = columns};
    EXPECT_TRUE(has_path(program, stack_term::readout, stack_term::context, columns));
    EXPECT_TRUE(has_path(program, stack_term::readout, stack_term::context_tones, 2 * columns));
}

TEST(StackPaths, LeaveTheEnginesDecoderOutWhereTheDriverDecides) {
    PartSet parts;
    parts.add(Part::box).add(Part::context);
    DisplayProgram program{.parts = parts, .bus = BusKind::spi_timed, .context_columns = columns};
    EXPECT_TRUE(has_path(program, stack_term::box, stack_term::sent_context, columns));
    EXPECT_FALSE(has_path(program, stack_term::box, stack_term::context, columns));
    // Enlarged glyphs are the engine's all the same.
    program.parts.add(Part::enlarged);
    EXPECT_TRUE(has_path(program, stack_term::box, stack_term::context, columns));
}

TEST(StackPaths, HaveChangedDigitsOnlyInAnEngineWithReadouts) {
    PartSet parts;
    parts.add(Part::box).add(Part::plain).add(Part::changed_runs);
    DisplayProgram program{.parts = parts, .bus = BusKind::spi};
    EXPECT_FALSE(has_path(program, stack_term::change, stack_term::changed_bitmap, 0));
    program.parts.add(Part::readout);
    EXPECT_TRUE(has_path(program, stack_term::change, stack_term::changed_bitmap, 0));
    program.parts.add(Part::segment);
    program.changed_bitmaps = false;
    EXPECT_FALSE(has_path(program, stack_term::change, stack_term::changed_bitmap, 0));
    EXPECT_TRUE(has_path(program, stack_term::change, stack_term::changed_segments, 0));
}

TEST(StackPaths, AreAsDeepAsTheirTermsAndTheHistoryTogether) {
    std::vector<double> weights(stack_term::count);
    weights[stack_term::service] = 100.0;
    weights[stack_term::page] = 7.0;
    weights[stack_term::scale] = 20.0;
    weights[stack_term::context] = 3.0;
    const StackPath page{columns, {stack_term::service, stack_term::page, stack_term::context}};
    const StackPath scale{0, {stack_term::service, stack_term::scale}};
    EXPECT_EQ(depth_of(page, weights.data()), 150.0);
    EXPECT_EQ(depth_of(scale, weights.data()), 120.0);
    EXPECT_EQ(deepest({scale, page}, weights.data()), 150.0);
}

}  // namespace
}  // namespace dialplate
