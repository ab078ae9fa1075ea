#include "sim/edit/item_changes.hpp"

#include "sim/layout/amend.hpp"
#include "sim/layout/reader.hpp"
#include "tests/edit/example.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

Layout read(const std::string& text) {
    Reading reading = read_layout(text, "example.json", layouts_folder);
    for (const Finding& finding : reading.findings)
        EXPECT_NE(finding.severity, Severity::error) << gnu_line("example.json", finding);
    return reading.layout ? std::move(*reading.layout) : Layout{};
}

std::string amended(const std::string& text, const std::vector<Change>& changes) {
    Amended result = amend(text, changes);
    EXPECT_EQ(result.mistake, "");
    return result.text.value_or("");
}

TEST(ItemChanges, MovingAnItemChangesItsNumbersAndNothingElse) {
    const std::string text = layouts_text("coast-listener.json");
    const Layout layout = read(text);
    const Item& item = layout.pages[0].items[1];
    ASSERT_EQ(item.name, "dial");
    const std::string after = amended(text, placed(item, {9, item.box.y, item.box.width, 44}));
    EXPECT_EQ(after.size(), text.size());
    int different = 0;
    for (std::size_t i = 0; i < text.size(); ++i)
        different += text[i] != after[i] ? 1 : 0;
    EXPECT_EQ(different, 2) << "8 to 9, 43 to 44";
    EXPECT_EQ(read(after).pages[0].items[1].box, (Box{9, item.box.y, item.box.width, 44}));
    EXPECT_TRUE(placed(item, item.box).empty());
}

TEST(ItemChanges, CopiesLieBehindWithNamesOfTheirOwn) {
    const std::string text = layouts_text("coast-listener.json");
    const Layout layout = read(text);
    const std::vector<std::string> both{"/pages/0/items/3", "/pages/0/items/2"};
    const Additions copies = duplicated(text, layout, both, {8, 8});
    const Layout after = read(amended(text, copies.changes));
    const std::size_t count = layout.pages[0].items.size();
    ASSERT_EQ(after.pages[0].items.size(), count + 2);
    ASSERT_EQ(copies.pointers.size(), 2u);
    const Item& tape = after.pages[0].items[count];
    EXPECT_EQ(tape.pointer, copies.pointers[0]);
    EXPECT_EQ(tape.name, "tape 2");
    EXPECT_EQ(tape.box.x, layout.pages[0].items[2].box.x + 8);
}

TEST(ItemChanges, ACopyIsWrittenAsItsOriginal) {
    const std::string text = layouts_text("coast-listener.json");
    const Layout layout = read(text);
    const std::vector<std::string> one{"/pages/0/items/1"};
    const Additions copy = duplicated(text, layout, one, {0, 0});
    const std::string after = amended(text, copy.changes);
    std::string original(written_at(text, one[0]).value_or(""));
    ASSERT_NE(original.find('\n'), std::string::npos) << "on several lines, or this shows nothing";
    original.replace(original.find("\"dial\""), 6, "\"dial 2\"");
    EXPECT_EQ(written_at(after, copy.pointers.at(0)), original);
}

TEST(ItemChanges, DeletingSeveralTakesTheRightOnes) {
    const std::string text = layouts_text("coast-listener.json");
    const Layout layout = read(text);
    const std::vector<std::string> two{"/pages/0/items/2", "/pages/0/items/10"};
    const Layout after = read(amended(text, deleted(tree(text), two)));
    ASSERT_EQ(after.pages[0].items.size(), layout.pages[0].items.size() - 2);
    std::size_t at = 0;
    for (std::size_t i = 0; i < layout.pages[0].items.size(); ++i) {
        if (i == 2 || i == 10) continue;
        EXPECT_EQ(after.pages[0].items[at++].name, layout.pages[0].items[i].name);
    }
}

TEST(ItemChanges, RaisedItemsAreDrawnLastInTheirOldOrder) {
    const std::string text = layouts_text("coast-listener.json");
    const Layout layout = read(text);
    const std::vector<std::string> two{"/pages/0/items/4", "/pages/0/items/1"};
    const Raised up = raised(text, layout, two);
    ASSERT_EQ(up.document.mistake, "");
    const Layout after = read(*up.document.text);
    const std::size_t count = layout.pages[0].items.size();
    EXPECT_EQ(after.pages[0].items[count - 2].name, layout.pages[0].items[1].name);
    EXPECT_EQ(after.pages[0].items[count - 1].name, layout.pages[0].items[4].name);
    ASSERT_EQ(up.pointers.size(), 2u);
    EXPECT_EQ(up.pointers[0], after.pages[0].items[count - 2].pointer);
}

TEST(ItemChanges, ANewItemOfEachKindIsReadWithoutAMistake) {
    const std::string text = layouts_text("coast-listener.json");
    const Layout layout = read(text);
    for (const ItemKind kind : {ItemKind::readout,
                                ItemKind::key,
                                ItemKind::legend,
                                ItemKind::lamp,
                                ItemKind::meter,
                                ItemKind::scale,
                                ItemKind::frame}) {
        SCOPED_TRACE(name_of(kind));
        const NewItem made = new_item(layout, 0, kind, 400, 10);
        EXPECT_EQ(made.obstacle, "");
        const Layout after = read(amended(text, made.additions.changes));
        ASSERT_EQ(after.pages.size(), layout.pages.size());
        const Item& item = after.pages[0].items.back();
        EXPECT_EQ(item.kind, kind);
        EXPECT_EQ(item.pointer, made.additions.pointers.at(0));
        EXPECT_LE(item.box.right(), 320);
    }
    EXPECT_NE(new_item(layout, 0, ItemKind::picture, 0, 0).obstacle, "");
}

TEST(ItemChanges, APointerIntoAnItemLeadsToTheItem) {
    const Layout layout = read(layouts_text("coast-listener.json"));
    const std::optional<ItemIndex> place = item_at(layout, "/pages/1/items/2/tap/to");
    ASSERT_TRUE(place.has_value());
    EXPECT_EQ(place->page, 1);
    EXPECT_EQ(place->item, 2);
    for (const char* none :
         {"", "/pages/0", "/pages/0/items/999", "/paints/ink", "/pages/-1/items/0"})
        EXPECT_FALSE(item_at(layout, none).has_value()) << none;
}

}  // namespace
}  // namespace dialplate
