#include "sim/check/waivers.hpp"
#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

/// A key of 9.18 mm: touch-size speaks of it.
sample::Sample with_small_key() {
    sample::Sample s;
    s.add_key({.x = 10, .y = 10, .width = 51, .height = 60});
    return s;
}

Waiver waiver(const std::string& rule, const std::string& item) {
    return {.rule = rule, .item = item, .reason = "used with a stylus", .pointer = "/waived/0"};
}

}  // namespace

TEST(WaiverUnused, KeepsAWaivedFindingWithItsReason) {
    sample::Sample s = with_small_key();
    ASSERT_TRUE(counts(sample::only(s.found("touch-size"))));
    s.layout.waived.push_back(waiver("touch-size", "/pages/0/items/0"));
    const Finding finding = sample::only(s.found("touch-size"));
    EXPECT_FALSE(counts(finding));
    EXPECT_EQ(finding.waived, "used with a stylus");
    EXPECT_TRUE(s.found("waiver-unused").empty());
}

TEST(WaiverUnused, AppliesAWaiverWithoutAnItemEverywhere) {
    sample::Sample s = with_small_key();
    s.layout.waived.push_back(waiver("touch-size", ""));
    EXPECT_FALSE(counts(sample::only(s.found("touch-size"))));
}

TEST(WaiverUnused, TellsAWaiverThatAcceptsNothing) {
    struct Row {
        const char* rule;
        const char* item;
        const char* why;
    };
    const Row rows[] = {
        {"touch-size", "/pages/0/items/1", "another item"},
        {"touch-size", "/pages/0/items", "a list is no item, yet it holds it"},
        {"touch-size", "/pages/0/items/01", "not the same pointer"},
        {"text-fits", "/pages/0/items/0", "another rule"},
        {"touch-sise", "/pages/0/items/0", "no rule at all"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.why);
        sample::Sample s = with_small_key();
        s.layout.waived.push_back(waiver(row.rule, row.item));
        const bool holds_it = std::string(row.item) == "/pages/0/items";
        EXPECT_EQ(counts(sample::only(s.found("touch-size"))), !holds_it);
        if (holds_it) continue;
        const Finding finding = sample::only(s.found("waiver-unused"));
        EXPECT_EQ(finding.severity, Severity::should);
        EXPECT_EQ(finding.pointer, "/waived/0");
    }
}

TEST(WaiverUnused, DoesNotTakeItemTenForItemOne) {
    const Waiver first = waiver("touch-size", "/pages/0/items/1");
    Finding finding;
    finding.severity = Severity::should;
    finding.rule = "touch-size";
    finding.pointer = "/pages/0/items/1";
    EXPECT_TRUE(accepts(first, finding));
    finding.pointer = "/pages/0/items/1/size";
    EXPECT_TRUE(accepts(first, finding)) << "a member of the item";
    finding.pointer = "/pages/0/items/10";
    EXPECT_FALSE(accepts(first, finding));
}

TEST(WaiverUnused, AcceptsNoMistakeInTheDocument) {
    Finding mistake;
    mistake.severity = Severity::error;
    mistake.rule = "unknown-member";
    EXPECT_FALSE(accepts(waiver("unknown-member", ""), mistake));
}

}  // namespace dialplate
