// The real program in a real window: driven by xdotool on an X server without a monitor, and read back
// from its photographs.
#include "sim/desk/plan.hpp"
#include "sim/desk/tints.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/prototype/prototype.hpp"
#include "tests/desk/window/stage.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <thread>

namespace dialplate {
namespace {

namespace fs = std::filesystem;
using namespace std::chrono_literals;

const std::string example = std::string{DIALPLATE_TREE} + "/layouts/coast-listener.json";

std::string text_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// RGB565 as the window shows it (standards C565-02: each channel stretched to 0..255, rounded).
Colour shown(std::uint16_t rgb565) {
    const unsigned r = (rgb565 >> 11) & 31u, g = (rgb565 >> 5) & 63u, b = rgb565 & 31u;
    return ((r * 255 + 15) / 31) << 16 | ((g * 255 + 31) / 63) << 8 | ((b * 255 + 15) / 31);
}

class Window : public testing::Test {
protected:
    void SetUp() override {
        const std::string reason = stage_.raise();
        ASSERT_EQ(reason, "");
        const testing::TestInfo* test = testing::UnitTest::GetInstance()->current_test_info();
        folder_ = fs::path{DIALPLATE_OUT} / "window" / test->name();
        fs::remove_all(folder_);
        fs::create_directories(folder_);
        file_ = folder_ / "layout.json";
        fs::copy_file(example, file_);
        // What the example names beside itself.
        for (const fs::directory_entry& entry :
             fs::directory_iterator(fs::path{example}.parent_path()))
            if (entry.path().extension() == ".png") fs::copy(entry.path(), folder_);
        read();
    }

    void TearDown() override {
        // The last picture, for a look when something failed.
        if (HasFailure() && !stage_.display().empty())
            output_of("DISPLAY=" + stage_.display() + " import -silent -window root " +
                      (folder_ / "failed.png").string());
    }

    void read() {
        Reading reading = load_layout(file_.string());
        ASSERT_TRUE(reading.layout.has_value());
        layout_ = std::move(*reading.layout);
    }

    /// Where the program runs; nothing that it remembers goes beyond the test.
    std::vector<std::string> surroundings() const {
        return {"DISPLAY=" + stage_.display(),
                "WAYLAND_DISPLAY=",
                "SDL_VIDEODRIVER=x11",
                "XDG_STATE_HOME=" + (folder_ / "state").string()};
    }

    void open() {
        program_.start({DIALPLATE_PROGRAM, "try", "--still", file_.string()},
                       surroundings(),
                       (folder_ / "output.txt").string());
        ASSERT_TRUE(until([&] {
            window_ = stage_.hands("search --onlyvisible --name dialplate");
            return program_.running() && !window_.empty() && window_[0] >= '0' && window_[0] <= '9';
        }));
        window_ = window_.substr(0, window_.find('\n'));
        find_window();
        stage_.hands("windowfocus --sync " + window_);
        ASSERT_TRUE(until([&] { return glass() == expected_glass(); }))
            << "the glass never showed what the prototype shows";
    }

    /// Where the window is, and with that everything in it.
    void find_window() {
        const std::string told = stage_.hands("getwindowgeometry --shell " + window_);
        const auto number = [&](const std::string& name) {
            const std::size_t at = told.find(name + "=");
            return at == std::string::npos ? 0 : std::stoi(told.substr(at + name.size() + 1));
        };
        origin_ = {number("X"), number("Y"), number("WIDTH"), number("HEIGHT")};
        plan_ = plan_window(layout_, {origin_.width, origin_.height}, 0, true);
    }

    /// Tries until it holds, or some seconds have gone by.
    static bool until(const std::function<bool()>& holds) {
        const auto end = std::chrono::steady_clock::now() + 10s;
        do {
            if (holds()) return true;
            std::this_thread::sleep_for(20ms);
        } while (std::chrono::steady_clock::now() < end);
        return false;
    }

