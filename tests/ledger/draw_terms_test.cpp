// Which work of a glyph in context the engine on the receiver does, by how its driver sends it.
#include "sim/ledger/draw_terms.hpp"

#include "sim/image/decoder_sizes.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

using work::Subject;

/// Pushes and decided rows: 5 and 2 of glyphs as they are, 3 and 1 of enlarged ones.
EngineWork glyphs_in_context() {
    EngineWork work;
    work.times[work::push + static_cast<int>(Subject::context)] = 5;
    work.times[work::push + static_cast<int>(Subject::large_context)] = 3;
    work.times[work::context + work::rows_decided] = 2;
    work.times[work::large_context + work::rows_decided] = 1;
    return work;
}

TEST(DrawTerms, HaveNoPushesOfGlyphsThatTheDriverSendsAtOnce) {
    const DrawingEngine engine{.parts = {}, .sends_contexts = true};
    EXPECT_EQ(driver_terms(glyphs_in_context(), engine).pushes, 3.0);
    const DrawTerms terms = draw_terms(glyphs_in_context(), engine);
    EXPECT_EQ(terms[work::push + static_cast<int>(Subject::context)], 0.0);
    EXPECT_EQ(terms[sent_at_once + work::rows_decided], 2.0);
    EXPECT_EQ(terms[work::context + work::rows_decided], 0.0);
    EXPECT_EQ(terms[work::large_context + work::rows_decided], 1.0);
}

TEST(DrawTerms, TreatGlyphsAndEnlargedOnesAlikeWhereTheyArePushed) {
    const DrawingEngine engine{.parts = {}, .sends_contexts = false};
    EXPECT_EQ(driver_terms(glyphs_in_context(), engine).pushes, 8.0);
    const DrawTerms terms = draw_terms(glyphs_in_context(), engine);
    EXPECT_EQ(terms[work::push + static_cast<int>(Subject::context)], 5.0);
    EXPECT_EQ(terms[sent_at_once + work::rows_decided], 0.0);
    EXPECT_EQ(terms[work::context + work::rows_decided], 3.0);
}

TEST(DrawTerms, HaveNoPushesOfRowsThatTheDriverSendsByTheirEdges) {
    EngineWork work;
    work.times[work::push + static_cast<int>(Subject::segment)] = 2;
    work.times[work::push + static_cast<int>(Subject::changed_segments)] = 4;
    work.times[work::push + static_cast<int>(Subject::changed_runs)] = 8;
    work.times[work::push + static_cast<int>(Subject::runs)] = 16;
    EXPECT_EQ(driver_terms(work, engine_on({}, BusKind::spi_timed, 2)).pushes, 16.0);
    EXPECT_EQ(driver_terms(work, engine_on({}, BusKind::spi_timed, 3)).pushes, 30.0);
    EXPECT_EQ(driver_terms(work, engine_on({}, BusKind::usart_spi, 2)).pushes, 30.0);
}

TEST(SendsContexts, HoldsForTheTimedDriversOfTwoBytesAlone) {
    EXPECT_TRUE(sends_contexts(BusKind::spi_timed, 2));
    EXPECT_FALSE(sends_contexts(BusKind::spi_timed, 3));
    EXPECT_FALSE(sends_contexts(BusKind::spi, 2));
    EXPECT_TRUE(sends_contexts(BusKind::usart_spi, 2));
    EXPECT_FALSE(sends_contexts(BusKind::usart_spi, 3));
    EXPECT_FALSE(sends_contexts(BusKind::parallel8, 2));
}

}  // namespace
}  // namespace dialplate
