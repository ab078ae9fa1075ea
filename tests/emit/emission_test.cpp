#include "sim/emit/emission.hpp"

#include "sim/emit/carried_files.hpp"
#include "sim/emit/layout_names.hpp"
#include "sim/emit/pins.hpp"
#include "sim/image/arena.hpp"
#include "tests/prototype/examples.hpp"
#include "ui/screen.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <set>
#include <string>

namespace dialplate {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::Not;

const std::string everything =
    std::string(DIALPLATE_TREE) + "/tests/layout/fixtures/good/everything.json";

const EmittedFile& file_of(const Emission& emission, const std::string& name) {
    for (const EmittedFile& file : emission.files) {
        if (file.name == name) return file;
    }
    ADD_FAILURE() << "no file " << name;
    static const EmittedFile none;
    return none;
}

std::string text_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

TEST(CarriedFiles, AreThoseOfTheTree) {
    std::set<std::string> carried, there;
    for (const CarriedFile& file : carried_files()) {
        carried.insert(std::string(file.name));
        EXPECT_EQ(file.text, text_of(fs::path(DIALPLATE_TREE) / file.name)) << file.name;
    }
    there.insert("LICENSE");
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(DIALPLATE_TREE) / "ui")) {
        if (entry.path().extension() == ".hpp" || entry.path().extension() == ".md") {
            there.insert(entry.path().lexically_relative(DIALPLATE_TREE).string());
        }
    }
    EXPECT_EQ(carried, there);
}

// What the engine remembers of an item is stated by the engine; the image's account repeats it.
struct NoBus {
    void window(uint16_t, uint16_t, uint16_t, uint16_t) {}
    void push(uint16_t, uint16_t) {}
};
template <bool with_tuning_digit, bool with_peak>
struct SomeParts : EveryPart {
    static constexpr bool tuning_digit = with_tuning_digit, peak = with_peak;
};

template <bool tuning_digit, bool peak>
void expect_the_engines_figures() {
    using P = SomeParts<tuning_digit, peak>;
    const ShownParts parts{.tuning_digit = tuning_digit, .peak = peak};
    const auto bytes = [&](ItemKind kind) {
        Item item;
        item.kind = kind;
        return shown_bytes(item, parts);
    };
    EXPECT_EQ(bytes(ItemKind::readout), (int{ReadoutArt<NoBus, P>::shown_bytes}));
    EXPECT_EQ(bytes(ItemKind::key), (int{BoxArt<NoBus, P>::shown_bytes}));
    EXPECT_EQ(bytes(ItemKind::lamp), (int{BoxArt<NoBus, P>::shown_bytes}));
    EXPECT_EQ(bytes(ItemKind::meter),
              (int{MeterArt<NoBus, P>::shown_bytes} + MeterArt<NoBus, P>::kept_bytes));
    EXPECT_EQ(bytes(ItemKind::scale), (int{ScaleArt<NoBus, P>::shown_bytes}));
    for (const ItemKind none : {ItemKind::legend, ItemKind::picture, ItemKind::frame}) {
        EXPECT_EQ(bytes(none), 0);
    }
}

TEST(Arena, CountsWhatTheEngineRemembers) {
    expect_the_engines_figures<false, false>();
    expect_the_engines_figures<false, true>();
    expect_the_engines_figures<true, false>();
    expect_the_engines_figures<true, true>();
}

TEST(Arena, IsSmallerWithoutMarkedDigitsAndPeaks) {
    LoadedExample it = load_example(everything);
    const int with = it.image.arena_shown;
    EXPECT_EQ(with, it.image.arena_shown_by_all_parts);
    for (Page& page : it.layout.pages) {
        for (Item& item : page.items) {
            item.readout.tuning.reset();
            item.meter.peak = false;
        }
    }
    const Building plain = build_image(it.layout);
    ASSERT_TRUE(plain.image);
    EXPECT_LT(plain.image->arena_shown, with);
    EXPECT_EQ(plain.image->arena_shown_by_all_parts, with);
}

class EmissionOf : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Examples, EmissionOf, testing::ValuesIn(example_files()), test_name);

TEST_P(EmissionOf, IsTheSameEveryTimeAndNamesNoPlace) {
    const LoadedExample once = load_example(GetParam()), again = load_example(GetParam());
    for (const Example example : {Example::driver, Example::own_driver}) {
        if (cannot_emit(once.layout, once.image, example)) continue;
        const Emission a = emit(once.layout, once.image, example);
        const Emission b = emit(again.layout, again.image, example);
        ASSERT_EQ(a.files.size(), b.files.size());
        for (std::size_t i = 0; i < a.files.size(); ++i) {
            EXPECT_EQ(a.files[i].name, b.files[i].name);
            EXPECT_EQ(a.files[i].text, b.files[i].text) << a.files[i].name;
            EXPECT_THAT(a.files[i].text, Not(HasSubstr(DIALPLATE_TREE)));
        }
    }
}

