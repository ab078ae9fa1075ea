#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

void lead(sample::Sample& s, std::size_t from, int to, bool by_holding) {
    Item item;
    item.kind = ItemKind::key;
    Action& action = by_holding ? item.key.hold : item.key.tap;
    action.kind = ActionKind::page;
    action.page = to;
    s.layout.pages[from].items.push_back(item);
}

}  // namespace

TEST(PageReach, FollowsKeysFromThePageShownFirst) {
    sample::Sample s;
    for (const char* name : {"bands", "filters", "lost"})
        s.page(name);
    lead(s, 0, 1, false);
    lead(s, 1, 2, true);
    lead(s, 3, 0, false);  // a way out is no way in
    const Finding finding = sample::only(s.found("page-reach"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_EQ(finding.pointer, "/pages/3");
    EXPECT_THAT(finding.message, ::testing::HasSubstr("page \"lost\" cannot be reached"));

    lead(s, 2, 3, false);
    EXPECT_TRUE(s.found("page-reach").empty());
}

}  // namespace dialplate
