// The real program in a real window: driven by xdotool on an X server without a monitor, and read back
// from its photographs.
#include "tests/desk/window/window.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace dialplate {
namespace {

TEST_F(Window, ShowsTheGlassPixelForPixelAndClosesWithCtrlQ) {
    open();
    EXPECT_EQ(glass(), expected_glass());
    stage_.hands("key --clearmodifiers ctrl+q");
    EXPECT_EQ(program_.wait(10), 0);
}

TEST_F(Window, ATapOnABandKeyChangesTheFrequency) {
    open();
    const std::vector<Colour> before = glass(dial().box);
    // A band key of any page, for another band than the first.
    int page = -1;
    Box key;
    for (std::size_t p = 0; p < layout_.pages.size() && page < 0; ++p)
        for (const Item& item : layout_.pages[p].items) {
            if (item.kind != ItemKind::key || item.key.tap.kind != ActionKind::set) continue;
            const Value& value = layout_.values[static_cast<std::size_t>(item.key.tap.value)];
            if (value.role != Role::band || item.key.tap.amount == value.start) continue;
            page = static_cast<int>(p);
            key = item.box;
            break;
        }
    ASSERT_GE(page, 0) << "the example has no band key";
    for (int p = 0; p < page; ++p)
        stage_.hands("key Tab");
    point_at(key);
    stage_.hands("mousedown 1");
    std::this_thread::sleep_for(60ms);
    stage_.hands("mouseup 1");
    for (int p = page; p > 0; --p)
        stage_.hands("key shift+Tab");
    dial_other_than(before);
}

TEST_F(Window, WheelArrowKeysAndKnobTuneUpAndBackDown) {
    open();
    const std::vector<Colour> start = glass(dial().box);
    point(plan_.panel.x + 20, plan_.panel.y + 20);

    stage_.hands("click 4");  // wheel away from the hand
    const std::vector<Colour> one_up = dial_other_than(start);
    stage_.hands("click 5");
    EXPECT_EQ(dial_other_than(one_up), start);

    stage_.hands("key Up");
    EXPECT_EQ(dial_other_than(start), one_up);
    stage_.hands("key Left");
    EXPECT_EQ(dial_other_than(one_up), start);

    // A drag on the knob by a detent and a half: from straight up to the right.
    ASSERT_GT(plan_.knob.radius, 0.0);
    const double out = 0.7 * plan_.knob.radius;
    const double angle = 1.5 / 24 * 2 * 3.14159265;
    point(plan_.knob.x, plan_.knob.y - out);
    stage_.hands("mousedown 1");
    point(plan_.knob.x + out * std::sin(angle), plan_.knob.y - out * std::cos(angle));
    EXPECT_EQ(dial_other_than(start), one_up);
    stage_.hands("mouseup 1");
}

TEST_F(Window, ASaveShowsAtOnceAndKeepsTheFrequency) {
    open();
    const std::vector<Colour> start = glass(dial().box);
    stage_.hands("key Up");
    const std::vector<Colour> tuned = dial_other_than(start);

    // Another colour for the ground of the first page.
    auto document = nlohmann::ordered_json::parse(text_of(file_));
    const Page& page = layout_.pages[0];
    const std::string ground = layout_.paints[static_cast<std::size_t>(page.ground)].name;
    document["paints"][ground] = "#003878";
    const auto saved = std::chrono::steady_clock::now();
    std::ofstream(file_) << document.dump(2);
    const Colour blue = shown(0x01CF);  // 0x00, 0x38, 0x78 in 5, 6 and 5 bits, nearest
    EXPECT_TRUE(until([&] {
        const std::vector<Colour> now = glass();
        return std::count(now.begin(), now.end(), blue) > 1000;
    }));
    const auto took = std::chrono::steady_clock::now() - saved;
    RecordProperty(
        "save_to_photograph_ms",
        static_cast<int>(std::chrono::duration_cast<std::chrono::milliseconds>(took).count()));
    // Tuning back by one step gives the frequency it started with: the value was kept.
    const std::vector<Colour> repainted = glass(dial().box);
    stage_.hands("key Down");
    dial_other_than(repainted);
    std::ofstream(file_) << text_of(example);
    EXPECT_TRUE(until([&] { return glass(dial().box) == start; }));
}

TEST_F(Window, ABrokenSaveKeepsThePictureAndShowsTheMistakeUntilItIsMended) {
    open();
    ASSERT_FALSE(strip_has(tint::must)) << "the example is not clean";
    const std::vector<Colour> before = glass();
    const std::string good = text_of(file_);
    std::ofstream(file_) << good.substr(0, good.size() / 2);
    EXPECT_TRUE(until([&] { return strip_has(tint::must); }));
    EXPECT_EQ(glass(), before);
    // It still runs.
    const std::vector<Colour> start = glass(dial().box);
    stage_.hands("key Up");
    dial_other_than(start);
    std::ofstream(file_) << good;
    EXPECT_TRUE(until([&] { return !strip_has(tint::must); }));
}

TEST_F(Window, ABrokenFileOpensTheWindowAndIsShownOnceMended) {
    const std::string good = text_of(file_);
    std::ofstream(file_) << "{";
    program_.start({DIALPLATE_PROGRAM, "try", "--still", file_.string()}, surroundings());
    ASSERT_TRUE(until([&] {
        window_ = stage_.hands("search --onlyvisible --name dialplate");
        return !window_.empty() && window_[0] >= '0' && window_[0] <= '9';
    }));
    window_ = window_.substr(0, window_.find('\n'));
    find_window();
    EXPECT_TRUE(until([&] { return strip_has(tint::must); }));
    std::ofstream(file_) << good;
    EXPECT_TRUE(until([&] { return glass() == expected_glass(); }));
}

TEST_F(Window, AnyZoomShowsTheSamePixels) {
    open();
    const std::vector<Colour> before = glass();
    stage_.hands("windowsize --sync " + window_ + " 640 460");
    find_window();
    EXPECT_TRUE(until([&] { return glass() == expected_glass(); }));
    stage_.hands("windowsize --sync " + window_ + " 1590 990");
    find_window();
    EXPECT_TRUE(until([&] { return glass() == expected_glass(); }));
}

TEST_F(ArrangedWindow, SavesOnlyTheBytesThatChangedAndUndoGivesTheOriginalOnes) {
    open();
    const std::string original = text_of(file_);
    const std::vector<Colour> before = glass();
    drag_the_dial(-3, 2);
    EXPECT_TRUE(until([&] { return glass() != before; }));
    EXPECT_EQ(text_of(file_), original) << "written before it was asked for";
    stage_.hands("key --clearmodifiers ctrl+s");
    const std::string moved = file_other_than(original);
    // "at": [8, 6] became [5, 8].
    EXPECT_EQ(moved.size(), original.size());
    int different = 0;
    for (std::size_t i = 0; i < std::min(moved.size(), original.size()); ++i)
        different += moved[i] != original[i] ? 1 : 0;
    EXPECT_EQ(different, 2) << moved.substr(moved.find("\"readout\""), 80);
    stage_.hands("key --clearmodifiers ctrl+z");
    stage_.hands("key --clearmodifiers ctrl+s");
    EXPECT_EQ(file_other_than(moved), original);
    EXPECT_TRUE(until([&] {
        stage_.hands("key Escape");
        return glass() == before;
    }));
}

TEST_F(ArrangedWindow, AKilledWindowGivesItsUnsavedChangesBack) {
    open();
    const std::string original = text_of(file_);
    drag_the_dial(-3, 0);
    // The drag to its end, not its first moves alone.
    ASSERT_TRUE(until([&] { return rescued().find("[5, 6]") != std::string::npos; }));
    program_.end_at_once();
    program_.wait(10);
    EXPECT_EQ(text_of(file_), original);
    open();
    stage_.hands("key --clearmodifiers ctrl+r");
    stage_.hands("key --clearmodifiers ctrl+s");
    const std::string restored = file_other_than(original);
    EXPECT_NE(restored.find("\"at\": [5, 6]"), std::string::npos);
    EXPECT_TRUE(until([&] { return rescued().empty(); }));
}

TEST_F(ArrangedWindow, ASaveByAnotherProgramLosesNeitherVersion) {
    open();
    const std::string original = text_of(file_);
    drag_the_dial(-3, 0);
    std::string theirs = original;
    theirs.replace(theirs.find("Coast listener"), 14, "Their listener");
    std::ofstream(file_) << theirs;
    std::this_thread::sleep_for(300ms);
    // Nothing is written over theirs before it was decided.
    stage_.hands("key --clearmodifiers ctrl+s");
    std::this_thread::sleep_for(300ms);
    EXPECT_EQ(text_of(file_), theirs);
    stage_.hands("key F7");  // keep mine
    stage_.hands("key --clearmodifiers ctrl+s");
    const std::string mine = file_other_than(theirs);
    EXPECT_NE(mine.find("Coast listener"), std::string::npos);
    EXPECT_NE(mine.find("\"at\": [5, 6]"), std::string::npos)
        << mine.substr(mine.find("\"readout\""), 80);
    // Theirs is one step back.
    stage_.hands("key --clearmodifiers ctrl+z");
    stage_.hands("key --clearmodifiers ctrl+s");
    EXPECT_EQ(file_other_than(mine), theirs);
}

TEST_F(ArrangedWindow, OpensAsLargeAsItWasClosed) {
    open();
    stage_.hands("windowsize --sync " + window_ + " 1100 700");
    find_window();
    EXPECT_TRUE(until([&] { return glass() == expected_glass(); }));
    stage_.hands("key --clearmodifiers ctrl+q");
    EXPECT_EQ(program_.wait(10), 0);
    open();
    EXPECT_EQ(origin_.width, 1100);
    EXPECT_EQ(origin_.height, 700);
}

TEST_F(ArrangedWindow, DuplicatesAndDeletesWhatIsChosen) {
    open();
    const std::string original = text_of(file_);
    stage_.hands("key F3");
    point_at(dial().box);
    stage_.hands("click 1");
    stage_.hands("key --clearmodifiers ctrl+d");
    stage_.hands("key --clearmodifiers ctrl+s");
    const std::string doubled = file_other_than(original);
    EXPECT_NE(doubled.find("\"dial 2\""), std::string::npos);
    stage_.hands("key Delete");
    stage_.hands("key --clearmodifiers ctrl+s");
    EXPECT_EQ(file_other_than(doubled), original) << "the copy was chosen, and took its line along";
}

TEST(WindowWithoutAScreen, RunsOnTheDummyDriverAndEndsWhenAsked) {
    Process program;
    program.start({DIALPLATE_PROGRAM, "try", example},
                  {"SDL_VIDEODRIVER=dummy",
                   "DISPLAY=",
                   "WAYLAND_DISPLAY=",
                   "XDG_STATE_HOME=" + std::string{DIALPLATE_OUT} + "/no_screen"});
    std::this_thread::sleep_for(500ms);
    EXPECT_TRUE(program.running());
    program.ask_to_end();
    EXPECT_EQ(program.wait(10), 0);
}

TEST(WindowWithoutAScreen, SaysSoAndReturnsTwo) {
    fs::create_directories(DIALPLATE_OUT);
    const std::string output = std::string{DIALPLATE_OUT} + "/no_screen.txt";
    Process program;
    program.start({DIALPLATE_PROGRAM, "try", example},
                  {"SDL_VIDEODRIVER=x11", "DISPLAY=:4999", "WAYLAND_DISPLAY="},
                  output);
    EXPECT_EQ(program.wait(10), 2);
    EXPECT_NE(text_of(output).find("no window"), std::string::npos) << text_of(output);
}

}  // namespace
}  // namespace dialplate
