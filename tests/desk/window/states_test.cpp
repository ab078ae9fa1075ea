// States of the window that one comes across seldom, at three sizes of the screen: each leaves a photograph to be
// looked at, below the test's folder.
#include "sim/desk/tints.hpp"
#include "tests/desk/window/window.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

class WindowStates : public ArrangedWindow, public testing::WithParamInterface<WindowSize> {
protected:
    WindowSize screen() const override { return GetParam(); }
    /// Fills the screen with the window; nothing need be shown yet.
    void fill_screen() {
        start();
        stage_.hands("windowmove --sync " + window_ + " 0 0");
        stage_.hands("windowsize --sync " + window_ + " " + std::to_string(GetParam().width) + " " +
                     std::to_string(GetParam().height));
        find_window();
        std::this_thread::sleep_for(300ms);
    }
    int pixels(const Area& area, Colour colour) const {
        const Photograph photograph = stage_.photograph();
        int count = 0;
        for (int y = area.y; y < area.bottom(); ++y)
            for (int x = area.x; x < area.right(); ++x)
                count += photograph.at(origin_.x + x, origin_.y + y) == colour ? 1 : 0;
        return count;
    }
    /// The coloured edge of a question in the side.
    bool is_asked() const { return pixels(plan_.side, tint::should) > 90; }
    void move_the_dial() {
        stage_.hands("key F3 key n key n key Left");
        EXPECT_TRUE(until([&] { return rescued().find("[7, 6]") != std::string::npos; }));
    }
};

TEST_P(WindowStates, HelpLiesOverTheBenchAndIsClosedByAnyKey) {
    fill_screen();
    const Area middle{origin_.width / 2 - 100, origin_.height / 2 - 100, 200, 200};
    stage_.hands("key F1");
    EXPECT_TRUE(until([&] { return pixels(middle, tint::raised) > 20000; }));
    keep_picture("help");
    // All of it is on the screen: bare plate or side above and below.
    EXPECT_LT(pixels({0, 0, origin_.width, 2}, tint::raised), 40);
    EXPECT_LT(pixels({0, origin_.height - 2, origin_.width, 2}, tint::raised), 40);
    stage_.hands("key x");
    EXPECT_TRUE(until([&] { return pixels(middle, tint::raised) < 20000; }));
}

TEST_P(WindowStates, ClosingWithUnsavedChangesAsksAndStays) {
    fill_screen();
    move_the_dial();
    EXPECT_FALSE(is_asked());
    stage_.hands("key --clearmodifiers ctrl+q");
    EXPECT_TRUE(until([&] { return is_asked(); }));
    keep_picture("closing");
    stage_.hands("key Escape");
    EXPECT_TRUE(until([&] { return !is_asked(); }));
    EXPECT_TRUE(program_.running());
}

TEST_P(WindowStates, TheirVersionOfTheFileCanBeTaken) {
    fill_screen();
    move_the_dial();
    std::string theirs = text_of(file_);
    theirs.replace(theirs.find("Coast listener"), 14, "Their listener");
    theirs.replace(theirs.find("\"text\": \"MODE\""), 14, "\"text\": \"M\"   ");
    std::ofstream(file_) << theirs;
    EXPECT_TRUE(until([&] { return is_asked(); }));
    keep_picture("versions");
    stage_.hands("key F8");  // take theirs
    EXPECT_TRUE(until([&] { return !is_asked(); }));
    EXPECT_EQ(text_of(file_), theirs);
    stage_.hands("key F2");  // no outline over the glass
    read();
    EXPECT_TRUE(until([&] { return glass() == expected_glass(); }));
}

TEST_P(WindowStates, SeveralChosenItemsAreOutlined) {
    fill_screen();
    stage_.hands("key F3");
    stage_.hands("key --clearmodifiers ctrl+a");
    EXPECT_TRUE(until([&] { return pixels(plan_.panel, tint::lit) > 2000; }));
    keep_picture("several");
    stage_.hands("key Escape");
    EXPECT_TRUE(until([&] { return pixels(plan_.panel, tint::lit) < 100; }));
}

TEST_P(WindowStates, ABrokenFileIsExplainedOnThePanel) {
    std::string text = text_of(file_);
    for (std::size_t at = text.find("\"face\": \"legend\""); at != std::string::npos;
         at = text.find("\"face\": \"legend\"", at))
        text.replace(at, 16, "\"face\": \"legent\"");
    std::ofstream(file_) << text;
    fill_screen();
    EXPECT_TRUE(until([&] { return pixels(plan_.panel, tint::must) > 300; }));
    keep_picture("mistakes");
    fs::remove(file_);
    EXPECT_TRUE(until([&] { return pixels(plan_.panel, tint::must) == 0; }));
    keep_picture("missing");
    fs::copy_file(example, file_);
    EXPECT_TRUE(until([&] { return glass() == expected_glass(); }));
}

INSTANTIATE_TEST_SUITE_P(
    OnScreens,
    WindowStates,
    testing::Values(WindowSize{800, 600}, WindowSize{1280, 800}, WindowSize{2560, 1440}),
    [](const testing::TestParamInfo<WindowSize>& size) {
        return std::to_string(size.param.width) + "x" + std::to_string(size.param.height);
    });

}  // namespace
}  // namespace dialplate
