#include "sim/layout/amend.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <iterator>
#include <random>

namespace dialplate {
namespace {

using enum Change::Kind;

TEST(Amend, LeavesEveryOtherByteAlone) {
    struct Row {
        const char* what;
        const char* before;
        Change change;
        const char* after;
    };
    // Expected texts are written by hand.
    const Row rows[] = {
        {"a value", R"({ "a" :1 , "b":[ ] })", {replace, "/a", "22"}, R"({ "a" :22 , "b":[ ] })"},
        {"a nested element",
         R"({"a": [1,  2 ,3]})",
         {replace, "/a/1", R"("two")"},
         R"({"a": [1,  "two" ,3]})"},
        {"the whole document", " [1] \n", {replace, "", "{}"}, " {} \n"},
        {"a member behind the others on their line",
         R"({"a": 1, "b": 2})",
         {add, "/c", "3"},
         R"({"a": 1, "b": 2, "c": 3})"},
        {"a member on a line of its own, colon as its neighbour has it",
         "{\n\t\"a\" : 1\n}\n",
         {add, "/b", "2"},
         "{\n\t\"a\" : 1,\n\t\"b\" : 2\n}\n"},
        {"line ends of the file",
         "{\r\n  \"a\": 1\r\n}\r\n",
         {add, "/b", "{\n  \"c\": 2\n}"},
         "{\r\n  \"a\": 1,\r\n  \"b\": {\r\n    \"c\": 2\r\n  }\r\n}\r\n"},
        {"members wrapped over lines",
         "{\n  \"a\": 1, \"b\": 2\n}",
         {add, "/c", "3"},
         "{\n  \"a\": 1, \"b\": 2, \"c\": 3\n}"},
        {"into an empty object", R"({"a": { }})", {add, "/a/b", "1"}, R"({"a": {"b": 1}})"},
        {"into an empty list", R"({"a": []})", {add, "/a/-", "1"}, R"({"a": [1]})"},
        {"a member that is there already", R"({"a":1})", {add, "/a", "2"}, R"({"a":2})"},
        {"an element before another", "[1, 2]", {add, "/1", "9"}, "[1, 9, 2]"},
        {"an element before the first, each on a line",
         "[\n  1,\n  2\n]",
         {add, "/0", "9"},
         "[\n  9,\n  1,\n  2\n]"},
        {"an element behind the last by its index", "[1, 2]", {add, "/2", "9"}, "[1, 2, 9]"},
        {"the first away", "[1,  2, 3]", {remove, "/0", ""}, "[2, 3]"},
        {"the last away", "[1,  2 , 3 ]", {remove, "/2", ""}, "[1,  2 ]"},
        {"the only one away", "{ \"a\": {\n \"b\": 1 \n} }", {remove, "/a/b", ""}, "{ \"a\": {} }"},
        {"a line away",
         "{\n  \"a\": 1,\n  \"b\": 2,\n  \"c\": 3\n}",
         {remove, "/b", ""},
         "{\n  \"a\": 1,\n  \"c\": 3\n}"},
        {"the last line away",
         "{\n  \"a\": 1,\n  \"b\": 2\n}",
         {remove, "/b", ""},
         "{\n  \"a\": 1\n}"},
        {"brackets and commas in texts",
         R"({"a": "}],\"{", "b": [",", 1]})",
         {replace, "/b/1", "2"},
         R"({"a": "}],\"{", "b": [",", 2]})"},
        {"names with slash and tilde (RFC 6901, section 5)",
         R"({"a/b": 1, "m~n": 8})",
         {replace, "/m~0n", "9"},
         R"({"a/b": 1, "m~n": 9})"},
        {"a name with an escape", "{\"\\u0061\": 1}", {replace, "/a", "2"}, "{\"\\u0061\": 2}"},
        {"further lines of a value",
         "{\n    \"a\": 1\n}",
         {replace, "/a", "[\n  1\n]"},
         "{\n    \"a\": [\n      1\n    ]\n}"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.what);
        const Amended amended = amend(row.before, {&row.change, 1});
        ASSERT_TRUE(amended.text) << amended.mistake;
        EXPECT_EQ(*amended.text, row.after);
    }
}

