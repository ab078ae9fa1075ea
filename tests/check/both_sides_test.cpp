// Every rule has a test of its own name, in which it both passes and speaks. Told from the sources, since that is all
// there is to see of tests beside this one; how near to each other the two are is for who reads them.
#include "sim/check/rule.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>

namespace dialplate {
namespace {

std::string test_of(const Rule& rule) {
    std::string name = rule.name;
    std::replace(name.begin(), name.end(), '-', '_');
    std::ifstream file(DIALPLATE_TREE "/tests/check/" + name + "_test.cpp");
    return {std::istreambuf_iterator<char>(file), {}};
}

bool has(const std::string& source, const char* pattern) {
    return std::regex_search(source, std::regex(pattern));
}

}  // namespace

TEST(EveryRule, IsSeenToPassAndToSpeak) {
    for (const Rule& rule : rules()) {
        SCOPED_TRACE(rule.name);
        const std::string source = test_of(rule);
        ASSERT_FALSE(source.empty()) << "no test of that name";
        EXPECT_NE(source.find('"' + std::string(rule.name) + '"'), std::string::npos)
            << "its test does not ask for it";
        // Nothing found, plainly or as a column of a table; and something.
        EXPECT_TRUE(has(source, R"(EXPECT_TRUE\([^;]*empty\(\))") || has(source, "IsEmpty") ||
                    has(source, R"(empty\(\),)") || has(source, R"(\? 1u : 0u)") ||
                    has(source, R"(EXPECT_EQ\([^;]*empty\(\))") || has(source, R"(std::nullopt\})"))
            << "never seen to pass";
        EXPECT_TRUE(has(source, R"(only\()") || has(source, "1u") ||
                    has(source, R"(EXPECT_FALSE\([^;]*empty\(\))") || has(source, "ElementsAre"))
            << "never seen to speak";
    }
}

}  // namespace dialplate
