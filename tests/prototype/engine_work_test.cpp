// The counts of the engine's work, held against what the controller model counted of the same updates.
#include "sim/prototype/engine_work.hpp"

#include "sim/image/build.hpp"
#include "sim/prototype/prototype.hpp"
#include "tests/prototype/examples.hpp"

#include <gtest/gtest.h>

#include <cstdint>
#include <filesystem>
#include <string>

namespace dialplate {
namespace {

class EngineWorkOf : public testing::TestWithParam<std::string> {
protected:
    /// Every page drawn whole.
    Update draw_all() {
        Update all;
        for (std::size_t page = 0; page < example_.layout.pages.size(); ++page) {
            prototype_.show_page(static_cast<int>(page));
            const Update update = prototype_.settle();
            all.sent.windows += update.sent.windows;
            all.sent.pixels += update.sent.pixels;
            for (std::size_t kind = 0; kind < all.work.times.size(); ++kind) {
                all.work.times[kind] += update.work.times[kind];
            }
        }
        return all;
    }
    static std::int64_t of(const EngineWork& work, int kind) {
        return work.times[static_cast<std::size_t>(kind)];
    }
    static std::int64_t of(const EngineWork& work, int group, work::Subject subject) {
        return of(work, group + static_cast<int>(subject));
    }

    const LoadedExample example_ = load_example(GetParam());
    Prototype prototype_{example_.layout, example_.image};
};

TEST_P(EngineWorkOf, HasEveryWindowAndEveryPixelThatTheControllerSaw) {
    const Update all = draw_all();
    std::int64_t windows = 0;
    for (int subject = 0; subject < work::subjects; ++subject) {
        windows += of(all.work, work::window + subject);
    }
    EXPECT_GT(windows, 0);
    EXPECT_EQ(windows, all.sent.windows);
    EXPECT_EQ(of(all.work, work::pixel), all.sent.pixels);
}

TEST_P(EngineWorkOf, DecodesAsManyRowsAsTheWindowsOfGlyphsHave) {
    using work::Subject;
    const EngineWork work = draw_all().work;
    EXPECT_EQ(of(work, work::sent_row),
              of(work, work::row, Subject::plain) + of(work, work::row, Subject::runs) +
                  of(work, work::row, Subject::segment));
    EXPECT_EQ(
        of(work, work::context + work::rows_decided) + of(work, work::context + work::rows_same),
        of(work, work::row, Subject::context));
    EXPECT_EQ(of(work, work::context_tones + work::rows_decided) +
                  of(work, work::context_tones + work::rows_same),
              of(work, work::row, Subject::context_tones));
    EXPECT_EQ(of(work, work::tones_row) + of(work, work::tones_blank),
              of(work, work::row, Subject::plain_tones));
}

TEST_P(EngineWorkOf, TellsOfEachServiceWhatTheUpdateSumsUp) {
    EngineWork sum;
    int services = 0;
    prototype_.watch_services([&](const EngineWork& one) {
        ++services;
        EXPECT_EQ(of(one, work::service), 1);
        for (std::size_t kind = 0; kind < sum.times.size(); ++kind) {
            sum.times[kind] += one.times[kind];
        }
    });
    const Update update = prototype_.redraw();
    EXPECT_GT(services, 1);
    EXPECT_EQ(update.work.times, sum.times);
}

INSTANTIATE_TEST_SUITE_P(Examples, EngineWorkOf, testing::ValuesIn(example_files()), test_name);

TEST(EngineWorkOfContexts, TellsTheLastGlyphOfAFaceFromTheFirst) {
    // "." is the last of the dial's face, since the digits come first, and has 6 columns.
    LoadedExample example =
        load_example(std::filesystem::path{DIALPLATE_TREE} / "layouts/coast-listener.json");
    for (Face& face : example.layout.faces)
        face.packing = PackingWish::context;
    const Building building = build_image(example.layout);
    ASSERT_TRUE(building.image);
    const ValueId frequency = 0;
    ASSERT_EQ(example.layout.values.front().name, "frequency");
    Prototype prototype{example.layout, *building.image};
    prototype.set(frequency, 9'999'999);
    prototype.settle();
    const EngineWork work = prototype.redraw().work;
    const auto of = [&work](int kind) { return work.times[static_cast<std::size_t>(kind)]; };
    // 9.999.99 in figures24.bdf, enlarged to 38 rows: six digits of 16 columns, two points of 6.
    constexpr int rows = 38, digits = 6, points = 2;
    EXPECT_EQ(of(work::row + static_cast<int>(work::Subject::large_context)),
              (digits + points) * rows);
    EXPECT_EQ(of(work::large_context + work::columns_sent), (digits * 16 + points * 6) * rows);
}

TEST(EngineWorkOfChangedDigits, ComparesThemInsteadOfDrawingThemWhole) {
    for (const PackingWish packing : {PackingWish::plain, PackingWish::runs}) {
        LoadedExample example =
            load_example(std::filesystem::path{DIALPLATE_TREE} / "layouts/coast-listener.json");
        for (Face& face : example.layout.faces)
            face.packing = packing;
        Item& dial = example.layout.pages.front().items[1];
        ASSERT_EQ(dial.kind, ItemKind::readout);
        dial.readout.within = Milliseconds{0.1};
        const Building building = build_image(example.layout);
        ASSERT_TRUE(building.image);
        const ValueId frequency = 0;
        Prototype prototype{example.layout, *building.image};
        prototype.set(frequency, 9'999'990);
        prototype.settle();
        prototype.set(frequency, 9'999'980);  // the tape moves by a pixel each 125 Hz
        const EngineWork work = prototype.settle().work;
        const auto of = [&work](int kind) { return work.times[static_cast<std::size_t>(kind)]; };
        // A nine becomes an eight: each is read once, from its first row to its last.
        EXPECT_EQ(of(work::compared), 2);
        EXPECT_GT(of(work::compared_row), 0);
        EXPECT_GT(of(work::window + static_cast<int>(work::Subject::changed_runs)), 0);
        EXPECT_EQ(of(packing == PackingWish::plain ? work::plain_row : work::runs_row), 0)
            << "of a digit drawn whole";
    }
}

TEST(NameOfWork, IsTheFieldOfItsGroup) {
    EXPECT_EQ(name_of_work(work::readout + 9), "readout, 9");
    EXPECT_EQ(name_of_work(work::paint), "paint");
    EXPECT_EQ(name_of_work(work::window + static_cast<int>(work::Subject::box)), "window of a box");
}

}  // namespace
}  // namespace dialplate