TEST(Amend, AppliesAllChangesOrNone) {
    const std::vector<Change> good = {
        {add, "/a/-", "1"}, {replace, "/a/0", "2"}, {remove, "/b", ""}};
    EXPECT_EQ(amend(R"({"a": [], "b": 0})", good).text, R"({"a": [2]})");
    const std::vector<Change> bad = {{replace, "/b", "1"}, {remove, "/c", ""}};
    const Amended amended = amend(R"({"a": [], "b": 0})", bad);
    EXPECT_FALSE(amended.text);
    EXPECT_EQ(amended.mistake, R"(cannot remove "/c": there is no value at that place)");
}

TEST(Amend, SaysWhatPreventsAChange) {
    struct Row {
        const char* document;
        Change change;
        const char* mistake;
    };
    const Row rows[] = {
        {"{", {replace, "", "1"}, "not JSON"},
        {"{}", {add, "/a", "tru"}, "its value \"tru\" is not JSON"},
        {"{}", {replace, "a", "1"}, "begins with a slash"},
        {"{}", {remove, "", ""}, "whole document"},
        {"{}", {replace, "/a", "1"}, "no value at that place"},
        {"{}", {add, "/a/b", "1"}, "nothing in the document holds such a place"},
        {R"({"a": 1})", {add, "/a/b", "1"}, "nothing in the document holds such a place"},
        {"[1]", {add, "/2", "1"}, "the list has 1 elements"},
        {"[1]", {add, "/x", "1"}, "the list has 1 elements"},
        {"[1]", {replace, "/00", "1"}, "no value at that place"},
        {"[1]", {remove, "/-", ""}, "no value at that place"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.mistake);
        const Amended amended = amend(row.document, {&row.change, 1});
        EXPECT_FALSE(amended.text);
        EXPECT_NE(amended.mistake.find(row.mistake), std::string::npos) << amended.mistake;
    }
}

TEST(Amend, ShowsValuesAsWritten) {
    const char* const document = R"({"a": [1.50, {"b" : "x"}], "c": true})";
    EXPECT_EQ(written_at(document, "/a/0"), "1.50");
    EXPECT_EQ(written_at(document, "/a/1"), R"({"b" : "x"})");
    EXPECT_EQ(written_at(document, "/c"), "true");
    EXPECT_EQ(written_at(document, ""), document);
    EXPECT_EQ(written_at(document, "/a/2"), std::nullopt);
    EXPECT_EQ(written_at(document, "/a/0/x"), std::nullopt);
}

/// A value somewhere in the tree: its pointer.
std::string random_pointer(const nlohmann::json& tree, std::mt19937& random) {
    std::string pointer;
    const nlohmann::json* node = &tree;
    while (node->is_structured() && !node->empty() && (pointer.empty() || random() % 4 != 0)) {
        const auto child =
            std::next(node->begin(), static_cast<std::ptrdiff_t>(random() % node->size()));
        pointer += "/" + (node->is_object() ? child.key()
                                            : std::to_string(std::distance(node->begin(), child)));
        node = &*child;
    }
    return pointer;
}

