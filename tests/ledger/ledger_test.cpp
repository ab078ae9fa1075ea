#include "sim/ledger/ledger.hpp"

#include "sim/layout/reader.hpp"
#include "sim/ledger/code_size.hpp"
#include "sim/ledger/draw_time.hpp"
#include "sim/ledger/measured_work.hpp"
#include "sim/ledger/report.hpp"
#include "sim/ledger/size_terms.hpp"
#include "tests/ledger/ready.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace dialplate {
namespace {

using testing::HasSubstr;
using testing::Not;

/// A receiver whose digits are segments, so that no font has a say: cells of 20 + 4 by 40 pixels.
constexpr const char* segment_receiver = R"({
"title": "Segments", "display": "2.8in-ILI9341", "turn": 90,
"mcu": {"part": "ATmega328P", "clock_mhz": 16}, "bus": {"kind": "usart_spi", "clock_mhz": 8},
"taken": {"flash": 10000, "ram": 500},
"paints": {"ground": "#000000", "ink": "#FFFFFF"},
"faces": {"lit": {"segments": {"width": 20, "height": 40, "stroke": 4, "gap": 4}}},
"values": {
  "frequency": {"type": "number", "unit": "Hz", "min": 0, "max": 29999999, "start": 7100000, "role": "frequency"},
  "step": {"type": "choice", "role": "step", "choices": [{"text": "1 Hz", "number": 1}], "start": "1 Hz"},
  "signal": {"type": "level", "unit": "dBm", "min": -120, "max": -20, "start": -100, "role": "signal"}},
"pages": [{"name": "main", "ground": "ground", "items": [
  {"kind": "readout", "name": "dial", "at": [8, 8], "size": [200, 40], "value": "frequency", "face": "lit",
   "ink": "ink", "ground": "ground", "groups": [8]},
  {"kind": "meter", "name": "strength", "at": [8, 100], "size": [300, 10], "value": "signal", "from": -120,
   "to": -20, "bar": 10, "ink": "ink", "ground": "ground", "unlit": "ground"}]}]
})";

Ready segments() {
    return ready(read_layout(segment_receiver, "segments.json", DIALPLATE_TREE "/layouts"));
}

EventTime event_named(const Ledger& ledger, const std::string& name) {
    const auto found = std::find_if(ledger.time.begin(),
                                    ledger.time.end(),
                                    [&](const EventTime& e) { return e.event == name; });
    if (found == ledger.time.end()) {
        throw std::runtime_error("no event " + name);
    }
    return *found;
}

TEST(Ledger, EverySumIsTheSumOfItsItems) {
    for (const char* example :
         {"coast-listener", "pocket-broadcast", "trail-cw", "bench-standard"}) {
        SCOPED_TRACE(example);
        const Ready it =
            ready(load_layout(std::string{DIALPLATE_TREE "/layouts/"} + example + ".json"));
        const FlashAccount& flash = it.ledger.flash;
        Bytes image = flash.pages + flash.texts + flash.contexts + flash.rest;
        for (const FaceCost& face : flash.faces) {
            image += face.bytes;
        }
        for (const PictureCost& picture : flash.pictures) {
            image += picture.bytes;
        }
        EXPECT_EQ(image.value, flash.image.value);
        EXPECT_EQ(flash.image.value, static_cast<std::int64_t>(it.built.bytes.size()));
        EXPECT_GT(flash.rest.value, 0) << "a header has 32 bytes";
        EXPECT_EQ(flash.total.value,
                  flash.engine.bytes.value + flash.driver.bytes.value + flash.touch.bytes.value +
                      flash.image.value);
        EXPECT_GT(flash.touch.bytes.value, 0) << "there are keys";
        EXPECT_EQ(flash.left.value,
                  flash.capacity.value - flash.boot.value - flash.taken.value - flash.total.value);
        const RamAccount& ram = it.ledger.ram;
        EXPECT_EQ(ram.total.value, ram.engine.value + ram.stack.bytes.value);
        EXPECT_GT(ram.margin.value, 0);
        EXPECT_EQ(ram.left.value,
                  ram.capacity.value - ram.taken.value - ram.total.value - ram.margin.value);
    }
}

