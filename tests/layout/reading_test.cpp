// What a layout says once it is read.
#include "sim/layout/colour.hpp"
#include "sim/layout/reader.hpp"
#include "tests/layout/layout_files.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

namespace dialplate {
namespace {

using testing::ElementsAre;

class Everything : public testing::Test {
protected:
    void SetUp() override {
        Reading reading = load_layout((fixtures / "good/everything.json").string());
        ASSERT_TRUE(reading.layout.has_value()) << lines_of(reading);
        layout = std::move(*reading.layout);
    }
    const Item& item(std::size_t index) const { return layout.pages[0].items[index]; }
    PaintId paint(const std::string& name) const {
        for (std::size_t i = 0; i < layout.paints.size(); ++i) {
            if (layout.paints[i].name == name) return static_cast<PaintId>(i);
        }
        return -1;
    }
    Layout layout;
};

TEST_F(Everything, KnowsTheHardware) {
    EXPECT_EQ(layout.title, "Everything a layout can say");
    EXPECT_EQ(layout.directory, (fixtures / "good").string());
    EXPECT_EQ(layout.display.controller, "ILI9341");
    EXPECT_EQ(layout.display.turns[3].address_mode, 232);
    EXPECT_EQ(layout.display.backlight_ma, 80.0);
    EXPECT_EQ(layout.display.sources.at("active_width_mm").standing, "memory");
    EXPECT_EQ(layout.mcu.flash, Bytes{32768});
    EXPECT_EQ(layout.mcu.boot, Bytes{512});
    EXPECT_EQ(layout.mcu.object_max, Bytes{32767});
    ASSERT_EQ(layout.mcu.speed_grades.size(), 2u);
    EXPECT_EQ(layout.mcu.speed_grades[1].volts, 2.7);
    EXPECT_EQ(layout.mcu.speed_grades[1].clock, Hertz{10e6});
    EXPECT_EQ(layout.clock, Hertz{16e6});
    EXPECT_EQ(layout.bus.kind, BusKind::parallel8);
    EXPECT_EQ(layout.bus.clock, Hertz{2.5e6});
    EXPECT_EQ(layout.taken.flash, Bytes{14200});
    EXPECT_EQ(layout.taken.ram, Bytes{620});
}

TEST_F(Everything, TurnsTheGlass) {
    EXPECT_EQ(layout.turn, 90);
    EXPECT_EQ(layout.glass_width(), 320);
    EXPECT_EQ(layout.glass_height(), 240);
    EXPECT_DOUBLE_EQ(layout.pitch_x().value, 57.6 / 320);
    EXPECT_DOUBLE_EQ(layout.pitch_y().value, 43.2 / 240);
    layout.display.active_width = Millimetres{48.0};  // pixels that are not square
    EXPECT_DOUBLE_EQ(layout.pitch_x().value, 57.6 / 320);
    EXPECT_DOUBLE_EQ(layout.pitch_y().value, 48.0 / 240);
    layout.turn = 180;
    EXPECT_DOUBLE_EQ(layout.pitch_x().value, 48.0 / 240);
    EXPECT_DOUBLE_EQ(layout.pitch_y().value, 57.6 / 320);
}

TEST_F(Everything, KnowsTheSetting) {
    EXPECT_EQ(layout.viewing.distance, Millimetres{600});
    EXPECT_EQ(layout.viewing.tilt, Degrees{-12.5});
    EXPECT_EQ(layout.viewing.light, Lux{1000});
    ASSERT_TRUE(layout.opening.has_value());
    EXPECT_EQ(layout.opening->top, Millimetres{-0.4});
    EXPECT_EQ(layout.opening->overlap, Millimetres{4});
    EXPECT_EQ(layout.touch.hold_ms, 800);
    EXPECT_EQ(layout.touch.repeat_after_ms, 400);
    EXPECT_EQ(layout.touch.repeat_every_ms, 100);
    EXPECT_EQ(layout.touch.scatter, Millimetres{1.8});
    EXPECT_EQ(layout.touch.finger, Millimetres{12.0});
    EXPECT_EQ(layout.display.reflectance, 0.04);
    EXPECT_EQ(layout.wiring.supply_v, 3.3);
    EXPECT_EQ(layout.wiring.level_shifted, true);
    EXPECT_EQ(layout.wiring.backlight, Wiring::Backlight::switched);
    EXPECT_EQ(layout.region, 2);
    EXPECT_EQ(layout.profile, "mobile");
    ASSERT_EQ(layout.thresholds.size(), 2u);
    EXPECT_EQ(layout.thresholds[0].rule, "touch-size");
    EXPECT_EQ(layout.thresholds[0].figure, "least_mm");
    EXPECT_EQ(layout.thresholds[0].value, 12.5);
    EXPECT_EQ(layout.thresholds[0].pointer, "/thresholds/touch-size/least_mm");
    EXPECT_EQ(layout.values[0].per_second, 40.0);
    EXPECT_EQ(layout.values[1].per_second, std::nullopt);
    EXPECT_EQ(layout.thresholds[1].pointer, "/thresholds/no-such-rule/no figure");
}

TEST_F(Everything, KeepsPaintsAsTypedAndAsShown) {
    EXPECT_THAT(layout.palettes, ElementsAre("main", "dim"));
    const Paint& amber = layout.paints[static_cast<std::size_t>(paint("amber"))];
    EXPECT_EQ(amber.rgb888, 0xFFB84Du);
    EXPECT_EQ(amber.rgb565, pack_rgb565(0xFFB84D));
    EXPECT_THAT(amber.others, ElementsAre(pack_rgb565(0x802000)));
    const Paint& slate = layout.paints[static_cast<std::size_t>(paint("slate"))];
    EXPECT_THAT(slate.others, ElementsAre(slate.rgb565)) << "left out of a palette: unchanged";
}

TEST_F(Everything, TakesFromIdleWhatALookLeavesOut) {
    const Look& plain = layout.looks[0];
    EXPECT_EQ(plain.pressed.ink, paint("slate"));
    EXPECT_EQ(plain.pressed.edge, paint("edge"));
    EXPECT_EQ(plain.active.fill, paint("amber"));
    EXPECT_EQ(plain.disabled.ink, paint("ink"));
    const Look& bare = layout.looks[1];
    EXPECT_EQ(bare.idle.edge, paint("ink")) << "edge is as ink when left out";
    EXPECT_EQ(bare.pressed.fill, paint("ground"));
}

TEST_F(Everything, KnowsBothKindsOfFaces) {
    EXPECT_EQ(layout.faces[0].scale, 1);
    EXPECT_EQ(layout.faces[0].packing, PackingWish::automatic);
    EXPECT_EQ(layout.faces[1].scale, 2);
    EXPECT_EQ(layout.faces[0].spacing, 0);
    EXPECT_EQ(layout.faces[1].spacing, 3);
    EXPECT_EQ(layout.faces[1].packing, PackingWish::runs);
    EXPECT_FALSE(layout.faces[0].latitude.has_value());
    ASSERT_TRUE(layout.faces[1].latitude.has_value());
    EXPECT_EQ(layout.faces[1].latitude->files,
              (std::vector<std::string>{"figures16.bdf", "legend14.bdf"}));
    EXPECT_EQ(layout.faces[1].latitude->least_size, 14);
    EXPECT_EQ(layout.faces[1].latitude->greatest_size, 32);
    EXPECT_TRUE(layout.faces[1].latitude->smooth);
    EXPECT_EQ(layout.faces[2].kind, FaceKind::segment);
    EXPECT_EQ(layout.faces[2].segment_stroke, 5);
    EXPECT_EQ(layout.faces[2].segment_gap, 4);
    EXPECT_EQ(layout.faces[3].segment_gap, 2) << "as the stroke when left out";
    EXPECT_TRUE(layout.faces[4].smooth);
    EXPECT_EQ(layout.faces[4].packing, PackingWish::context);
}

TEST_F(Everything, KnowsAllFourTypesOfValues) {
    const Value& frequency = layout.values[0];
    EXPECT_EQ(frequency.type, ValueType::number);
    EXPECT_EQ(frequency.role, Role::frequency);
    EXPECT_EQ(frequency.max, 29999990);
    EXPECT_EQ(frequency.start, 7100000);
    const Value& step = layout.values[1];
    EXPECT_EQ(step.start, 1) << "the choice named by start";
    EXPECT_EQ(step.max, 1);
    EXPECT_EQ(step.choices[1].number, 1000);
    const Value& band = layout.values[2];
    EXPECT_EQ(band.start, 0) << "the first choice when left out";
    EXPECT_EQ(band.choices[0].low, 7000000);
    EXPECT_EQ(band.choices[0].mode, "LSB");
    const Value& mode = layout.values[3];
    ASSERT_EQ(mode.choices.size(), 3u);
    EXPECT_EQ(mode.choices[2].text, "CW") << "a text alone is a choice";
    EXPECT_EQ(mode.choices[2].pointer, "/values/mode/choices/2");
    const Value& signal = layout.values[6];
    EXPECT_EQ(signal.type, ValueType::level);
    EXPECT_EQ(signal.start, -97);
    const Value& lock = layout.values[7];
    EXPECT_EQ(lock.type, ValueType::flag);
    EXPECT_EQ(lock.max, 1);
    EXPECT_EQ(lock.start, 1);
    EXPECT_EQ(layout.values[8].start, 0) << "min when left out";
}

TEST_F(Everything, ReadsReadouts) {
    const Readout& dial = item(0).readout;
    EXPECT_EQ(item(0).kind, ItemKind::readout);
    EXPECT_EQ(item(0).box, (Box{8, 8, 230, 60}));
    EXPECT_THAT(dial.groups, ElementsAre(2, 3, 2));
    EXPECT_EQ(dial.separator, ".");
    EXPECT_EQ(dial.drop, 1);
    EXPECT_EQ(dial.least, 6);
    EXPECT_EQ(dial.align, Align::left);
    EXPECT_EQ(dial.unit, "MHz");
    EXPECT_EQ(dial.unit_ink, paint("amber"));
    EXPECT_EQ(dial.tuning, 1);
    EXPECT_EQ(dial.mark, Readout::Mark::invert);
    const Readout& plain = item(1).readout;
    EXPECT_THAT(plain.groups, ElementsAre(2, 3, 3)) << "29999990 has eight digits";
    EXPECT_EQ(plain.ground, paint("ground")) << "the page's when left out";
    EXPECT_EQ(plain.align, Align::right);
    EXPECT_FALSE(plain.tuning.has_value());
}

TEST_F(Everything, ReadsKeysAndTheirActions) {
    const Key& forty = item(2).key;
    EXPECT_EQ(item(2).name, "forty");
    EXPECT_EQ(forty.text, "40 m\nlow");
    EXPECT_EQ(forty.radius, 26);
    EXPECT_EQ(forty.tap.kind, ActionKind::set);
    EXPECT_EQ(forty.tap.value, 2);
    EXPECT_EQ(forty.tap.amount, 0);
    EXPECT_EQ(forty.tap.pointer, "/pages/0/items/2/tap");
    EXPECT_EQ(forty.hold.kind, ActionKind::page);
    EXPECT_EQ(forty.hold.page, 1) << "a page that comes later";
    EXPECT_EQ(forty.active_value, 2);
    EXPECT_EQ(forty.enabled_by, 7);
    const Key& louder = item(3).key;
    EXPECT_EQ(item(3).name, "key-2") << "the second key has no name of its own";
    EXPECT_EQ(louder.tap.kind, ActionKind::step);
    EXPECT_EQ(louder.tap.amount, 2);
    EXPECT_TRUE(louder.tap.around);
    EXPECT_TRUE(louder.repeat);
    EXPECT_EQ(louder.hold.kind, ActionKind::none);
    const Key& lock = item(4).key;
    EXPECT_EQ(lock.tap.kind, ActionKind::toggle);
    EXPECT_EQ(lock.active_at, 1) << "a flag is meant to be true";
    EXPECT_EQ(layout.pages[1].items[0].name, "key-4");
}

TEST_F(Everything, ReadsLegendsAndLamps) {
    EXPECT_EQ(item(5).legend.text, "SIGNAL");
    EXPECT_EQ(item(5).legend.align, Align::centre);
    EXPECT_EQ(layout.pages[1].items[1].legend.ground, paint("slate"));
    const Lamp& usb = item(6).lamp;
    EXPECT_EQ(usb.when, 1);
    EXPECT_EQ(usb.text, "USB");
    EXPECT_EQ(usb.unlit.fill, paint("slate"));
    EXPECT_EQ(usb.unlit.ink, paint("ground")) << "as lit when left out";
    const Lamp& mode = item(7).lamp;
    EXPECT_FALSE(mode.when.has_value()) << "shows the present choice's words";
}

TEST_F(Everything, ReadsMeters) {
    const Meter& strength = item(8).meter;
    EXPECT_EQ(strength.from, -121);
    EXPECT_EQ(strength.to, -33);
    EXPECT_EQ(strength.block, 4);
    EXPECT_EQ(strength.gap, 2);
    EXPECT_EQ(strength.over_from, -73);
    EXPECT_EQ(strength.over, paint("amber"));
    EXPECT_TRUE(strength.peak);
    EXPECT_EQ(strength.peak_hold_ms, 1200);
    ASSERT_EQ(strength.marks.size(), 3u);
    EXPECT_EQ(strength.marks[1].text, "9");
    EXPECT_EQ(strength.marks[2].text, "");
    EXPECT_EQ(strength.marks[2].pointer, "/pages/0/items/8/marks/2");
    const Meter& volume = item(9).meter;
    EXPECT_EQ(volume.from, 0) << "the value's range when left out";
    EXPECT_EQ(volume.to, 30);
    EXPECT_GT(volume.over_from, volume.to) << "never";
    EXPECT_EQ(volume.unlit, paint("ground"));
    EXPECT_TRUE(volume.upright);
    EXPECT_EQ(volume.block, 0);
    EXPECT_FALSE(volume.peak);
}

TEST_F(Everything, ReadsScalesPicturesAndFrames) {
    const Scale& scale = item(10).scale;
    EXPECT_FALSE(scale.tape);
    EXPECT_EQ(scale.per_pixel, 100);
    EXPECT_EQ(scale.from, 7000000);
    EXPECT_EQ(scale.minor, 1000);
    EXPECT_EQ(scale.major, 10000);
    EXPECT_EQ(scale.decimals, 3);
    EXPECT_EQ(scale.major_tick, 9);
    EXPECT_EQ(item(11).picture.file, "antenna.png");
    EXPECT_EQ(item(11).picture.packing, PackingWish::plain);
    EXPECT_TRUE(item(11).picture.tones.empty());
    EXPECT_EQ(item(12).frame.line, 2);
    EXPECT_EQ(item(12).frame.fill, paint("slate"));
    EXPECT_EQ(item(13).frame.line, 0);
    const Picture& in_tones = item(14).picture;
    EXPECT_THAT(in_tones.tones,
                ElementsAre(paint("slate"), paint("edge"), paint("amber"), paint("ink")));
    EXPECT_EQ(in_tones.ground, paint("slate"));
    EXPECT_EQ(in_tones.ink, paint("ink"));
    EXPECT_EQ(in_tones.packing, PackingWish::context);
}

TEST_F(Everything, KeepsWaivers) {
    ASSERT_EQ(layout.waived.size(), 2u);
    EXPECT_EQ(layout.waived[0].item, "/pages/0/items/3");
    EXPECT_EQ(layout.waived[1].item, "");
}

TEST_F(Everything, RemembersWhereEveryValueIs) {
    const std::string text = contents(fixtures / "good/everything.json");
    struct Row {
        const char* pointer;
        const char* before;  // unique in the file; the value follows
    };
    const Row rows[] = {
        {"", ""},
        {"/turn", "\"turn\": "},
        {"/viewing/tilt_deg", "\"tilt_deg\": "},
        {"/palettes/dim", "{\"dim\": "},
        {"/pages/0/items/2/radius", "\"radius\": 26, \"edge\": 2,\n          \"tap\": {\"set\": "},
        {"/pages/0/items/8/marks/1/at", "\"text\": \"1\"}, {\"at\": "},
        {"/waived/1/rule", "\"worked with a pen\"},\n    {\"rule\": "},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.pointer);
        std::size_t at = text.find(row.before) + std::string(row.before).size();
        if (std::string(row.pointer).ends_with("radius")) at = text.find("26, \"edge\"");
        ASSERT_TRUE(layout.places.contains(row.pointer));
        const Place expected = place_of(text, at);
        EXPECT_EQ(layout.places.at(row.pointer).line, expected.line);
        EXPECT_EQ(layout.places.at(row.pointer).column, expected.column);
    }
    for (const Page& page : layout.pages) {
        for (const Item& each : page.items) {
            EXPECT_TRUE(layout.places.contains(each.pointer)) << each.pointer;
        }
    }
}

TEST(Reading, AcceptsEveryGoodFixture) {
    for (const auto& entry : std::filesystem::directory_iterator(fixtures / "good")) {
        if (entry.path().extension() != ".json") continue;
        SCOPED_TRACE(entry.path());
        const Reading reading = load_layout(entry.path().string());
        EXPECT_TRUE(reading.layout.has_value()) << lines_of(reading);
        EXPECT_TRUE(reading.findings.empty());
    }
}

TEST(Reading, HasDefaultsForWhatMayBeLeftOut) {
    const Reading reading = load_layout((fixtures / "good/minimal.json").string());
    ASSERT_TRUE(reading.layout.has_value()) << lines_of(reading);
    const Layout& layout = *reading.layout;
    EXPECT_EQ(layout.turn, 0);
    EXPECT_EQ(layout.viewing.distance, Millimetres{500}) << "standards LEG-22";
    EXPECT_FALSE(layout.opening.has_value());
    EXPECT_EQ(layout.touch.hold_ms, 700);
    EXPECT_EQ(layout.touch.scatter, Millimetres{1.5});
    EXPECT_EQ(layout.touch.finger, Millimetres{10.0});
    EXPECT_FALSE(layout.wiring.supply_v || layout.wiring.level_shifted);
    EXPECT_EQ(layout.wiring.backlight, Wiring::Backlight::unstated);
    EXPECT_EQ(layout.region, 1);
    EXPECT_EQ(layout.profile, "");
    EXPECT_TRUE(layout.thresholds.empty());
    EXPECT_EQ(layout.display.bytes_per_pixel, 2);
    EXPECT_FALSE(layout.display.luminance_cd_m2.has_value());
    EXPECT_FALSE(layout.mcu.object_max.has_value());
    EXPECT_THAT(layout.palettes, ElementsAre("main"));
}

TEST(Reading, TakesTwoPointZeroForAWholeNumber) {  // as JSON Schema does: draft-07 core, 6.3.1
    std::string text = contents(fixtures / "good/minimal.json");
    const std::string end = "\"pages\": [";
    text.replace(text.find(end), 0, "\"turn\": 9.0e1, ");
    const Reading reading = read_layout(text, "x.json", ".");
    ASSERT_TRUE(reading.layout.has_value()) << lines_of(reading);
    EXPECT_EQ(reading.layout->turn, 90);
}

TEST(Reading, CountsCharactersNotBytes) {
    std::string text = contents(fixtures / "good/everything.json");
    const std::string separator = "\"separator\": \".\"";
    text.replace(text.find(separator), separator.size(), "\"separator\": \"\u00b7\"");
    const Reading reading = read_layout(text, "x.json", fixtures / "good");
    ASSERT_TRUE(reading.layout.has_value()) << lines_of(reading);
    EXPECT_EQ(reading.layout->pages[0].items[0].readout.separator, "\u00b7") << "two bytes";
}

TEST(Reading, EscapesPointers) {  // RFC 6901, section 3: ~ is ~0, / is ~1
    std::string text = contents(fixtures / "good/minimal.json");
    const std::string paint = "\"ground\": \"#000000\"";
    text.replace(text.find(paint), paint.size(), paint + ", \"a~b\": \"#ffffff\"");
    const Reading reading = read_layout(text, "x.json", ".");
    ASSERT_TRUE(reading.layout.has_value()) << lines_of(reading);
    EXPECT_EQ(reading.layout->paints[1].pointer, "/paints/a~0b");
    EXPECT_TRUE(reading.layout->places.contains("/paints/a~0b"));
}

TEST(Reading, FindsFilesBesideTheLayoutFirst) {
    const std::string good = (fixtures / "good").string();
    EXPECT_EQ(find_file(good, "minimal.json"), good + "/minimal.json");
    EXPECT_EQ(find_file(good, "../mistakes.json"), (fixtures / "mistakes.json").string());
    EXPECT_EQ(find_file("/", good + "/minimal.json"), good + "/minimal.json");
    EXPECT_EQ(find_file(good, "layout.schema.json"),
              std::string(DIALPLATE_TREE) + "/layouts/layout.schema.json");
    EXPECT_EQ(find_file(good, "face.hpp"), std::string(DIALPLATE_TREE) + "/fonts/face.hpp");
    EXPECT_EQ(find_file(good, "no-such-file.bdf"), "");
    EXPECT_EQ(find_file(good, ""), "");
    EXPECT_EQ(find_file(good, "."), "") << "a folder is no file";
}

}  // namespace
}  // namespace dialplate