    /// The glass as far as the opening shows it, one colour a glass pixel, read in each pixel's middle.
    std::vector<Colour> glass() const {
        return glass({0, 0, layout_.glass_width(), layout_.glass_height()});
    }
    std::vector<Colour> glass(const Box& box) const {
        const Photograph photograph = stage_.photograph();
        std::vector<Colour> pixels;
        for (int y = box.y; y < box.bottom(); ++y)
            for (int x = box.x; x < box.right(); ++x) {
                const int wx = plan_.glass.x + x * plan_.zoom + plan_.zoom / 2;
                const int wy = plan_.glass.y + y * plan_.zoom + plan_.zoom / 2;
                pixels.push_back(plan_.opening.holds(wx, wy)
                                     ? photograph.at(origin_.x + wx, origin_.y + wy)
                                     : 0);
            }
        return pixels;
    }

    /// The same from a prototype in this process, which needs no window.
    std::vector<Colour> expected_glass() {
        const Building building = build_image(layout_);
        if (!building.image) return {};
        Prototype prototype(layout_, *building.image);
        prototype.settle();
        std::vector<Colour> pixels;
        const std::vector<std::uint16_t> raw = prototype.glass();
        for (int y = 0, i = 0; y < layout_.glass_height(); ++y)
            for (int x = 0; x < layout_.glass_width(); ++x, ++i) {
                const bool seen =
                    plan_.opening.holds(plan_.glass.x + x * plan_.zoom + plan_.zoom / 2,
                                        plan_.glass.y + y * plan_.zoom + plan_.zoom / 2);
                pixels.push_back(seen ? shown(raw[static_cast<std::size_t>(i)]) : 0);
            }
        return pixels;
    }

    bool strip_has(Colour colour) const {
        const Photograph photograph = stage_.photograph();
        for (int y = plan_.strip.y; y < plan_.strip.bottom(); ++y)
            for (int x = plan_.strip.x; x < plan_.strip.right(); ++x)
                if (photograph.at(origin_.x + x, origin_.y + y) == colour) return true;
        return false;
    }

    /// Hands at a place of the window.
    void point(double x, double y) const {
        stage_.hands("mousemove " + std::to_string(origin_.x + static_cast<int>(x)) + " " +
                     std::to_string(origin_.y + static_cast<int>(y)));
    }
    void point_at(const Box& box) const {
        point(plan_.glass.x + (box.x + box.width / 2 + 0.5) * plan_.zoom,
              plan_.glass.y + (box.y + box.height / 2 + 0.5) * plan_.zoom);
    }

    const Item& dial() const {
        for (const Item& item : layout_.pages[0].items)
            if (item.kind == ItemKind::readout &&
                layout_.values[static_cast<std::size_t>(item.readout.value)].role ==
                    Role::frequency)
                return item;
        ADD_FAILURE() << "the example has no frequency on its first page";
        return layout_.pages[0].items[0];
    }

    /// Waits for the picture of the frequency to differ from `old`; @return the new one.
    std::vector<Colour> dial_other_than(const std::vector<Colour>& old) {
        std::vector<Colour> now = old;
        EXPECT_TRUE(until([&] { return (now = glass(dial().box)) != old; }))
            << "the frequency on the glass stays as it was";
        return now;
    }

    Stage stage_;
    Process program_;
    fs::path folder_, file_;
    Layout layout_;
    std::string window_;  ///< Its number.
    Area origin_;         ///< The window on the screen.
    Plan plan_;
};

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

/// A window in which something was moved by hand.
class ArrangedWindow : public Window {
protected:
    /// Drags the frequency by glass pixels, in arrange, without anything catching.
    void drag_the_dial(int right, int down) {
        stage_.hands("key F3");
        const Box& box = dial().box;
        point_at(box);
        stage_.hands("mousedown 1");
        stage_.hands("keydown alt");
        for (int step = 1; step <= 4; ++step)
            point_at({box.x + right * step / 4, box.y + down * step / 4, box.width, box.height});
        stage_.hands("mouseup 1");
        stage_.hands("keyup alt");
    }
    /// Unsaved work as it lies on disk, whole.
    std::string rescued() const {
        if (fs::exists(folder_ / "state" / "dialplate"))
            for (const fs::directory_entry& entry :
                 fs::directory_iterator(folder_ / "state" / "dialplate"))
                if (entry.path().extension() == ".json") return text_of(entry.path());
        return {};
    }
    /// The file as it is once it differs from `old`.
    std::string file_other_than(const std::string& old) {
        std::string now;
        EXPECT_TRUE(until([&] { return (now = text_of(file_)) != old && !now.empty(); }));
        return now;
    }
};

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