TEST_P(EmissionOf, IncludesOnlyWhatItBrings) {
    const LoadedExample it = load_example(GetParam());
    for (const Example example : {Example::driver, Example::own_driver}) {
        if (cannot_emit(it.layout, it.image, example)) continue;
        const Emission emission = emit(it.layout, it.image, example);
        std::set<std::string> names;
        for (const EmittedFile& file : emission.files)
            names.insert(file.name);
        EXPECT_EQ(names.size(), emission.files.size()) << "two files of one name";
        for (const EmittedFile& file : emission.files) {
            const std::string start = "#include \"";
            for (std::size_t at = file.text.find(start); at != std::string::npos;
                 at = file.text.find(start, at)) {
                at += start.size();
                const fs::path included = file.text.substr(at, file.text.find('"', at) - at);
                const fs::path place = fs::path(file.name).parent_path() / included;
                EXPECT_TRUE(names.contains(place.generic_string()))
                    << file.name << " includes " << included;
            }
        }
    }
}

TEST(Emission, BringsJustTheDriverOfTheBus) {
    struct Row {
        BusKind kind;
        const char* brings;
        std::vector<const char*> leaves;
    };
    const Row rows[] = {
        {BusKind::spi, "spi_polled.hpp", {"spi_timed.hpp", "usart_spi.hpp", "parallel8.hpp"}},
        {BusKind::spi_timed, "spi_timed.hpp", {"usart_spi.hpp", "parallel8.hpp"}},
        {BusKind::usart_spi, "usart_spi.hpp", {"spi_polled.hpp", "parallel8.hpp"}},
        {BusKind::parallel8, "parallel8.hpp", {"spi_polled.hpp", "usart_spi.hpp"}},
    };
    LoadedExample it = load_example(everything);
    for (const Row& row : rows) {
        SCOPED_TRACE(row.brings);
        it.layout.bus = {row.kind, Hertz{it.layout.clock.value / 2}};
        std::set<std::string> names;
        for (const EmittedFile& file : emit(it.layout, it.image, Example::driver).files) {
            names.insert(file.name);
        }
        EXPECT_TRUE(names.contains(std::string("src/dialplate/") + row.brings));
        for (const char* left : row.leaves) {
            EXPECT_FALSE(names.contains(std::string("src/dialplate/") + left)) << left;
        }
    }
}

TEST(Emission, MountsTheDisplayAsItsPartSays) {
    LoadedExample it = load_example(everything);
    it.layout.turn = 270;
    it.layout.display.controller = "ST7735S";
    it.layout.display.turns[3] = {.address_mode = 0x68, .column_offset = 1, .page_offset = 2};
    it.layout.display.inverted = true;
    const Emission emission = emit(it.layout, it.image, Example::driver);
    const std::string& wiring = file_of(emission, "wiring.hpp").text;
    EXPECT_THAT(wiring, HasSubstr("using Controller = dialplate::St7735s;"));
    EXPECT_THAT(wiring, HasSubstr("address_mode = 0x68;"));
    EXPECT_THAT(wiring, HasSubstr("column_offset = 1, page_offset = 2;"));
    EXPECT_THAT(wiring, HasSubstr("inverted = true;"));
}

TEST(Emission, DividesTheClockToWhatTheLayoutAsksAtMost) {
    struct Row {
        double clock_mhz, bus_mhz;
        const char* divider;
    };
    const Row rows[] = {
        {16, 8, ", 2>"},
        {16, 16, ", 2>"},
        {16, 4, ", 4>"},
        {16, 5, ", 4>"},
        {16, 3.9, ", 8>"},
        {20, 10, ", 2>"},
        {8, 1, ", 8>"},
        {16, 0.125, ", 128>"},
        {16, 0.1, ", 128>"},
        {18.432, 9.216, ", 2>"},
    };
    LoadedExample it = load_example(everything);
    for (const Row& row : rows) {
        SCOPED_TRACE(row.bus_mhz);
        it.layout.clock = Hertz{row.clock_mhz * 1e6};
        it.layout.bus = {BusKind::spi, Hertz{row.bus_mhz * 1e6}};
        EXPECT_THAT(file_of(emit(it.layout, it.image, Example::driver), "wiring.hpp").text,
                    HasSubstr(row.divider));
    }
}

