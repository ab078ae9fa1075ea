// The real program in a real window, on a copy of the first example: what the tests of the window share.
#pragma once

#include "sim/desk/plan.hpp"
#include "sim/desk/tints.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/prototype/prototype.hpp"
#include "tests/desk/window/stage.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <thread>

namespace dialplate {

namespace fs = std::filesystem;
using namespace std::chrono_literals;

inline const std::string example = std::string{DIALPLATE_TREE} + "/layouts/coast-listener.json";

inline std::string text_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// RGB565 as the window shows it: high bits repeated below (standards C565-02).
inline Colour shown(std::uint16_t rgb565) {
    const unsigned r = (rgb565 >> 11) & 31u, g = (rgb565 >> 5) & 63u, b = rgb565 & 31u;
    return (r << 3 | r >> 2) << 16 | (g << 2 | g >> 4) << 8 | (b << 3 | b >> 2);
}

class Window : public testing::Test {
protected:
    void SetUp() override {
        raise(screen());
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

    /// What a test begins on.
    virtual WindowSize screen() const { return {1600, 1000}; }

    /// Another screen, instead of the one before.
    void raise(WindowSize screen) {
        program_.stop();
        ASSERT_EQ(stage_.raise(screen), "");
    }

    void TearDown() override {
        // The last picture, for a look when something failed.
        if (HasFailure() && !stage_.display().empty()) keep_picture("failed");
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

    /// Starts the program and waits for its window, whatever that shows.
    void start() {
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
    }
    void open() {
        ASSERT_NO_FATAL_FAILURE(start());
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

    /// Keeps a photograph of the screen, to be looked at: NAME.png in the test's folder.
    void keep_picture(const std::string& name) const {
        EXPECT_TRUE(stage_.photograph().save((folder_ / (name + ".png")).string()));
    }

    Stage stage_;
    Process program_;
    fs::path folder_, file_;
    Layout layout_;
    std::string window_;  ///< Its number.
    Area origin_;         ///< The window on the screen.
    Plan plan_;
};

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

}  // namespace dialplate
