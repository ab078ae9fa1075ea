#include "sim/desk/canvas.hpp"
#include "sim/desk/keys.hpp"
#include "sim/desk/strip.hpp"
#include "sim/desk/tints.hpp"
#include "sim/desk/typeface.hpp"
#include "sim/desk/watch.hpp"

#include <SDL_keycode.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

fs::path own_folder() {
    const testing::TestInfo* test = testing::UnitTest::GetInstance()->current_test_info();
    const fs::path folder = fs::path{DIALPLATE_OUT} / "desk" / test->name();
    fs::remove_all(folder);
    fs::create_directories(folder);
    return folder;
}

void write(const fs::path& file, const std::string& text) {
    std::ofstream(file) << text;
}

TEST(Watch, NoticesASaveInPlaceAndOnlyOnce) {
    const fs::path file = own_folder() / "layout.json";
    write(file, "{}");
    Watch watch;
    watch.look_after({file.string()});
    EXPECT_FALSE(watch.changed());
    write(file, "{ }");
    EXPECT_TRUE(watch.changed());
    EXPECT_FALSE(watch.changed());
}

TEST(Watch, NoticesANewFileUnderTheOldNameEvenOfTheSameSizeAndTime) {
    const fs::path folder = own_folder();
    write(folder / "layout.json", "one");
    write(folder / "layout.new", "two");
    fs::last_write_time(folder / "layout.new", fs::last_write_time(folder / "layout.json"));
    Watch watch;
    watch.look_after({(folder / "layout.json").string()});
    fs::rename(folder / "layout.new", folder / "layout.json");
    EXPECT_TRUE(watch.changed());
}

TEST(Watch, NoticesThatAFileVanishesAndAppears) {
    const fs::path file = own_folder() / "layout.json";
    Watch watch;
    watch.look_after({file.string()});
    EXPECT_FALSE(watch.changed());
    write(file, "{}");
    EXPECT_TRUE(watch.changed());
    fs::remove(file);
    EXPECT_TRUE(watch.changed());
}

TEST(Watch, DoesNotForgetASaveWhenMoreFilesJoin) {
    const fs::path folder = own_folder();
    write(folder / "a", "1");
    write(folder / "b", "1");
    Watch watch;
    watch.look_after({(folder / "a").string()});
    write(folder / "a", "12");
    watch.look_after({(folder / "b").string(), (folder / "a").string()});
    EXPECT_TRUE(watch.changed());
    EXPECT_FALSE(watch.changed());
}

TEST(Typeface, CutsALineWhereItsRoomEnds) {
    Typeface face;
    ASSERT_EQ(face.load(std::string{DIALPLATE_TREE} + "/fonts/legend9.bdf", 9), "");
    const std::string words = "key \"40 m\" is 6.1 mm high";
    EXPECT_EQ(face.fitted(words, face.width(words)), words);
    for (int room = face.width("..."); room < face.width(words); ++room) {
        const std::string cut = face.fitted(words, room);
        EXPECT_LE(face.width(cut), room);
        EXPECT_EQ(cut.substr(cut.size() - 3), "...");
    }
}

TEST(Typeface, BreaksLinesAtSpacesAndLosesNothing) {
    Typeface face;
    ASSERT_EQ(face.load(std::string{DIALPLATE_TREE} + "/fonts/legend9.bdf", 9), "");
    const std::string words = "\"ink\" is 1/4.8 of the height, advised is 1/5.0";
    EXPECT_EQ(face.lines(words, face.width(words)), std::vector<std::string>{words});
    // Every line from the longest word on, joined by spaces, is what went in.
    for (int room = face.width("advised"); room < face.width(words); ++room) {
        std::string joined;
        for (const std::string& line : face.lines(words, room)) {
            EXPECT_LE(face.width(line), room);
            joined += (joined.empty() ? "" : " ") + line;
        }
        EXPECT_EQ(joined, words);
    }
    // A word that is longer than a line is cut; no room at all is no endless loop.
    const std::vector<std::string> cut = face.lines("0123456789", face.width("0123"));
    ASSERT_EQ(cut.size(), 3u);
    EXPECT_EQ(cut[0] + cut[1] + cut[2], "0123456789");
    EXPECT_EQ(face.lines("words", 0), std::vector<std::string>{"words"});
}

TEST(Typeface, DrawsInsideTheWidthItNamesAtEveryEnlargement) {
    Typeface face;
    ASSERT_EQ(face.load(std::string{DIALPLATE_TREE} + "/fonts/legend14.bdf", 14), "");
    for (int times : {1, 2, 3}) {
        face.enlarge(times);
        const int width = face.width("14.205 MHz", 2);
        Canvas canvas(width + 40, face.height() + 20);
        EXPECT_EQ(face.draw(canvas, 20, 10, "14.205 MHz", {.ink = 0xFFFFFF, .spacing = 2}), width);
        for (int y = 0; y < canvas.height(); ++y)
            for (int x = 0; x < canvas.width(); ++x)
                if (!Area{20, 10, width, face.height()}.holds(x, y)) {
                    ASSERT_EQ(canvas.at(x, y), 0u);
                }
    }
}

TEST(Typeface, BytesThatAreNoTextDoNoHarm) {
    Typeface face;
    ASSERT_EQ(face.load(std::string{DIALPLATE_TREE} + "/fonts/legend9.bdf", 9), "");
    EXPECT_EQ(face.width("\xFF"), face.width("?"));
    EXPECT_EQ(face.width("\xE2\x82"), face.width("?"));  // cut after two of three bytes
    EXPECT_EQ(face.width(""), 0);
}

