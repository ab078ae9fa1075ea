#include "tests/check/sample.hpp"

namespace dialplate {

TEST(PressFeedback, AsksForOneCodeOfDifference) {
    sample::Sample s;
    s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
    Look& look = s.layout.looks[0];
    look.pressed = look.idle;
    EXPECT_EQ(sample::only(s.found("press-feedback")).severity, Severity::should);

    look.pressed.fill = s.paint("near white", 0xFFFBFF);  // one code of green below white
    EXPECT_TRUE(s.found("press-feedback").empty());
}

TEST(PressFeedback, ComparesWhatTheDisplayHolds) {
    sample::Sample s;
    s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
    Look& look = s.layout.looks[0];
    look.pressed = look.idle;
    look.pressed.fill = s.paint("other white", 0xFEFEFE);  // C565-01: FFFF as well
    EXPECT_EQ(s.found("press-feedback").size(), 1u);
}

TEST(PressFeedback, DoesNotCountAnEdgeThatIsNotThere) {
    sample::Sample s;
    Item& key = s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
    Look& look = s.layout.looks[0];
    look.pressed = look.idle;
    look.pressed.edge = s.black;
    key.key.edge = 1;
    EXPECT_TRUE(s.found("press-feedback").empty());
    key.key.edge = 0;
    EXPECT_EQ(s.found("press-feedback").size(), 1u);
}

TEST(PressFeedback, ComesWithin100MillisecondsOfTheTouch) {
    struct Row {
        double drawing_ms;
        std::optional<double> poll_ms;
        bool found;
        const char* source;
    };
    const Row rows[] = {
        {90.0, {}, false, "BUS-21: 100 ms (memory), 10 ms between two looks at the touch sheet"},
        {90.1, {}, true, "a tenth of a millisecond more"},
        {70.0, 30.0, false, "a sketch that looks every 30 ms"},
        {70.1, 30.0, true, "a tenth of a millisecond more"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        sample::Sample s;
        const Item& key = s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
        EventTime press;
        press.kind = EventKind::key;
        press.event = "key press";
        press.what = key.name;
        press.time = Milliseconds{row.drawing_ms};
        s.ledger.time.push_back(press);
        if (row.poll_ms)
            s.layout.thresholds = {{.rule = "press-feedback",
                                    .figure = "poll_ms",
                                    .value = *row.poll_ms,
                                    .pointer = ""}};
        const auto found = s.found("press-feedback");
        ASSERT_EQ(found.size(), row.found ? 1u : 0u);
        if (!row.found) continue;
        EXPECT_EQ(found[0].pointer, key.pointer);
        EXPECT_NEAR(found[0].measured.value_or(0.0), 100.1, 1e-9);
        EXPECT_THAT(found[0].message, ::testing::HasSubstr("1 % fewer pixels"));
    }
}

TEST(PressFeedback, ProposesInkAndFillExchangedWhereNothingIsWritten) {
    sample::Sample s;
    Look& look = s.layout.looks[0];
    look.pointer = "/looks/plain";
    look.pressed = look.idle;
    s.add_key({.x = 100, .y = 100, .width = 60, .height = 60});
    const Finding finding = sample::only(s.found("press-feedback"));
    ASSERT_EQ(finding.cure.size(), 1u);
    EXPECT_EQ(finding.cure[0].pointer, "/looks/plain/pressed");
    EXPECT_EQ(finding.cure[0].value, R"({"ink": "white", "fill": "black", "edge": "white"})");

    s.layout.places["/looks/plain/pressed"] = {.line = 3, .column = 5};
    EXPECT_TRUE(sample::only(s.found("press-feedback")).cure.empty()) << "the author's own";
    s.layout.places.clear();
    look.idle.ink = look.pressed.ink = look.idle.fill;
    EXPECT_TRUE(sample::only(s.found("press-feedback")).cure.empty()) << "it would look the same";
}

}  // namespace dialplate
