#include "sim/edit/waivers.hpp"

#include "sim/layout/amend.hpp"
#include "tests/edit/example.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

const std::string waiving =
    R"({"pages": [{"items": []}, {"items": []}], "waived": [{"rule": "a", "item": "/pages/0/items/2"}, {"rule": "b"},)"
    R"( {"rule": "c", "item": "/pages/0/items/10/tap"}, {"rule": "d", "item": "/values/x"},)"
    R"( {"rule": "e", "item": "/pages/1/items/2"}]})";

/// The items of the waivers that are left, "-" for one without.
std::string items_after(const NewPlace& now) {
    const Node before = tree(waiving);
    const Amended result = amend(waiving, waivers_following(before, now));
    EXPECT_EQ(result.mistake, "");
    std::string items;
    const Node after = tree(result.text.value_or(""));
    for (const Node& waiver : after.find("waived")->elements) {
        const Node* item = waiver.find("item");
        items += (items.empty() ? "" : " ") + (item == nullptr ? "-" : item->text);
    }
    return items;
}

TEST(Waivers, FollowWhenWhatTheySpeakOfHasAnotherPlace) {
    EXPECT_EQ(items_after(after_rename("/values/x", "/values/y")),
              "/pages/0/items/2 - /pages/0/items/10/tap /values/y /pages/1/items/2");
    EXPECT_EQ(items_after(after_rename("/values/xy", "/values/y")),
              "/pages/0/items/2 - /pages/0/items/10/tap /values/x /pages/1/items/2");
    EXPECT_EQ(items_after(after_move("/pages/0/items", 2, 10)),
              "/pages/0/items/10 - /pages/0/items/9/tap /values/x /pages/1/items/2");
    EXPECT_EQ(items_after(after_move("/pages/0/items", 12, 0)),
              "/pages/0/items/3 - /pages/0/items/11/tap /values/x /pages/1/items/2");
    EXPECT_EQ(items_after(after_move("/pages", 1, 0)),
              "/pages/1/items/2 - /pages/1/items/10/tap /values/x /pages/0/items/2");
}

TEST(Waivers, GoWithTheirItemAndMoveUpBehindOthers) {
    const Node before = tree(waiving);
    const std::vector<std::string> two{"/pages/0/items/2", "/pages/0/items/4"};
    EXPECT_EQ(items_after(after_removal(before, two)),
              "- /pages/0/items/8/tap /values/x /pages/1/items/2");
    const std::vector<std::string> page{"/pages/0"};
    EXPECT_EQ(items_after(after_removal(before, page)), "- /values/x /pages/0/items/2");
}

TEST(Waivers, StayWithMembersWhoseNamesAreNumbers) {
    const std::string numbered =
        R"({"paints": {"1": "#000000", "2": "#FFFFFF"}, "waived": [{"rule": "a", "item": "/paints/2"}]})";
    const Node before = tree(numbered);
    const std::vector<std::string> first{"/paints/1"};
    EXPECT_TRUE(waivers_following(before, after_removal(before, first)).empty());
}

}  // namespace
}  // namespace dialplate