TEST(Canvas, ADiscCoversTheAreaOfItsCircle) {
    Canvas canvas(64, 64);
    canvas.disc({32.0, 32.0, 20.0}, 0xFFFFFF);
    double covered = 0.0;
    for (int y = 0; y < 64; ++y)
        for (int x = 0; x < 64; ++x)
            covered += (canvas.at(x, y) & 0xFFu) / 255.0;
    // pi r^2 = 1256.64; edges by distance are good to a fraction of the 126 pixels on them.
    EXPECT_NEAR(covered, 1256.64, 4.0);
}

TEST(Canvas, ARoundedBoxCoversItsAreaWithoutTheCorners) {
    Canvas canvas(64, 64);
    canvas.rounded({10, 12, 40, 30}, 9.0, 0xFFFFFF);
    double covered = 0.0;
    for (int y = 0; y < 64; ++y)
        for (int x = 0; x < 64; ++x)
            covered += (canvas.at(x, y) & 0xFFu) / 255.0;
    // 40 x 30 less what four quarter circles leave of their squares: (4 - pi) 9^2 = 69.53.
    EXPECT_NEAR(covered, 1200.0 - 69.53, 1.5);
    // The same from all four corners.
    for (int y = 0; y < 30; ++y)
        for (int x = 0; x < 40; ++x) {
            EXPECT_EQ(canvas.at(10 + x, 12 + y), canvas.at(49 - x, 12 + y));
            EXPECT_EQ(canvas.at(10 + x, 12 + y), canvas.at(10 + x, 41 - y));
        }
}

TEST(Canvas, DrawingBesideTheCanvasIsHarmless) {
    Canvas canvas(10, 10);
    canvas.fill({-5, -5, 100, 100}, 0x123456);
    canvas.disc({-50.0, 3.0, 60.0}, 0xFFFFFF);
    canvas.rounded({-4, -4, 8, 8}, 3.0, 0xFFFFFF);
    canvas.outline({-1, -1, 12, 12}, 1, 0xFF0000);
    EXPECT_EQ(canvas.at(-1, 0), 0u);
    EXPECT_EQ(canvas.at(10, 9), 0u);
}

TEST(Strip, SetsThousandsApart) {
    EXPECT_EQ(grouped(0), "0");
    EXPECT_EQ(grouped(999), "999");
    EXPECT_EQ(grouped(1000), "1 000");
    EXPECT_EQ(grouped(262144), "262 144");
    EXPECT_EQ(grouped(-12345), "-12 345");
}

TEST(WindowKeys, StandForWhatTheListSays) {
    struct Row {
        Stroke stroke;
        std::optional<Order> order;
        int by;
    };
    const Row rows[] = {
        {{.key = SDLK_UP}, Order::tune, 1},
        {{.key = SDLK_DOWN}, Order::tune, -1},
        {{.key = SDLK_LEFT, .shift = true}, Order::tune, -10},
        {{.key = SDLK_PAGEUP}, Order::tune, 10},
        {{.key = SDLK_TAB}, Order::page, 1},
        {{.key = SDLK_TAB, .shift = true}, Order::page, -1},
        {{.key = SDLK_PLUS, .shift = true}, Order::zoom, 1},
        {{.key = SDLK_f, .shift = true}, Order::finding, -1},
        {{.key = SDLK_t}, Order::true_size, 0},
        {{.key = SDLK_t, .shift = true}, Order::measure_screen, 0},
        {{.key = SDLK_F5}, Order::trial, 0},
        {{.key = SDLK_s}, Order::save_trial, 0},
        {{.key = SDLK_s, .control = true}, Order::save, 0},
        {{.key = SDLK_q, .control = true}, Order::quit, 0},
        {{.key = SDLK_q}, std::nullopt, 0},
        {{.key = SDLK_UP, .control = true}, std::nullopt, 0},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.stroke.key);
        const std::optional<Ordered> ordered = order_of(row.stroke, false);
        ASSERT_EQ(ordered.has_value(), row.order.has_value());
        if (!ordered) continue;
        EXPECT_EQ(ordered->order, *row.order);
        EXPECT_EQ(ordered->by, row.by);
    }
}

TEST(Tints, WordsOfTheWindowCanBeRead) {
    struct Row {
        const char* what;
        Colour ink, ground;
        double least;
    };
    const Row rows[] = {
        {"captions on the panel", tint::engraved, tint::panel_top, 4.5},
        {"measures on the panel", tint::quiet, tint::panel_top, 4.5},
        {"measures low on the panel", tint::quiet, tint::panel_bottom, 4.5},
        {"ticks on the panel", tint::rule, tint::panel_top, 2.5},
        {"findings", tint::engraved, tint::strip, 4.5},
        {"captions of the strip", tint::quiet, tint::strip, 4.5},
        {"a mistake", tint::must, tint::strip, 4.5},
        {"mark of a should", tint::should, tint::strip, 3.0},
        {"mark of a note", tint::note, tint::strip, 3.0},
    };
    // WCAG 2.2, "relative luminance" and "contrast ratio" (standards CON-01, CON-03, CON-04).
    const auto linear = [](unsigned code) {
        const double c = code / 255.0;
        return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    const auto luminance = [&](Colour c) {
        return 0.2126 * linear((c >> 16) & 255u) + 0.7152 * linear((c >> 8) & 255u) +
               0.0722 * linear(c & 255u);
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.what);
        const double ink = luminance(row.ink), ground = luminance(row.ground);
        EXPECT_GE((std::max(ink, ground) + 0.05) / (std::min(ink, ground) + 0.05), row.least);
    }
}

}  // namespace
}  // namespace dialplate