// The reference library for what the document then says: nlohmann_json's own JSON Patch.
TEST(Amend, MeansWhatJsonPatchMeans) {
    std::ifstream file(DIALPLATE_TREE "/layouts/coast-listener.json");
    const std::string original(std::istreambuf_iterator<char>(file), {});
    ASSERT_FALSE(original.empty());
    std::string text;
    std::mt19937 random(20261125);
    for (int round = 0; round < 300; ++round) {
        if (round % 20 == 0) text = original;
        const nlohmann::json tree = nlohmann::json::parse(text);
        Change change{.pointer = random_pointer(tree, random)};
        if (change.pointer.empty()) continue;  // Everything has been removed.
        const char* const names[] = {"add", "remove", "replace"};
        change.kind = static_cast<Change::Kind>(random() % 3);
        nlohmann::json operation = {{"op", names[static_cast<int>(change.kind)]},
                                    {"path", change.pointer}};
        if (change.kind != remove) {
            const nlohmann::json value = {{"round", round}, {"list", {1, "}"}}};
            operation["value"] = value;
            change.value = value.dump(2);
        }
        SCOPED_TRACE(operation.dump());
        const Amended amended = amend(text, {&change, 1});
        ASSERT_TRUE(amended.text) << amended.mistake;
        ASSERT_EQ(nlohmann::json::parse(*amended.text),
                  tree.patch(nlohmann::json::array({operation})));
        text = *amended.text;
    }
}

TEST(AmendMoved, RenamesAMemberWhereItStands) {
    const Amended result = moved("{ \"a\" :1,\n\t\"b~/c\":  {\"x\": 2} }\n", "/b~0~1c", "/d\"e");
    ASSERT_EQ(result.mistake, "");
    EXPECT_EQ(*result.text, "{ \"a\" :1,\n\t\"d\\\"e\":  {\"x\": 2} }\n");
}

TEST(AmendMoved, MovesAnElementAndLeavesWhatStandsBetweenThem) {
    // What is between the places stays there, as their author wrote it.
    const std::string list = "{\"a\": [ 1,22 ,\n  {\"x\":\n 3} , 4 ]}";
    struct Row {
        const char *from, *to, *after;
    };
    const Row rows[] = {
        {"/a/0", "/a/1", "{\"a\": [ 22,1 ,\n  {\"x\":\n 3} , 4 ]}"},
        {"/a/2", "/a/0", "{\"a\": [ {\"x\":\n 3},1 ,\n  22 , 4 ]}"},
        {"/a/0", "/a/3", "{\"a\": [ 22,{\"x\":\n 3} ,\n  4 , 1 ]}"},
        {"/a/3", "/a/3", "{\"a\": [ 1,22 ,\n  {\"x\":\n 3} , 4 ]}"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.after);
        EXPECT_EQ(moved(list, row.from, row.to).text, row.after);
    }
}

TEST(AmendMoved, SaysWhatPreventsIt) {
    struct Row {
        const char *from, *to, *part;
    };
    const Row rows[] = {{"/a", "/b", "already"},
                        {"/c", "/d", "no value"},
                        {"/a/0", "/a/9", "1 elements"},
                        {"/a/0", "/b", "same object or list"},
                        {"", "/b", "same object or list"}};
    for (const Row& row : rows) {
        const Amended result = moved(R"({"a": [1], "b": 2})", row.from, row.to);
        EXPECT_FALSE(result.text.has_value());
        EXPECT_NE(result.mistake.find(row.part), std::string::npos) << result.mistake;
    }
}

TEST(Amend, TakesAWholeValueToAnotherPlaceWithTheIndentationOfThatPlace) {
    const std::string document =
        "{\n  \"a\": [\n    {\n      \"x\": 1\n    }\n  ],\n  \"b\": 2\n}\n";
    const std::optional<std::string> value = value_at(document, "/a/0");
    EXPECT_EQ(value, "{\n  \"x\": 1\n}");
    const Change back{replace, "/a/0", *value};
    EXPECT_EQ(amend(document, std::span(&back, 1)).text, document);
    const Change up{replace, "/b", *value};
    EXPECT_EQ(
        amend(document, std::span(&up, 1)).text,
        "{\n  \"a\": [\n    {\n      \"x\": 1\n    }\n  ],\n  \"b\": {\n    \"x\": 1\n  }\n}\n");
}

}  // namespace
}  // namespace dialplate
