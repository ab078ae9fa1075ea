#include "sim/edit/differences.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

TEST(Differences, NameTheLeastPartsWithWhatBothHave) {
    const auto found = differences_between(R"({"a": {"b/c": 1, "d": [1, 2]}, "e": true})",
                                           R"({"a": {"b/c": 2, "d": [1, 3]}, "f": "x"})");
    ASSERT_EQ(found.size(), 4u);
    EXPECT_EQ(found[0].pointer, "/a/b~1c");
    EXPECT_EQ(found[0].mine, "1");
    EXPECT_EQ(found[0].theirs, "2");
    EXPECT_EQ(found[1].pointer, "/a/d/1");
    EXPECT_EQ(found[2].pointer, "/e");
    EXPECT_EQ(found[2].theirs, "none");
    EXPECT_EQ(found[3].pointer, "/f");
    EXPECT_EQ(found[3].mine, "none");
}

TEST(Differences, AListOfAnotherLengthDiffersAsAWhole) {
    const auto found = differences_between("[[1, 2]]", "[[1]]");
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].pointer, "/0");
}

TEST(Differences, SpacesAreNone) {
    EXPECT_TRUE(differences_between("{\"a\":1}", "{ \"a\": 1 }\n").empty());
}

TEST(Differences, ABrokenTextDiffersAsAWhole) {
    const auto found = differences_between("{}", "{");
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].theirs, "no JSON");
}

}  // namespace
}  // namespace dialplate
