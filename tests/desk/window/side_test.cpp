// The side of the real window, worked with by hand: choosers, keys, and the drawer of a narrow window.
#include "tests/desk/window/window.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <utility>

namespace dialplate {
namespace {

class SideOfTheWindow : public ArrangedWindow {
protected:
    struct Spot {
        int x = 0, y = 0;
    };
    /// Middle of the first swatch of a paint in the side, from the top; a swatch is 18 pixels wide with its edge.
    std::optional<Spot> swatch(const std::string& paint) const {
        Colour colour = 0;
        for (const Paint& known : layout_.paints)
            if (known.name == paint) colour = shown(known.rgb565);
        const Photograph photograph = stage_.photograph();
        constexpr int wide = 12;
        for (int y = plan_.side.y; y < plan_.side.bottom(); ++y) {
            int run = 0;
            for (int x = plan_.side.x; x < plan_.side.right(); ++x) {
                run = photograph.at(origin_.x + x, origin_.y + y) == colour ? run + 1 : 0;
                if (run == wide) return Spot{x - wide / 2, y + 3};
            }
        }
        return std::nullopt;
    }
    void click_swatch(const std::string& paint) {
        std::optional<Spot> spot;
        ASSERT_TRUE(until([&] { return (spot = swatch(paint)).has_value(); })) << paint;
        point(spot->x, spot->y);
        std::this_thread::sleep_for(60ms);
        stage_.hands("click 1");
    }
};

TEST_F(SideOfTheWindow, APaintFromTheListChangesItsWordAloneAndUndoGivesTheOldBytes) {
    open();
    const std::string original = text_of(file_);
    stage_.hands("key F3");
    point_at(dial().box);
    stage_.hands("click 1");
    click_swatch("ink");  // of the closed list
    std::this_thread::sleep_for(150ms);
    keep_picture("paints");
    const std::vector<Colour> before = glass(dial().box);
    click_swatch("buoy");
    EXPECT_TRUE(until([&] { return glass(dial().box) != before; }));
    stage_.hands("key --clearmodifiers ctrl+s");
    const std::string painted = file_other_than(original);
    std::string expected = original;
    const std::size_t readout = expected.find("\"kind\": \"readout\"");
    expected.replace(expected.find("\"ink\": \"ink\"", readout), 12, "\"ink\": \"buoy\"");
    EXPECT_EQ(painted, expected);
    stage_.hands("key --clearmodifiers ctrl+z");
    stage_.hands("key --clearmodifiers ctrl+s");
    EXPECT_EQ(file_other_than(painted), original);
}

TEST_F(SideOfTheWindow, ANewPaintIsMadeWhereItIsChosenInOneStep) {
    open();
    const std::string original = text_of(file_);
    stage_.hands("key F3");
    point_at(dial().box);
    stage_.hands("click 1");
    click_swatch("ink");
    // The line below the last paint.
    std::optional<Spot> last;
    ASSERT_TRUE(until([&] { return (last = swatch("buoy")).has_value(); }));
    point(last->x + 30, last->y + 20);
    std::this_thread::sleep_for(100ms);
    stage_.hands("click 1");
    EXPECT_TRUE(until([&] { return rescued().find("ink 2") != std::string::npos; }));
    keep_picture("new-paint");
    stage_.hands("key --clearmodifiers ctrl+s");
    const std::string made = file_other_than(original);
    std::string expected = original;
    const std::size_t readout = expected.find("\"kind\": \"readout\"");
    expected.replace(expected.find("\"ink\": \"ink\"", readout), 12, "\"ink\": \"ink 2\"");
    const std::string paint = "\"buoy\": \"#FF9461\"";
    expected.insert(expected.find(paint) + paint.size(), ",\n    \"ink 2\": \"#F4EBDA\"");
    // And in the palettes, which have an ink of their own.
    for (const auto& [buoy, ink] : {std::pair("\"buoy\": \"#A83A08\"", "#0C161B"),
                                    std::pair("\"buoy\": \"#FFB098\"", "#E87058")})
        expected.insert(expected.find(buoy) + std::string(buoy).size(),
                        std::string(",\n      \"ink 2\": \"") + ink + '"');
    EXPECT_EQ(made, expected);
    stage_.hands("key --clearmodifiers ctrl+z");
    stage_.hands("key --clearmodifiers ctrl+s");
    EXPECT_EQ(file_other_than(made), original);
}

TEST_F(SideOfTheWindow, CtrlAndArrowKeysSizeAndTheGridIsRemembered) {
    open();
    const std::string original = text_of(file_);
    stage_.hands("key F3");
    point_at(dial().box);
    stage_.hands("click 1");
    stage_.hands("key --clearmodifiers ctrl+Left");
    stage_.hands("key --clearmodifiers ctrl+s");
    std::string expected = original;
    const std::size_t size = expected.find("\"size\": [304, 43]");
    ASSERT_NE(size, std::string::npos);
    expected.replace(size, 17, "\"size\": [303, 43]");
    EXPECT_EQ(file_other_than(original), expected);
    stage_.hands("key g");
    stage_.hands("key --clearmodifiers ctrl+q");
    EXPECT_EQ(program_.wait(10), 0);
    EXPECT_NE(text_of(folder_ / "state" / "dialplate" / "window").find("\"grid\": false"),
              std::string::npos);
}

TEST_F(SideOfTheWindow, IsADrawerWhereThereIsNoRoomBesideTheBench) {
    open();
    stage_.hands("windowsize --sync " + window_ + " 640 480");
    find_window();
    ASSERT_TRUE(until([&] { return glass() == expected_glass(); }));
    stage_.hands("key F3");
    const Plan out = plan_window(layout_, {640, 480}, 0, {true, true});
    const auto drawn_out = [&] {
        const Photograph photograph = stage_.photograph();
        return photograph.at(origin_.x + out.side.x + 3, origin_.y + 240) == tint::side;
    };
    EXPECT_FALSE(drawn_out());
    stage_.hands("key F9");
    EXPECT_TRUE(until(drawn_out));
    keep_picture("drawer-640x480");
    stage_.hands("key F9");
    EXPECT_TRUE(until([&] { return !drawn_out(); }));
    // By the handle, too.
    point(639 - 8, 240);
    stage_.hands("click 1");
    EXPECT_TRUE(until(drawn_out));
    for (const auto& [width, height] : {std::pair{800, 600}, {1024, 600}}) {
        stage_.hands("windowsize --sync " + window_ + " " + std::to_string(width) + " " +
                     std::to_string(height));
        find_window();
        EXPECT_TRUE(until([&] {
            return stage_.photograph().at(origin_.x + plan_.side.x + 3, origin_.y + 240) ==
                   tint::side;
        }));
        keep_picture("side-" + std::to_string(width) + "x" + std::to_string(height));
    }
}

}  // namespace
}  // namespace dialplate
