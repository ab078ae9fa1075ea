#include "tests/check/sample.hpp"

namespace dialplate {

TEST(KeyAction, TellsAKeyThatDoesNothing) {
    sample::Sample s;
    Item& key = s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
    EXPECT_TRUE(s.found("key-action").empty());
    key.key.tap.kind = ActionKind::none;
    EXPECT_EQ(sample::only(s.found("key-action")).severity, Severity::should);
    key.key.hold.kind = ActionKind::page;
    EXPECT_TRUE(s.found("key-action").empty()) << "to hold it does something";
}

}  // namespace dialplate
