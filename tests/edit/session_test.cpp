#include "sim/edit/session.hpp"

#include <gtest/gtest.h>

#include <random>

namespace dialplate {
namespace {

// As an author writes it: uneven spaces that no writer of JSON would make.
const std::string uneven =
    "{ \"title\":   \"A\",\n  \"pages\": [ {\"items\": [{\"at\": [1,2]},\n {\"at\": [ 3 , 4 ]}]} "
    "]}\n";

Change set(const std::string& pointer, const std::string& value) {
    return {Change::Kind::replace, pointer, value};
}

std::string do_one(Session& session, const Change& change, const std::string& stroke = {}) {
    return session.change(std::span(&change, 1), "set " + change.pointer, stroke);
}

TEST(Session, ChangesOnlyTheBytesOfTheMember) {
    Session session(uneven);
    EXPECT_EQ(do_one(session, set("/pages/0/items/1/at/0", "30")), "");
    std::string expected = uneven;
    expected.replace(expected.find("[ 3 ,"), 5, "[ 30 ,");
    EXPECT_EQ(session.text(), expected);
    EXPECT_TRUE(session.changed());
}

TEST(Session, UndoGoesBackToTheOriginalBytesAndRedoForwardAgain) {
    Session session(uneven);
    std::vector<std::string> texts{uneven};
    std::mt19937 random(1);
    for (int i = 0; i < 500; ++i) {
        const std::string pointer = "/pages/0/items/" + std::to_string(random() % 2) + "/at/" +
                                    std::to_string(random() % 2);
        do_one(session, set(pointer, std::to_string(random() % 1000)));
        if (session.text() != texts.back()) texts.push_back(session.text());
    }
    for (std::size_t i = texts.size(); i-- > 1;) {
        ASSERT_EQ(session.text(), texts[i]);
        ASSERT_TRUE(session.can_undo());
        session.undo();
    }
    EXPECT_EQ(session.text(), uneven);
    EXPECT_FALSE(session.can_undo());
    EXPECT_FALSE(session.changed());
    for (const std::string& text : texts) {
        EXPECT_EQ(session.text(), text);
        session.redo();
    }
    EXPECT_FALSE(session.can_redo());
}

TEST(Session, OneDragIsOneStepHoweverManyMovesItHas) {
    Session session(uneven);
    for (int x = 2; x < 60; ++x)
        do_one(session, set("/pages/0/items/0/at/0", std::to_string(x)), "drag");
    session.end_stroke();
    do_one(session, set("/pages/0/items/0/at/0", "99"), "drag");
    session.undo();
    EXPECT_NE(session.text().find("[59,2]"), std::string::npos) << session.text();
    session.undo();
    EXPECT_EQ(session.text(), uneven);
    EXPECT_FALSE(session.can_undo());
}

TEST(Session, ADragBackToItsBeginningLeavesNothingToUndo) {
    Session session(uneven);
    do_one(session, set("/pages/0/items/0/at/0", "5"), "drag");
    do_one(session, set("/pages/0/items/0/at/0", "1"), "drag");
    EXPECT_FALSE(session.can_undo());
    EXPECT_FALSE(session.changed());
}

TEST(Session, AStepAfterUndoDropsWhatCouldBeDoneAgain) {
    Session session(uneven);
    do_one(session, set("/title", "\"B\""));
    session.undo();
    do_one(session, set("/title", "\"C\""));
    EXPECT_FALSE(session.can_redo());
    session.undo();
    EXPECT_EQ(session.text(), uneven);
}

TEST(Session, UndoBringsTheChoiceOfItemsBack) {
    Session session(uneven);
    session.choose({"/pages/0/items/1"});
    const Change gone{Change::Kind::remove, "/pages/0/items/1", {}};
    do_one(session, gone);
    session.choose({});
    session.undo();
    EXPECT_EQ(session.chosen(), Chosen{"/pages/0/items/1"});
    session.redo();
    EXPECT_EQ(session.chosen(), Chosen{});
}

TEST(Session, AnImpossibleChangeLeavesEverythingAndSaysWhy) {
    Session session(uneven);
    const std::string reason = do_one(session, set("/pages/7", "1"));
    EXPECT_NE(reason.find("/pages/7"), std::string::npos) << reason;
    EXPECT_EQ(session.text(), uneven);
    EXPECT_FALSE(session.can_undo());
}

TEST(Session, ASaveIsNotAStepAndUndoBehindItCountsAsAChange) {
    Session session(uneven);
    do_one(session, set("/title", "\"B\""));
    session.mark_saved();
    EXPECT_FALSE(session.changed());
    session.undo();
    EXPECT_TRUE(session.changed());
    EXPECT_EQ(session.text(), uneven);
}

}  // namespace
}  // namespace dialplate
