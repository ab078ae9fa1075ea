#include "sim/receiver/receiver.hpp"

#include "sim/receiver/bands.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <set>

namespace dialplate {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

Choice choice(const std::string& text, std::optional<std::int32_t> number = {}) {
    Choice made;
    made.text = text;
    made.number = number;
    return made;
}

Choice band(const std::string& text,
            BandEdges edges,
            std::int32_t number,
            std::optional<std::string> mode = {}) {
    Choice made = choice(text, number);
    made.low = edges.low;
    made.high = edges.high;
    made.mode = std::move(mode);
    return made;
}

/// A radio with a value of every role; the ids are those of the members.
struct Radio {
    Layout layout;
    ValueId frequency = number("Hz", Role::frequency, {530'000, 29'999'990}, 7'100'000);
    ValueId step = choices(Role::step, {choice("10 Hz", 10), choice("1 kHz", 1000)}, 1);
    ValueId bands = choices(Role::band,
                            {band("80 m", {3'500'000, 3'800'000}, 3'650'000, "LSB"),
                             band("40 m", {7'000'000, 7'200'000}, 7'100'000, "LSB"),
                             band("41 m", {7'200'000, 7'450'000}, 7'300'000, "AM"),
                             band("20 m", {14'000'000, 14'350'000}, 14'200'000)},
                            1);
    ValueId mode =
        choices(Role::mode, {choice("LSB"), choice("USB"), choice("AM"), choice("CW")}, 0);
    ValueId bandwidth =
        choices(Role::bandwidth, {choice("2.4 kHz", 2400), choice("500 Hz", 500)}, 0);
    ValueId attenuator = choices(Role::attenuator, {choice("0 dB", 0), choice("10 dB", 10)}, 0);
    ValueId signal = level("dBm", Role::signal, {-127, -13}, -73);
    ValueId hours = number("", Role::clock_hours, {0, 23}, 23);
    ValueId minutes = number("", Role::clock_minutes, {0, 59}, 59);
    ValueId seconds = number("", Role::clock_seconds, {0, 59}, 58);
    ValueId lock = flag();

    struct Range {
        std::int32_t min, max;
    };
    ValueId add(Value value) {
        value.name = "v" + std::to_string(layout.values.size());
        layout.values.push_back(std::move(value));
        return static_cast<ValueId>(layout.values.size() - 1);
    }
    ValueId number(const std::string& unit, Role role, Range range, std::int32_t start) {
        Value value;
        value.unit = unit;
        value.role = role;
        value.min = range.min;
        value.max = range.max;
        value.start = start;
        return add(value);
    }
    ValueId level(const std::string& unit, Role role, Range range, std::int32_t start) {
        const ValueId made = number(unit, role, range, start);
        layout.values.back().type = ValueType::level;
        return made;
    }
    ValueId choices(Role role, std::vector<Choice> list, std::int32_t start) {
        Value value;
        value.type = ValueType::choice;
        value.role = role;
        value.max = static_cast<std::int32_t>(list.size()) - 1;
        value.start = start;
        value.choices = std::move(list);
        return add(value);
    }
    ValueId flag() {
        Value value;
        value.type = ValueType::flag;
        value.max = 1;
        return add(value);
    }
};

Action set_to(ValueId value, std::int32_t to) {
    Action action;
    action.kind = ActionKind::set;
    action.value = value;
    action.amount = to;
    return action;
}

Action step_by(ValueId value, std::int32_t by, bool around) {
    Action action = set_to(value, by);
    action.kind = ActionKind::step;
    action.around = around;
    return action;
}

TEST(Receiver, StartsWithTheLayoutsValuesAndNothingChanged) {
    const Radio radio;
    Receiver receiver(radio.layout);
    for (std::size_t i = 0; i < radio.layout.values.size(); ++i) {
        EXPECT_EQ(receiver.get(static_cast<ValueId>(i)), radio.layout.values[i].start);
    }
    EXPECT_THAT(receiver.changed(), IsEmpty());
}

TEST(Receiver, TunesByTheStep) {
    const Radio radio;
    Receiver receiver(radio.layout);
    receiver.turn(3);
    EXPECT_EQ(receiver.get(radio.frequency), 7'103'000);
    receiver.set(radio.step, 0);
    receiver.turn(-1);
    EXPECT_EQ(receiver.get(radio.frequency), 7'102'990);
    receiver.set(radio.step, 1);
    receiver.turn(1);
    EXPECT_EQ(receiver.get(radio.frequency), 7'103'000) << "to the next whole kilohertz";
    receiver.turn(0);
    EXPECT_EQ(receiver.get(radio.frequency), 7'103'000);
}

TEST(Receiver, StopsAtTheEndsOfItsRange) {
    const Radio radio;
    Receiver receiver(radio.layout);
    receiver.turn(2'000'000'000);
    EXPECT_EQ(receiver.get(radio.frequency), 29'999'990);
    receiver.turn(-1);
    EXPECT_EQ(receiver.get(radio.frequency), 29'999'000);
    receiver.turn(-2'000'000'000);
    EXPECT_EQ(receiver.get(radio.frequency), 530'000);
}

TEST(Receiver, TakesThePlainNumberOfAStepValueInItsUnit) {
    Radio radio;
    Value& step = radio.layout.values[static_cast<std::size_t>(radio.step)];
    step.type = ValueType::number;
    step.min = 1;
    step.max = 100;
    step.start = 5;
    step.unit = "kHz";
    Receiver receiver(radio.layout);
    receiver.turn(1);
    EXPECT_EQ(receiver.get(radio.frequency), 7'105'000);
}

TEST(Receiver, SurvivesTheWildestKnob) {
    Radio radio;
    Value& step = radio.layout.values[static_cast<std::size_t>(radio.step)];
    step.choices = {choice("all", std::numeric_limits<std::int32_t>::max())};
    step.max = step.start = 0;
    step.unit = "MHz";
    Receiver receiver(radio.layout);
    receiver.turn(std::numeric_limits<int>::max());
    EXPECT_EQ(receiver.get(radio.frequency), 29'999'990);
    receiver.turn(std::numeric_limits<int>::min());
    EXPECT_EQ(receiver.get(radio.frequency), 530'000);
}

TEST(Receiver, TunesAFrequencyInKilohertz) {
    Radio radio;
    Value& frequency = radio.layout.values[static_cast<std::size_t>(radio.frequency)];
    frequency.unit = "kHz";
    frequency.min = 531;
    frequency.max = 1602;
    frequency.start = 999;
    Value& step = radio.layout.values[static_cast<std::size_t>(radio.step)];
    step.choices = {choice("9 kHz", 9)};
    step.max = step.start = 0;
    Receiver receiver(radio.layout);
    receiver.turn(-2);
    EXPECT_EQ(receiver.get(radio.frequency), 981);  // 9 kHz channels: standards RX-14
}

TEST(Receiver, RemembersAFrequencyForEachBand) {
    const Radio radio;
    Receiver receiver(radio.layout);
    receiver.turn(20);
    receiver.act(set_to(radio.bands, 3));
    EXPECT_EQ(receiver.get(radio.frequency), 14'200'000) << "the choice's own, the first time";
    receiver.turn(-5);
    receiver.act(set_to(radio.bands, 1));
    EXPECT_EQ(receiver.get(radio.frequency), 7'120'000);
    receiver.act(set_to(radio.bands, 3));
    EXPECT_EQ(receiver.get(radio.frequency), 14'195'000);
}

TEST(Receiver, FollowsTheBandAcrossItsEdges) {
    const Radio radio;
    Receiver receiver(radio.layout);
    receiver.set(radio.frequency, 7'200'000);
    EXPECT_EQ(receiver.get(radio.bands), 1) << "both contain the edge: the band stays";
    receiver.turn(1);
    EXPECT_EQ(receiver.get(radio.bands), 2);
    receiver.turn(-1);
    EXPECT_EQ(receiver.get(radio.bands), 2) << "the edge again";
    receiver.turn(-1);
    EXPECT_EQ(receiver.get(radio.bands), 1);
    receiver.set(radio.frequency, 10'000'000);
    EXPECT_EQ(receiver.get(radio.bands), 1) << "in none: the last one stays";
}

TEST(Receiver, PrefersTheNarrowestOfSeveralBands) {
    Radio radio;
    auto& bands = radio.layout.values[static_cast<std::size_t>(radio.bands)];
    bands.choices.insert(bands.choices.begin(), band("all", {500'000, 30'000'000}, 5'000'000));
    bands.max = 4;
    bands.start = 2;  // 40 m
    Receiver receiver(radio.layout);
    receiver.set(radio.frequency, 14'100'000);
    EXPECT_EQ(receiver.get(radio.bands), 4);
    receiver.set(radio.frequency, 12'000'000);
    EXPECT_EQ(receiver.get(radio.bands), 0);
    receiver.set(radio.frequency, 14'100'000);
    EXPECT_EQ(receiver.get(radio.bands), 0) << "still inside";
}

TEST(Receiver, ComesBackIntoABandItHasStrayedFrom) {
    const Radio radio;
    Receiver receiver(radio.layout);
    receiver.set(radio.frequency, 7'050'000);
    receiver.set(radio.frequency, 10'000'000);
    receiver.act(set_to(radio.bands, 1));
    EXPECT_EQ(receiver.get(radio.frequency), 7'050'000);
    (void)receiver.changed();
    receiver.act(set_to(radio.bands, 1));
    EXPECT_THAT(receiver.changed(), IsEmpty()) << "already there";
}

TEST(Receiver, BringsTheUsualModeWithABand) {
    const Radio radio;
    Receiver receiver(radio.layout);
    const auto mode = [&] {
        return radio.layout.values[static_cast<std::size_t>(radio.mode)]
            .choices[static_cast<std::size_t>(receiver.get(radio.mode))]
            .text;
    };
    receiver.act(set_to(radio.bands, 3));
    EXPECT_EQ(mode(), "USB") << "no mode of its own: by frequency, standards RX-10";
    receiver.act(set_to(radio.bands, 2));
    EXPECT_EQ(mode(), "AM") << "the band's own";
    receiver.act(set_to(radio.bands, 3));
    EXPECT_EQ(mode(), "AM") << "by frequency only from one sideband to the other";
    receiver.set(radio.mode, 3);
    receiver.turn(1);
    EXPECT_EQ(mode(), "CW") << "tuning changes no mode";
    receiver.act(set_to(radio.bands, 0));
    EXPECT_EQ(mode(), "LSB");
}

TEST(Receiver, MovesTheReadingByTheAttenuator) {
    const Radio radio;
    Receiver receiver(radio.layout);
    receiver.act(set_to(radio.attenuator, 1));
    EXPECT_EQ(receiver.get(radio.signal), -83);  // standards RX-09
    EXPECT_THAT(receiver.changed(), ElementsAre(radio.attenuator, radio.signal));
    receiver.act(set_to(radio.attenuator, 0));
    EXPECT_EQ(receiver.get(radio.signal), -73);
    receiver.set(radio.signal, -120);
    receiver.act(set_to(radio.attenuator, 1));
    EXPECT_EQ(receiver.get(radio.signal), -127) << "the end of the meter";
    receiver.act(set_to(radio.attenuator, 0));
    EXPECT_EQ(receiver.get(radio.signal), -120) << "and back, not from the end";
}

TEST(Receiver, SpreadsTheSignalOverARangeInAnotherUnit) {
    Radio radio;
    Value& signal = radio.layout.values[static_cast<std::size_t>(radio.signal)];
    signal.unit = "";
    signal.min = 0;
    signal.max = 114;  // A unit for each dB from S0 to S9+60.
    signal.start = 54;
    Receiver receiver(radio.layout);
    receiver.act(set_to(radio.attenuator, 1));
    EXPECT_EQ(receiver.get(radio.signal), 44);
}

TEST(Receiver, StandsStillUnlessItLives) {
    const Radio radio;
    Receiver receiver(radio.layout);
    receiver.pass(100'000, false);
    EXPECT_THAT(receiver.changed(), IsEmpty());
}

TEST(Receiver, LivesTheSameWayHoweverTimeIsCutUp) {
    const Radio radio;
    Receiver whole(radio.layout), cut(radio.layout), other(radio.layout, 99);
    std::vector<int> differences;
    int other_differs = 0;
    for (int second = 0; second < 30; ++second) {
        whole.pass(1000, true);
        other.pass(1000, true);
        for (int i = 0; i < 125; ++i)
            cut.pass(8, true);
        for (std::size_t i = 0; i < radio.layout.values.size(); ++i) {
            const auto value = static_cast<ValueId>(i);
            ASSERT_EQ(whole.get(value), cut.get(value)) << second << " s, value " << i;
        }
        if (whole.get(radio.signal) != other.get(radio.signal)) ++other_differs;
        whole.turn(7);
        cut.turn(7);
        other.turn(7);
    }
    EXPECT_GT(other_differs, 0) << "another seed, other stations";
}

TEST(Receiver, FadesSlowlyWithinItsRange) {
    Radio radio;
    Receiver receiver(radio.layout);
    receiver.set(radio.frequency, 6'070'000);
    receiver.pass(10'000, true);  // Let the meter come down from its start.
    std::set<std::int32_t> seen;
    std::int32_t before = receiver.get(radio.signal);
    for (int i = 0; i < 600; ++i) {
        receiver.pass(50, true);
        const std::int32_t now = receiver.get(radio.signal);
        EXPECT_LE(std::abs(now - before), 2) << "slowly: a fade, not a crackle";
        EXPECT_GE(now, -127);
        EXPECT_LE(now, -13);
        seen.insert(now);
        before = now;
    }
    EXPECT_GE(seen.size(), 3u);
}

TEST(Receiver, FindsStationsWhenTuning) {
    const Radio radio;
    Receiver receiver(radio.layout);
    std::vector<std::int32_t> readings;
    for (int khz = 5900; khz <= 6200; khz += 5) {  // The channels of a broadcast band.
        receiver.set(radio.frequency, khz * 1000);
        receiver.pass(10'000, true);
        readings.push_back(receiver.get(radio.signal));
    }
    std::sort(readings.begin(), readings.end());
    EXPECT_LT(readings.front(), -100) << "quiet places";
    EXPECT_GT(readings.back(), -65) << "strong stations";
}

TEST(Receiver, HearsLessNoiseInANarrowerBand) {
    // Where there is no station, 10 log10(2400 / 500) = 6.8 dB less: standards RX-07. A frequency with
    // the least reading of a stretch stands for "no station".
    const Ether ether(1);
    const auto quietest = [&](double bandwidth) {
        double least = 0.0;
        for (int khz = 22'500; khz < 22'900; ++khz) {
            least = std::min(least, ether.power({Hertz{khz * 1e3}, Hertz{bandwidth}}, 0).value);
        }
        return least;
    };
    EXPECT_NEAR(quietest(2400) - quietest(500), 6.8, 0.3);
}

TEST(Receiver, RunsItsClockOverMidnight) {
    const Radio radio;
    Receiver receiver(radio.layout);
    receiver.pass(1999, true);
    EXPECT_EQ(receiver.get(radio.seconds), 59);
    receiver.pass(1, true);
    EXPECT_EQ(receiver.get(radio.hours), 0);
    EXPECT_EQ(receiver.get(radio.minutes), 0);
    EXPECT_EQ(receiver.get(radio.seconds), 0);
    receiver.set(radio.hours, 12);
    receiver.pass(61'000, true);
    EXPECT_EQ(receiver.get(radio.hours), 12);
    EXPECT_EQ(receiver.get(radio.minutes), 1);
    EXPECT_EQ(receiver.get(radio.seconds), 1);
}

TEST(Receiver, StepsChoicesAndNumbersAroundTheirEnds) {
    struct Row {
        bool choice;
        std::int32_t from, by;
        bool around;
        std::int32_t to;
    };
    const Row rows[] = {
        {true, 3, 1, true, 0},
        {true, 0, -1, true, 3},
        {true, 3, 1, false, 3},
        {true, 0, -1, false, 0},
        {true, 1, -3, true, 2},
        {false, 59, 1, true, 0},
        {false, 0, -1, true, 59},
        {false, 55, 10, false, 59},
        {false, 55, 10, true, 0},
        {false, 5, 10, true, 15},
        {false, 5, -10, false, 0},
    };
    const Radio radio;
    for (const Row& row : rows) {
        const ValueId value = row.choice ? radio.mode : radio.minutes;
        Receiver receiver(radio.layout);
        receiver.set(value, row.from);
        receiver.act(step_by(value, row.by, row.around));
        EXPECT_EQ(receiver.get(value), row.to) << row.from << " by " << row.by;
    }
}

TEST(Receiver, TogglesFlagsAndLeavesPagesToOthers) {
    const Radio radio;
    Receiver receiver(radio.layout);
    Action toggle = set_to(radio.lock, 0);
    toggle.kind = ActionKind::toggle;
    receiver.act(toggle);
    EXPECT_EQ(receiver.get(radio.lock), 1);
    receiver.act(toggle);
    EXPECT_EQ(receiver.get(radio.lock), 0);
    (void)receiver.changed();
    Action page;
    page.kind = ActionKind::page;
    page.page = 1;
    receiver.act(page);
    receiver.act(Action{});
    EXPECT_THAT(receiver.changed(), IsEmpty());
}

TEST(Receiver, ClampsWhatIsSetAndTellsWhatChanged) {
    const Radio radio;
    Receiver receiver(radio.layout);
    receiver.set(radio.bandwidth, 7);
    EXPECT_EQ(receiver.get(radio.bandwidth), 1);
    receiver.set(radio.bandwidth, 1);
    EXPECT_THAT(receiver.changed(), ElementsAre(radio.bandwidth));
    EXPECT_THAT(receiver.changed(), IsEmpty());
    receiver.set(radio.bands, -1);
    EXPECT_EQ(receiver.get(radio.bands), 0);
}

TEST(Receiver, WorksWithAnyOneRoleMissing) {
    const Radio complete;
    for (std::size_t missing = 0; missing <= complete.layout.values.size(); ++missing) {
        SCOPED_TRACE(missing);
        Radio radio;
        if (missing < radio.layout.values.size()) radio.layout.values[missing].role = Role::none;
        Receiver receiver(radio.layout);
        for (const int value : {radio.bands, radio.attenuator, radio.mode, radio.bandwidth}) {
            receiver.act(step_by(value, 1, true));
        }
        receiver.turn(5);
        receiver.pass(1000, true);
        receiver.turn(-50'000);
        receiver.set(radio.signal, -90);
        EXPECT_EQ(receiver.get(radio.signal), -90);
    }
    Receiver nothing{Layout{}};
    nothing.turn(1);
    nothing.pass(1000, true);
    EXPECT_THAT(nothing.changed(), IsEmpty());
}

}  // namespace
}  // namespace dialplate