TEST(Emission, RefusesWhatNoDriverCanDo) {
    LoadedExample it = load_example(everything);
    it.layout.bus = {BusKind::usart_spi, Hertz{it.layout.clock.value / 4}};
    auto no = cannot_emit(it.layout, it.image, Example::driver);
    ASSERT_TRUE(no);
    EXPECT_THAT(no->why, HasSubstr("half the processor's clock"));
    EXPECT_FALSE(cannot_emit(it.layout, it.image, Example::own_driver));

    it.layout.mcu.family = "cortex-m3";
    it.layout.mcu.name = "STM32F103C8";
    no = cannot_emit(it.layout, it.image, Example::driver);
    ASSERT_TRUE(no);
    EXPECT_THAT(no->why, HasSubstr("--example own-driver"));
    EXPECT_EQ(usual_example(it.layout.mcu), Example::own_driver);
    EXPECT_FALSE(cannot_emit(it.layout, it.image, Example::own_driver));
}

TEST(Emission, RefusesAnImageThatTheCompilerCannotPlace) {
    LoadedExample it = load_example(everything);
    it.layout.mcu.object_max = Bytes{static_cast<std::int64_t>(it.image.bytes.size()) - 1};
    const auto no = cannot_emit(it.layout, it.image, Example::own_driver);
    ASSERT_TRUE(no);
    EXPECT_THAT(no->why, HasSubstr(std::to_string(it.image.bytes.size())));
    EXPECT_THAT(no->why, HasSubstr("the greatest parts are face"));
}

TEST(Emission, NamesEverythingOfTheLayoutOnce) {
    LoadedExample it = load_example(everything);
    it.layout.values.front().name = "switch";
    const LayoutNames names = layout_names(it.layout, it.image);
    EXPECT_EQ(names.values.front(), "switch_");
    EXPECT_EQ(names.values.size(), it.layout.values.size());
    EXPECT_EQ(names.keys.size(), it.image.keys.size());
    EXPECT_EQ(names.pages.size(), it.layout.pages.size());
    std::set<std::string> choices;
    std::size_t count = 0;
    for (std::size_t v = 0; v < names.choices.size(); ++v) {
        ASSERT_EQ(names.choices[v].size(), it.layout.values[v].choices.size());
        count += names.choices[v].size();
        choices.insert(names.choices[v].begin(), names.choices[v].end());
    }
    EXPECT_EQ(choices.size(), count);
}

TEST(Emission, LeavesTheFirmwareNoWayOutOfAComment) {
    LoadedExample it = load_example(everything);
    it.layout.title = "Dial\n#error \\";
    it.layout.values.front().unit = "Hz\\";
    const Emission emission = emit(it.layout, it.image, Example::driver);
    for (const EmittedFile& file : emission.files) {
        if (file.name == "README.md") continue;
        EXPECT_THAT(file.text, Not(HasSubstr("\n#error"))) << file.name;
        EXPECT_THAT(file.text, Not(HasSubstr("Hz\\\n"))) << file.name;
    }
    EXPECT_EQ(emission.sketch, "dial_error");
}

TEST(UsualPins, NeverUseAPinTwice) {
    for (const char* part : {"ATmega328P", "ATmega2560"}) {
        for (const BusKind kind :
             {BusKind::spi, BusKind::spi_timed, BusKind::usart_spi, BusKind::parallel8}) {
            SCOPED_TRACE(std::string(part) + " " + std::to_string(static_cast<int>(kind)));
            Mcu mcu;
            mcu.name = part;
            mcu.family = "avr";
            const auto pins = usual_pins(mcu, kind);
            ASSERT_TRUE(pins);
            const DisplayPins& d = pins->display;
            const TouchPins& t = pins->touch;
            std::vector<AvrPin> used = {
                d.data_or_command, d.select, d.reset, t.clock, t.in, t.out, t.select, t.pen};
            if (kind == BusKind::parallel8) {
                used.push_back(d.write);
                used.push_back(d.read);
                for (int bit = 0; bit < 8; ++bit) {
                    const bool low = (d.lines.low_mask >> bit & 1) != 0;
                    used.push_back({low ? d.lines.low : d.lines.high, bit, ""});
                }
            } else {
                used.push_back(d.clock);
                used.push_back(d.data);
            }
            std::set<std::pair<char, int>> different;
            for (const AvrPin& pin : used)
                different.emplace(pin.port, pin.bit);
            EXPECT_EQ(different.size(), used.size());
        }
    }
}

}  // namespace
}  // namespace dialplate
