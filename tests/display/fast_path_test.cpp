// The controller's fast paths against a slow, obvious twin.
#include "sim/display/controller.hpp"
#include "sim/display/pixel_format.hpp"
#include "tests/display/display_fixture.hpp"

#include <gtest/gtest.h>

#include <random>
#include <set>
#include <utility>

namespace dialplate {
namespace {

/// One pixel at a time, one conversion of coordinates for each; windows, address mode and 16- and
/// 18-bit pixels only.
class SlowController {
public:
    SlowController(int width, int height)
        : width_(width), height_(height), memory_(static_cast<std::size_t>(width * height)) {}

    void window(int left, int right, int top, int bottom) {
        left_ = left, right_ = right, top_ = top, bottom_ = bottom;
        sent_ = 0;
    }
    void mode(int mode) { mode_ = mode; }
    void pixel(std::uint16_t colour) {
        ++pixels;
        if (right_ < left_ || bottom_ < top_) return;
        const long across = right_ - left_ + 1;
        const long area = across * (bottom_ - top_ + 1);
        const long at = sent_++ % area;
        int x = left_ + static_cast<int>(at % across);
        int y = top_ + static_cast<int>(at / across);
        if ((mode_ & 0x20) != 0) std::swap(x, y);
        if ((mode_ & 0x40) != 0) x = width_ - 1 - x;
        if ((mode_ & 0x80) != 0) y = height_ - 1 - y;
        if (x < 0 || y < 0 || x >= width_ || y >= height_) return;
        memory_[static_cast<std::size_t>(y * width_ + x)] = colour;
        if (!touched_.insert({x, y}).second) ++twice;
    }
    void begin_update() { touched_.clear(); }
    [[nodiscard]] const std::vector<std::uint16_t>& memory() const { return memory_; }

    long pixels = 0, twice = 0;

private:
    int width_, height_, mode_ = 0;
    int left_ = 0, right_ = 0, top_ = 0, bottom_ = 0;
    long sent_ = 0;
    std::vector<std::uint16_t> memory_;
    std::set<std::pair<int, int>> touched_;
};

TEST(FastPath, MatchesTheBytePathAndTheSlowTwinOverRandomTraffic) {
    constexpr int width = 13, height = 21;
    std::mt19937 random(20240501);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    for (int round = 0; round < 40; ++round) {
        SCOPED_TRACE(round);
        Controller fast(plain_display(width, height));
        Controller bytes(plain_display(width, height));
        SlowController slow(width, height);
        int format = 2;
        for (Controller* c : {&fast, &bytes})
            wake(*c, 0);
        for (int step = 0; step < 60; ++step) {
            if (below(4) == 0) {
                const int mode = below(8) * 0x20;
                for (Controller* c : {&fast, &bytes})
                    send(*c, 0x36, {mode});
                slow.mode(mode);
            }
            if (below(8) == 0) {
                format = 2 + below(2);
                for (Controller* c : {&fast, &bytes})
                    send(*c, 0x3A, {format == 2 ? 0x55 : 0x66});
            }
            if (below(10) == 0) {
                for (Controller* c : {&fast, &bytes})
                    c->begin_update();
                slow.begin_update();
            }
            // Mostly inside, sometimes reaching out, sometimes start after end.
            const int left = below(height), top = below(height);
            const int right = left + below(9) - 1, bottom = top + below(9) - 1;
            if (right < 0 || bottom < 0) continue;
            for (Controller* c : {&fast, &bytes})
                open(*c, left, right, top, bottom);
            slow.window(left, right, top, bottom);
            for (int run = below(6); run > 0; --run) {
                const auto colour = static_cast<std::uint16_t>(random());
                const int count = below(30);
                fast.pixels(colour, count);
                for (int i = 0; i < count; ++i) {
                    slow.pixel(colour);
                    if (format == 2) {
                        for (const std::uint8_t byte : sixteen_bit(colour))
                            bytes.data(byte);
                    } else {
                        for (const std::uint8_t byte : eighteen_bit(colour))
                            bytes.data(byte);
                    }
                }
            }
        }
        ASSERT_EQ(fast.glass(0), bytes.glass(0));
        ASSERT_EQ(fast.glass(0), slow.memory());
        ASSERT_EQ(fast.counters(), bytes.counters());
        ASSERT_EQ(fast.counters().pixels, slow.pixels);
        ASSERT_EQ(fast.counters().pixels_twice, slow.twice);
        ASSERT_GT(slow.twice, 0);
    }
}

TEST(FastPath, TreatsPixelsThatNobodyAskedForAsTheBytesTheyAre) {
    const auto prepare = [](Controller& c, int kind) {
        wake(c, 0);
        if (kind == 1) c.command(0x2A);  // Parameters expected.
        if (kind == 2) open(c, 0, 3, 0, 3);
        if (kind == 2) c.data(0xAA);     // Half a pixel sent.
        if (kind == 3) c.command(0xB1);  // A maker's command.
    };
    for (const int kind : {0, 1, 2, 3}) {
        SCOPED_TRACE(kind);
        Controller fast(plain_display(4, 4)), bytes(plain_display(4, 4));
        prepare(fast, kind);
        prepare(bytes, kind);
        fast.pixels(0x0001, 5);
        for (int i = 0; i < 5; ++i) {
            bytes.data(0x00);
            bytes.data(0x01);
        }
        EXPECT_EQ(fast.counters(), bytes.counters());
        EXPECT_EQ(fast.glass(0), bytes.glass(0));
    }
}

TEST(FastPath, KeepsEveryColourThroughEighteenBits) {
    EXPECT_EQ(eighteen_bit(0xFFFF), (std::array<std::uint8_t, 3>{0xFF, 0xFF, 0xFF}));
    // standards C565-02: 16 of 31 -> 132, 32 of 63 -> 130.
    EXPECT_EQ(eighteen_bit(0x8410), (std::array<std::uint8_t, 3>{132, 130, 132}));
    for (int word = 0; word <= 0xFFFF; ++word) {
        const auto colour = static_cast<std::uint16_t>(word);
        ASSERT_EQ(rgb565_of(eighteen_bit(colour)), colour);  // standards C565-04
    }
}

}  // namespace
}  // namespace dialplate
