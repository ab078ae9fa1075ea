// The glass at its own size: measured in photographs of a screen whose fineness is known.
#include "sim/desk/card.hpp"
#include "tests/desk/window/window.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

class TrueSizeWindow : public Window {
protected:
    void SetUp() override {
        Window::SetUp();
        // The whole glass: 57.6 mm wide. Its ground is bright, what is around it nearly black.
        std::string text = text_of(file_);
        const std::size_t opening = text.find("\"opening\"");
        text.erase(opening, text.find("\"touch\"") - opening);
        text.replace(text.find("#0C161B"), 7, "#E0E0E0");
        std::ofstream(file_) << text;
        read();
    }

    /// Width of the glass in the photograph, in pixels: along the row through its middle, from the first to the
    /// last that is not as dark as the trim.
    int width_of_glass() const {
        const Photograph photograph = stage_.photograph();
        const int y = origin_.y + plan_.glass.y + plan_.glass.height / 2;
        const auto bright = [&](int x) { return (photograph.at(x, y) & 0xFFu) > 0x80u; };
        int left = origin_.x + plan_.panel.x, right = origin_.x + plan_.panel.right();
        // The knob has nothing that bright.
        while (left < right && !bright(left))
            ++left;
        while (right > left && !bright(right - 1))
            --right;
        return right - left;
    }
    void shows_width(double pixels) {
        EXPECT_TRUE(until([&] { return std::abs(width_of_glass() - pixels) <= 1.0; }))
            << width_of_glass() << " pixels instead of " << pixels;
    }
};

TEST_F(TrueSizeWindow, ShowsMillimetresAndRemembersWhatWasMeasuredWithACard) {
    open();
    // 96 dots an inch: 57.6 mm are 217.7 pixels.
    stage_.hands("key t");
    shows_width(57.6 * 96 / 25.4);
    keep_picture("estimate");

    // The card that is held to the screen is 350 pixels wide: 324 at first, three times 10 more, less 4.
    stage_.hands("key shift+t");
    std::this_thread::sleep_for(200ms);
    keep_picture("card");
    stage_.hands(
        "key shift+Right key shift+Right key shift+Right key Left key Left key Left key Left");
    stage_.hands("key Return");
    const double pixels_per_mm = 350 / 85.60;
    shows_width(57.6 * pixels_per_mm);
    keep_picture("measured");
    // A whole zoom again, and back.
    stage_.hands("key plus");
    shows_width(320);
    stage_.hands("key --clearmodifiers ctrl+q");
    ASSERT_EQ(program_.wait(10), 0);
    EXPECT_NE(text_of(folder_ / "state" / "dialplate" / "window").find("1600x1000"),
              std::string::npos);

    open();
    stage_.hands("key t");
    shows_width(57.6 * pixels_per_mm);
    stage_.hands("key --clearmodifiers ctrl+q");
    ASSERT_EQ(program_.wait(10), 0);

    // Another screen was not measured, and does not take over what was found out about this one.
    raise({1440, 900});
    open();
    stage_.hands("key t");
    shows_width(57.6 * 96 / 25.4);
}

TEST_F(TrueSizeWindow, ACardThatIsLeftChangesNothing) {
    open();
    stage_.hands("key t");
    shows_width(57.6 * 96 / 25.4);
    stage_.hands("key shift+t");
    stage_.hands("key shift+Right key shift+Right key Escape");
    shows_width(57.6 * 96 / 25.4);
    stage_.hands("key --clearmodifiers ctrl+q");
    ASSERT_EQ(program_.wait(10), 0);
    const std::string kept = text_of(folder_ / "state" / "dialplate" / "window");
    ASSERT_NE(kept.find("\"pixels_per_mm\""), std::string::npos);
    EXPECT_EQ(kept.find("1600x1000"), std::string::npos);
}

TEST_F(TrueSizeWindow, TheCardIsDraggedByItsCorner) {
    open();
    stage_.hands("key shift+t");
    std::this_thread::sleep_for(200ms);
    // Its upper left corner is 32 pixels in; 324 wide, 204 high.
    point(32 + 324, 32 + 204);
    stage_.hands("mousedown 1");
    point(32 + 340, 32 + 204);
    stage_.hands("mouseup 1");
    stage_.hands("key Return");
    shows_width(57.6 * 340 / 85.60);
}

TEST_F(TrueSizeWindow, AFingerHitsTheKeyUnderIt) {
    open();
    stage_.hands("key t");
    shows_width(57.6 * 96 / 25.4);
    plan_ = plan_window(layout_, {origin_.width, origin_.height}, Zoom::true_size(96 / 25.4), true);
    // The key "narrow" becomes active: it is drawn in the colour of the buoy.
    bool met = false;
    for (const Item& item : layout_.pages[0].items) {
        if (item.name != "narrow") continue;
        met = true;
        const Area key = plan_.on_screen(item.box);
        const auto ground = [&] {
            return stage_.photograph().at(origin_.x + key.x + 6,
                                          origin_.y + key.y + key.height / 2);
        };
        const Colour before = ground();
        point(key.x + 2, key.y + key.height - 3);
        stage_.hands("mousedown 1");
        std::this_thread::sleep_for(60ms);
        stage_.hands("mouseup 1");
        EXPECT_TRUE(until([&] { return ground() == shown(0xFCAC) && ground() != before; }))
            << std::hex << ground();
    }
    EXPECT_TRUE(met);
}

}  // namespace
}  // namespace dialplate
