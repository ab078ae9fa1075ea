#include "sim/layout/suggestion.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace dialplate {
namespace {

TEST(Suggestion, CountsChangesBetweenWords) {
    struct Row {
        const char* a;
        const char* b;
        int distance;
        const char* source;
    };
    const Row rows[] = {
        {"", "", 0, "nothing to change"},
        {"", "abc", 3, "three letters put in"},
        {"kitten", "sitting", 3, "the textbook pair: k>s, e>i, +g"},
        {"sunday", "saturday", 3, "the textbook pair: +a, +t, n>r"},
        {"ca", "abc", 3, "restricted distance: a swapped pair is not touched again"},
        {"lable", "label", 1, "two neighbours swapped"},
        {"Ink", "ink", 0, "capitals count as small letters"},
        {"gruond", "ground", 1, "swap"},
        {"grnd", "ground", 2, "two left out"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_EQ(edit_distance(row.a, row.b, 9), row.distance);
        EXPECT_EQ(edit_distance(row.b, row.a, 9), row.distance);
    }
}

// The slow twin: the recursive definition, word for word.
int slow_distance(const std::string& a, const std::string& b) {
    if (a.empty() || b.empty()) return static_cast<int>(std::max(a.size(), b.size()));
    const std::string a1 = a.substr(0, a.size() - 1), b1 = b.substr(0, b.size() - 1);
    int best = std::min({slow_distance(a1, b) + 1,
                         slow_distance(a, b1) + 1,
                         slow_distance(a1, b1) + (a.back() == b.back() ? 0 : 1)});
    if (a.size() > 1 && b.size() > 1 && a.back() == b[b.size() - 2] &&
        b.back() == a[a.size() - 2]) {
        best =
            std::min(best, slow_distance(a.substr(0, a.size() - 2), b.substr(0, b.size() - 2)) + 1);
    }
    return best;
}

TEST(Suggestion, AgreesWithTheRecursiveDefinition) {
    // All words of up to four letters over two letters: 31 words, 961 pairs.
    std::vector<std::string> words = {""};
    for (std::size_t i = 0; i < words.size() && words[i].size() < 4; ++i) {
        words.push_back(words[i] + 'a');
        words.push_back(words[i] + 'b');
    }
    for (const std::string& a : words) {
        for (const std::string& b : words) {
            ASSERT_EQ(edit_distance(a, b, 8), slow_distance(a, b)) << a << ' ' << b;
        }
    }
}

TEST(Suggestion, GivesUpBeyondTheLimit) {
    EXPECT_GT(edit_distance("frequency", "xylophone", 2), 2);
    EXPECT_GT(edit_distance(std::string(100, 'a'), std::string(100, 'a') + 'b', 5), 5);
}

TEST(Suggestion, NamesTheNearestOrNothing) {
    const std::vector<std::string_view> names = {"ink", "ground", "amber", "edge", "frequency"};
    EXPECT_EQ(nearest("gruond", names), "ground");
    EXPECT_EQ(nearest("Amber", names), "amber");
    EXPECT_EQ(nearest("freq", names), "frequency");
    EXPECT_EQ(nearest("edges", names), "edge");
    EXPECT_EQ(nearest("purple", names), "");
    EXPECT_EQ(nearest("", names), "");
    EXPECT_EQ(nearest("x", {"y", "z"}), "") << "one letter is no likeness";
    EXPECT_EQ(nearest("ink", {}), "");
}

TEST(Suggestion, KnowsWhatAWordStandsForElsewhere) {
    const std::vector<std::string_view> members = {"kind", "at", "size", "text", "face", "ink"};
    EXPECT_EQ(meant_word("label", members), "text");
    EXPECT_EQ(meant_word("lable", members), "text") << "a slip in it";
    EXPECT_EQ(meant_word("color", members), "ink");
    EXPECT_EQ(meant_word("faec", members), "face") << "our own words come first";
    EXPECT_EQ(meant_word("background", members), "") << "there is no ground here";
    EXPECT_EQ(meant_word("button", {"key", "lamp"}), "key");
}

}  // namespace
}  // namespace dialplate