TEST(Ledger, ATuningStepSendsOneCellAndItsWindow) {
    // 7,100,000 to 7,100,001: one digit. Window 11 bytes (standards BUS-04), cell 24 x 40 of 2 bytes.
    const EventTime step = event_named(segments().ledger, "tuning step");
    EXPECT_EQ(step.bus_bytes.value, 11 + 24 * 40 * 2);
    EXPECT_EQ(step.pixels, 24 * 40);
    EXPECT_EQ(step.windows, 1);
    EXPECT_EQ(step.kind, EventKind::tuning);
}

TEST(Ledger, TheWorstCarryIsThePowerOfTenThatChangesMostDigits) {
    // 9,999,999 to 10,000,000: all eight cells of the readout.
    const EventTime carry = event_named(segments().ledger, "worst carry");
    EXPECT_EQ(carry.bus_bytes.value, 8 * (11 + 24 * 40 * 2));
    EXPECT_THAT(carry.what, HasSubstr("from 9999999 Hz to 10000000 Hz"));
}

TEST(Ledger, NoEventIsFasterThanTheBus) {
    // 16 cycles a byte at 8 MHz on 16 MHz (standards BUS-13) is the least there is.
    const Ready it = segments();
    ASSERT_FALSE(it.ledger.time.empty());
    for (const EventTime& event : it.ledger.time) {
        SCOPED_TRACE(event.event);
        EXPECT_GE(event.cycles.value, 16 * event.bus_bytes.value);
        EXPECT_NEAR(event.time.value, static_cast<double>(event.cycles.value) / 16'000.0, 1e-9);
        EXPECT_GT(event.share_of_limit, 0.0);
        EXPECT_LE(event.share_of_limit, 1.0);
        EXPECT_NEAR(event.share_of_limit * event.time.value,
                    static_cast<double>(event.bus_bytes.value) * 8.0 / 8'000.0,
                    1e-9)
            << "the share is of the time that the bus alone takes";
        EXPECT_LE(event.longest_slice.value, event.time.value + 1e-9);
    }
}

TEST(Ledger, DrawingThePageSendsEveryPixelOnce) {
    const EventTime page = event_named(segments().ledger, "page main");
    EXPECT_EQ(page.pixels, 320 * 240);
    EXPECT_EQ(page.kind, EventKind::page);
}

TEST(Ledger, NamesTheSlowestTuningAndTheSlowestOfAll) {
    const Ledger ledger = segments().ledger;
    EXPECT_EQ(ledger.slowest_tuning()->event, "worst carry");
    EXPECT_EQ(ledger.slowest()->event, "page main");
    EXPECT_EQ(Ledger{}.slowest(), nullptr);
    EXPECT_EQ(Ledger{}.slowest_tuning(), nullptr);
}

TEST(Ledger, ASlowerDriverTakesLongerForTheSameBytes) {
    Ready it = segments();
    const Ledger fast = it.ledger;
    it.layout.bus.kind = BusKind::spi;
    const Ledger slow = account(it.layout, it.built);
    EXPECT_EQ(event_named(slow, "worst carry").bus_bytes,
              event_named(fast, "worst carry").bus_bytes);
    EXPECT_GT(event_named(slow, "worst carry").time, event_named(fast, "worst carry").time);
}

TEST(Ledger, AnotherPartsFiguresAreMarkedAsEstimates) {
    Ready it = segments();
    EXPECT_EQ(it.ledger.flash.engine.standing, Standing::measured);
    for (const char* family : {"avr-mapped", "cortex-m0plus", "cortex-m3", "xtensa", "another"}) {
        SCOPED_TRACE(family);
        it.layout.mcu.name = "Another";
        it.layout.mcu.family = family;
        const Ledger ledger = account(it.layout, it.built);
        EXPECT_EQ(ledger.flash.engine.standing, Standing::estimate);
        EXPECT_EQ(ledger.flash.driver.standing, Standing::estimate);
        EXPECT_EQ(ledger.ram.stack.standing, Standing::estimate);
        EXPECT_THAT(ledger.flash.engine.basis, HasSubstr("ATmega328P"));
        EXPECT_GT(ledger.flash.engine.bytes.value, 0);
    }
}

TEST(Ledger, CarriesTheEnginesOwnTimeOverAndLeavesTheBusAlone) {
    Ready it = segments();
    constexpr double cycles_per_byte = 16;  // USART as SPI master: 8 bits at half the clock
    for (const auto& work : measured::family_work) {
        SCOPED_TRACE(work.family);
        it.layout.mcu.name = "Another";
        it.layout.mcu.family = work.family;
        const Ledger there = account(it.layout, it.built);
        for (const EventTime& event : it.ledger.time) {
            const EventTime& same = event_named(there, event.event);
            const double bus = cycles_per_byte * static_cast<double>(event.bus_bytes.value);
            const double own = static_cast<double>(event.cycles.value) - bus;
            // 1.5 cycles an instruction.
            EXPECT_NEAR(
                static_cast<double>(same.cycles.value), bus + own * work.instructions * 1.5, 1.0);
            EXPECT_EQ(same.standing, Standing::estimate);
            EXPECT_THAT(same.basis, HasSubstr("not timed on this family"));
        }
    }
}

TEST(Ledger, SaysPlainlyWhatDoesNotFit) {
    Ready it = segments();
    EXPECT_TRUE(it.ledger.flash_fits());
    it.layout.taken.flash = it.layout.taken.flash + it.ledger.flash.left + Bytes{77};
    it.layout.taken.ram = it.layout.taken.ram + it.ledger.ram.left + Bytes{5};
    const Ledger ledger = account(it.layout, it.built);
    EXPECT_FALSE(ledger.flash_fits());
    EXPECT_FALSE(ledger.ram_fits());
    const std::string report = report_text(it.layout, ledger, false);
    EXPECT_THAT(report, HasSubstr("does not fit: 77 bytes of flash too many"));
    EXPECT_THAT(report, HasSubstr("does not fit: 5 bytes of RAM too many"));
}

TEST(LedgerReport, ShowsBytesShareAndWhatTheFiguresStandOn) {
    const Ready it = segments();
    const std::string report = report_text(it.layout, it.ledger, false);
    EXPECT_THAT(report, HasSubstr("Segments"));
    EXPECT_THAT(report, HasSubstr("ATmega328P at 16 MHz"));
    EXPECT_THAT(report, HasSubstr("Flash, bytes of 32,768"));
    EXPECT_THAT(report, HasSubstr("10,000"));
    EXPECT_THAT(report, HasSubstr("measured"));
    EXPECT_THAT(report, HasSubstr("worst carry"));
    EXPECT_THAT(report, HasSubstr("15,448")) << "the bytes of the worst carry";
    EXPECT_THAT(report, Not(HasSubstr("\x1b")));
    EXPECT_THAT(report_text(it.layout, it.ledger, true), HasSubstr("\x1b["));
}

TEST(PartsUsed, FollowFromItemsFacesAndKeys) {
    const Ready it = segments();
    PartSet expected;
    expected.add(Part::readout).add(Part::meter).add(Part::segment);
    EXPECT_EQ(parts_used(it.layout, it.built).bits, expected.bits);
}

TEST(SizeTerms, IgnoreTrimmingsOfWhatIsNotThere) {
    PartSet bare;
    bare.add(Part::runs).add(Part::peak).add(Part::tuning_digit).add(Part::hold).add(Part::tape);
    PartSet runs;
    runs.add(Part::runs);
    EXPECT_EQ(effective(bare).bits, runs.bits);
    const auto holding = [](PartSet parts) {
        std::vector<bool> holds;
        for (const SizeTerm& term : size_terms({.parts = parts})) {
            holds.push_back(term.holds);
        }
        return holds;
    };
    EXPECT_EQ(holding(bare), holding(runs));
}

TEST(EngineSize, GrowsWithEveryPart) {
    Mcu mcu;
    mcu.name = "ATmega328P";
    mcu.family = "avr";
    PartSet parts;
    parts.add(Part::runs);
    Bytes before = engine_size({.parts = parts}, mcu).bytes;
    EXPECT_GT(before.value, 0);
    for (const Part part : {Part::readout,
                            Part::tuning_digit,
                            Part::box,
                            Part::touch,
                            Part::pages,
                            Part::meter,
                            Part::scale,
                            Part::picture,
                            Part::plain,
                            Part::segment}) {
        SCOPED_TRACE(name_of(part));
        parts.add(part);
        const Bytes after = engine_size({.parts = parts}, mcu).bytes;
        EXPECT_GT(after.value, before.value);
        before = after;
    }
}

}  // namespace
}  // namespace dialplate
