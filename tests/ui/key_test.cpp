// What a finger does to keys, and what of it the receiver hears.
#include "tests/ui/page.hpp"

#include <cmath>

namespace dialplate {

namespace {

std::string heard(Prototype& p) {
    std::string out;
    for (const KeyEvent& e : p.heard()) {
        const char* words[] = {"press", "hold", "repeat", "release", "slide off"};
        out +=
            (out.empty() ? "" : ", ") + std::string(words[static_cast<int>(e.kind)]) + " " + e.name;
    }
    return out;
}

std::string key(const std::string& members, const std::string& name = "k") {
    return R"({"kind": "key", "at": [20, 20], "size": [60, 40], "text": "K", "face": "legend", "look": "key", "name": ")" +
           name + R"(", )" + members + "}";
}

}  // namespace

TEST(Key, TellsPressAndReleaseAndActsOnRelease) {
    TestPage page(key(R"("tap": {"step": "count", "by": 5})"));
    Prototype& p = *page.prototype;
    EXPECT_EQ(page.at(30, 30), black);
    p.touch(50, 40);
    p.pass(50);
    EXPECT_EQ(page.at(30, 30), white) << "pressed looks pressed";
    EXPECT_EQ(p.get(page.value("count")), 0);
    p.lift();
    p.settle();
    EXPECT_EQ(page.at(30, 30), black);
    EXPECT_EQ(p.get(page.value("count")), 5);
    EXPECT_EQ(heard(p), "press k, release k");
}

TEST(Key, ForgetsAFingerThatSlidesOff) {
    TestPage page(key(R"("tap": {"step": "count", "by": 5})"));
    Prototype& p = *page.prototype;
    p.touch(50, 40);
    p.pass(50);
    p.touch(10, 40);
    p.settle();
    EXPECT_EQ(page.at(30, 30), black);
    p.lift();
    p.settle();
    EXPECT_EQ(p.get(page.value("count")), 0);
    EXPECT_EQ(heard(p), "press k, slide off k");
    // Back again before lifting: it counts.
    p.touch(50, 40);
    p.touch(10, 40);
    p.touch(50, 40);
    p.lift();
    p.settle();
    EXPECT_EQ(p.get(page.value("count")), 5);
    EXPECT_EQ(heard(p), "press k, slide off k, press k, release k");
}

TEST(Key, EndsAtItsHalfOpenEdges) {
    TestPage page(key(R"("tap": {"step": "count", "by": 1})"));
    Prototype& p = *page.prototype;
    struct Row {
        int x, y;
        bool hit;
    };
    const Row rows[] = {{20, 20, true},
                        {79, 59, true},
                        {80, 40, false},
                        {50, 60, false},
                        {19, 40, false},
                        {50, 19, false}};
    for (const Row& row : rows) {
        p.tap(row.x, row.y);
        EXPECT_EQ(heard(p), row.hit ? "press k, release k" : "") << row.x << ", " << row.y;
    }
}

TEST(Key, HoldsOnceAndThenIsNoTap) {
    TestPage page(
        key(R"("tap": {"step": "count", "by": 1}, "hold": {"step": "count", "by": 100})"));
    Prototype& p = *page.prototype;
    p.touch(50, 40);
    p.pass(590);
    EXPECT_EQ(heard(p), "press k");
    p.pass(30);  // 600 ms, in ticks of 20
    EXPECT_EQ(heard(p), "hold k");
    p.pass(3000);
    p.lift();
    p.settle();
    EXPECT_EQ(heard(p), "release k");
    EXPECT_EQ(p.get(page.value("count")), 100);
}

TEST(Key, RepeatsWhileItIsHeld) {
    TestPage page(key(R"("tap": {"step": "count", "by": 1}, "repeat": true)"));
    Prototype& p = *page.prototype;
    p.touch(50, 40);
    p.pass(390);
    EXPECT_EQ(p.get(page.value("count")), 0);
    p.pass(20);  // first repeat after 400 ms
    EXPECT_EQ(p.get(page.value("count")), 1);
    p.pass(500);  // then every 100 ms
    EXPECT_EQ(p.get(page.value("count")), 6);
    p.lift();
    p.settle();
    EXPECT_EQ(p.get(page.value("count")), 6) << "lifting after repeats is not one more";
    p.tap(50, 40);
    EXPECT_EQ(p.get(page.value("count")), 7) << "a short tap is one";
}

TEST(Key, ShowsWhetherItsValueIsSetAndWhetherItIsEnabled) {
    TestPage page(key(
        R"("tap": {"set": "step", "to": "10"}, "active": {"value": "step", "at": "10"}, "enabled_by": "flag")"));
    Prototype& p = *page.prototype;
    EXPECT_EQ(page.at(30, 30), black);
    p.tap(50, 40);
    EXPECT_EQ(page.at(30, 30), blue);
    page.set("flag", 0);
    EXPECT_EQ(page.at(50, 20), red) << "disabled: red edge";
    heard(p);
    p.tap(50, 40);
    EXPECT_EQ(heard(p), "") << "disabled: no events";
}

TEST(Key, TurnsPagesByItselfAndLosesTheFinger) {
    TestPage page(key(R"("tap": {"page": "other"})"),
                  R"(, {"name": "other", "ground": "green", "items": [)" +
                      key(R"("tap": {"step": "count", "by": 1})", "elsewhere") + "]}");
    Prototype& p = *page.prototype;
    p.tap(50, 40);
    p.settle();
    EXPECT_EQ(p.page(), 1);
    EXPECT_EQ(page.at(0, 0), green);
    EXPECT_EQ(p.get(page.value("count")), 0);
}

TEST(Key, DrawsRoundCornersWherePixelCentresLieInTheCircle) {
    for (const int radius : {0, 1, 3, 8, 20}) {
        for (const int edge : {1, 2, 4}) {
            TestPage page(
                R"({"kind": "key", "at": [20, 20], "size": [60, 40], "text": " ", "face": "legend", "look": "key", "radius": )" +
                std::to_string(radius) + R"(, "edge": )" + std::to_string(edge) + "}");
            const std::vector<std::uint16_t> glass = page.prototype->glass();
            for (int y = 0; y < 20; ++y) {
                for (int x = 0; x < 30; ++x) {
                    // Distance of the pixel's centre from the corner's, where that counts.
                    const double dx = std::max(0.0, radius - (x + 0.5)),
                                 dy = std::max(0.0, radius - (y + 0.5));
                    const double d = dx > 0 && dy > 0 ? std::hypot(dx, dy) : 0;
                    const bool outside = d > radius;
                    const bool on_edge = x < edge || y < edge || (d > 0 && d > radius - edge);
                    const std::uint16_t expected = outside ? black : on_edge ? white : black;
                    ASSERT_EQ(glass[static_cast<std::size_t>((20 + y) * 240 + 20 + x)], expected)
                        << "radius " << radius << " edge " << edge << " at " << x << ", " << y;
                }
            }
        }
    }
}

}  // namespace dialplate
