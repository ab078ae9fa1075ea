#include "sim/edit/schema.hpp"

#include "sim/layout/mistakes.hpp"
#include "tests/edit/example.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace dialplate {
namespace {

TEST(LayoutSchema, KnowsTheShapeOfWhatIsInTheExample) {
    using Kind = Shape::Kind;
    const Node document = tree(layouts_text("coast-listener.json"));
    struct Row {
        const char* pointer;
        Kind kind;
    };
    const Row rows[] = {
        {"/title", Kind::text},
        {"/turn", Kind::choice},
        {"/mcu", Kind::object},
        {"/mcu/clock_mhz", Kind::number},
        {"/paints", Kind::map},
        {"/paints/ink", Kind::colour},
        {"/pages/0/ground", Kind::paint},
        {"/pages/0/items", Kind::list},
        {"/pages/0/items/1", Kind::object},
        {"/pages/0/items/1/kind", Kind::fixed},
        {"/pages/0/items/1/at", Kind::list},
        {"/pages/0/items/1/at/0", Kind::whole},
        {"/pages/0/items/1/value", Kind::value},
        {"/pages/0/items/1/face", Kind::face},
        {"/pages/0/items/1/ink", Kind::paint},
        {"/pages/0/items/1/align", Kind::choice},
        {"/pages/0/items/1/unit/text", Kind::text},
        {"/faces/dial/size", Kind::whole},
        {"/values/band/choices/0/text", Kind::text},
        {"/looks/key/idle/ink", Kind::paint},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.pointer);
        const Shape shape = layout_schema().shape(document, row.pointer);
        EXPECT_EQ(static_cast<int>(shape.kind), static_cast<int>(row.kind));
        EXPECT_NE(shape.description, "");
    }
}

TEST(LayoutSchema, OffersAnItemTheMembersOfItsKindWithTheirDescriptions) {
    const Node document = tree(layouts_text("coast-listener.json"));
    const std::vector<OfferedMember> members =
        layout_schema().members(document, "/pages/0/items/1");
    std::vector<std::string> names;
    for (const OfferedMember& member : members)
        names.push_back(member.name);
    for (const char* name : {"name", "at", "groups", "separator", "least", "tuning", "face"})
        EXPECT_EQ(std::count(names.begin(), names.end(), name), 1) << name;
    EXPECT_EQ(std::count(names.begin(), names.end(), "look"), 0) << "a member of keys";
    for (const OfferedMember& member : members) {
        if (member.name == "drop") {
            EXPECT_EQ(member.shape.description,
                      "Trailing digits of the number that are not shown; 0 when left out.");
            EXPECT_EQ(member.shape.most, 9.0);
        }
        if (member.name == "value") {
            EXPECT_TRUE(member.required);
        }
        if (member.name == "ground") {
            EXPECT_FALSE(member.required);
        }
    }
}

TEST(LayoutSchema, AnActionHasTheMembersOfItsVariant) {
    std::vector<Finding> findings;
    Mistakes mistakes(findings);
    const Node document =
        *parse_json(R"({"pages":[{"items":[{"kind":"key","tap":{"page":"main"}}]}]})", mistakes);
    const std::vector<OfferedMember> members =
        layout_schema().members(document, "/pages/0/items/0/tap");
    ASSERT_EQ(members.size(), 1u);
    EXPECT_EQ(members[0].name, "page");
    EXPECT_EQ(static_cast<int>(members[0].shape.kind), static_cast<int>(Shape::Kind::page));
}

}  // namespace
}  // namespace dialplate
