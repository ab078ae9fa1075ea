// The image against its page, ui/image.md: header, shares, memory, and what is left out when unused.
#include "sim/image/build.hpp"

#include "sim/layout/reader.hpp"
#include "ui/image_format.hpp"

#include <gtest/gtest.h>

#include <filesystem>

namespace dialplate {

namespace {

int u16(const BuiltImage& image, std::size_t at) {
    return image.bytes[at] | image.bytes[at + 1] << 8;
}

BuiltImage build(const std::string& file, Layout& layout) {
    const Reading reading = load_layout(std::string(DIALPLATE_TREE) + "/" + file);
    EXPECT_TRUE(reading.layout.has_value());
    layout = reading.layout.value_or(Layout{});
    const Building building = build_image(layout);
    for (const Finding& f : building.findings)
        ADD_FAILURE() << gnu_line(file, f);
    return building.image.value_or(BuiltImage{});
}

/// A layout with these items, values and faces, and what building it finds.
Building build_text(const std::string& faces, const std::string& items) {
    const Reading reading = read_layout(R"({"title": "t", "display": "2.8in-ILI9341", "turn": 0,
        "mcu": {"part": "ATmega328P", "clock_mhz": 16}, "bus": {"kind": "spi", "clock_mhz": 8},
        "paints": {"a": "#000000", "b": "#FFFFFF"}, "faces": {)" +
                                            faces + R"(},
        "values": {"n": {"type": "number", "min": 0, "max": 59}},
        "pages": [{"name": "main", "ground": "a", "items": [)" +
                                            items + "]}]}",
                                        "t.json",
                                        DIALPLATE_TREE "/layouts");
    for (const Finding& f : reading.findings)
        ADD_FAILURE() << gnu_line("t.json", f);
    return reading.layout ? build_image(*reading.layout) : Building{};
}

const char* const legend_face = R"("legend": {"file": "legend9.bdf", "size": 9})";

}  // namespace

TEST(Image, HasTheHeaderOfItsPage) {
    Layout layout;
    const BuiltImage image = build("layouts/coast-listener.json", layout);
    ASSERT_GE(image.bytes.size(), 32U);
    EXPECT_EQ(image.bytes[0], 0xD1);
    EXPECT_EQ(image.bytes[1], 1);
    EXPECT_EQ(u16(image, 2), static_cast<int>(image.bytes.size()));
    EXPECT_EQ(u16(image, 4), 320);
    EXPECT_EQ(u16(image, 6), 240);
    EXPECT_EQ(image.bytes[8], layout.pages.size());
    EXPECT_EQ(image.bytes[10], layout.paints.size());
    EXPECT_EQ(image.bytes[12], layout.values.size());
    EXPECT_EQ(image.bytes[28] * 20, layout.touch.hold_ms / 20 * 20);
}

TEST(Image, AccountsForEveryByte) {
    for (const char* file :
         {"layouts/coast-listener.json", "layouts/bench-standard.json", "layouts/trail-cw.json"}) {
        SCOPED_TRACE(file);
        Layout layout;
        const BuiltImage image = build(file, layout);
        std::int64_t sum = image.header.value + image.pages.value + image.texts.value +
                           image.paints.value + image.values.value + image.contexts.value;
        for (const FaceCost& face : image.faces)
            sum += face.bytes.value;
        for (const PictureCost& picture : image.pictures)
            sum += picture.bytes.value;
        EXPECT_EQ(sum, static_cast<std::int64_t>(image.bytes.size()));
    }
}

TEST(Image, StoresOnlyTheGlyphsThatCanBeShown) {
    const Building b = build_text(
        legend_face,
        R"({"kind": "legend", "at": [0, 0], "size": [60, 12], "text": "ABBA", "face": "legend", "ink": "b"})");
    ASSERT_TRUE(b.image);
    ASSERT_EQ(b.image->faces.size(), 1U);
    EXPECT_EQ(b.image->faces[0].glyphs, 2);
}

TEST(Image, StoresOneDigitSetForAReadoutAndNoSignThatItNeverShows) {
    const Building b = build_text(
        legend_face,
        R"({"kind": "readout", "at": [0, 0], "size": [60, 12], "value": "n", "face": "legend", "ink": "b", "groups": [2]})");
    ASSERT_TRUE(b.image);
    EXPECT_EQ(b.image->faces[0].glyphs, 10);
}

TEST(Image, StoresEqualTextsOnce) {
    const std::string one =
        R"({"kind": "legend", "at": [0, 0], "size": [60, 12], "text": "WORD", "face": "legend", "ink": "b"})";
    const std::string two =
        one +
        R"(, {"kind": "legend", "at": [0, 20], "size": [60, 12], "text": "WORD", "face": "legend", "ink": "b"})";
    const Building a = build_text(legend_face, one), b = build_text(legend_face, two);
    ASSERT_TRUE(a.image && b.image);
    EXPECT_EQ(a.image->texts, b.image->texts);
    EXPECT_EQ(a.image->texts.value, 5);
}

TEST(Image, TellsOfAGlyphThatTheFontLacksAndOfAFileThatIsNotThere) {
    const Building lacking = build_text(
        legend_face,
        R"({"kind": "legend", "at": [0, 0], "size": [60, 12], "text": "A\u4e2d", "face": "legend", "ink": "b"})");
    ASSERT_EQ(lacking.findings.size(), 1U);
    EXPECT_EQ(lacking.findings[0].rule, "missing-glyph");
    EXPECT_NE(lacking.findings[0].message.find("\u4e2d"), std::string::npos);
    EXPECT_GT(lacking.findings[0].place.line, 0);
    EXPECT_FALSE(lacking.image);
    const Building absent = build_text(
        R"("legend": {"file": "nowhere.bdf", "size": 9})",
        R"({"kind": "legend", "at": [0, 0], "size": [60, 12], "text": "A", "face": "legend", "ink": "b"})");
    ASSERT_EQ(absent.findings.size(), 1U);
    EXPECT_EQ(absent.findings[0].rule, "font-file");
    EXPECT_NE(absent.findings[0].message.find("nowhere.bdf"), std::string::npos);
}

TEST(Image, NotesHowMuchRoomTheWidestNumberNeeds) {
    // legend9: six columns a digit, three for the full stop
    const Building b = build_text(
        legend_face,
        R"({"kind": "readout", "at": [0, 0], "size": [10, 12], "value": "n", "face": "legend", "ink": "b", "groups": [1, 1], "separator": "."})");
    ASSERT_TRUE(b.image);
    ASSERT_EQ(b.image->texts_shown.size(), 1U);
    EXPECT_EQ(b.image->texts_shown[0].width, 2 * 6 + 3);
    EXPECT_EQ(b.image->texts_shown[0].room_width, 10);
}

}  // namespace dialplate
