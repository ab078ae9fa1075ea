// The emitted sketches through avr-g++: bare with avr-libc, and with the sources of Arduino's core.
#include "sim/emit/compiler_flags.hpp"
#include "sim/emit/emission.hpp"
#include "tests/emit/emitted_code.hpp"
#include "tests/prototype/examples.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <fstream>
#include <iostream>
#include <sstream>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

const fs::path arduino = "/usr/share/arduino/hardware/arduino/avr";

bool have_compiler() {
    return run_shell("command -v avr-g++ && test -e /usr/lib/avr/include/avr/io.h").status == 0;
}

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) {
        return static_cast<char>(std::tolower(c));
    });
    return text;
}

std::string target(const Layout& layout) {
    return " -mmcu=" + lower(layout.mcu.name) +
           " -DF_CPU=" + std::to_string(std::llround(layout.clock.value)) + "UL ";
}

const std::string bare_flags =
    std::string(" ") + compiler_flags + " -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror ";
// platform.txt of arduino-core-avr 1.8, with its warnings at their strictest, as errors.
constexpr const char* arduino_flags =
    " -c -g -Os -Wall -Wextra -Werror -std=gnu++11 -fpermissive -fno-exceptions "
    "-ffunction-sections "
    "-fdata-sections -fno-threadsafe-statics -Wno-error=narrowing -flto ";

/// The fixture that says everything a layout can say makes up a part of its own.
LoadedExample load_for_a_real_part(const std::string& file) {
    LoadedExample it = load_example(file);
    if (lower(it.layout.mcu.name) == "bench avr") it.layout.mcu.name = "ATmega328P";
    return it;
}

/// Reports flash and static RAM of a linked program.
void report_size(const std::string& what, const fs::path& elf) {
    const Ran sizes = run_shell("avr-size '" + elf.string() + "' | tail -n 1");
    std::istringstream in(sizes.output);
    int text = 0, data = 0, bss = 0;
    ASSERT_TRUE(in >> text >> data >> bss) << sizes.output;
    std::cout << what << ": flash " << text + data << " bytes, RAM " << data + bss << " bytes\n";
    testing::Test::RecordProperty("flash", text + data);
    testing::Test::RecordProperty("ram", data + bss);
}

struct InFlash {
    unsigned long at = 0, size = 0;
};

/// Where the linker put the image (`avr-nm -S`: address, size).
InFlash image_in(const fs::path& elf) {
    const Ran names = run_shell("avr-nm -S '" + elf.string() + "' | grep image_bytes");
    std::istringstream in(names.output);
    InFlash image;
    EXPECT_TRUE(in >> std::hex >> image.at >> image.size) << names.output;
    return image;
}

/// An AVR reads the image by 16-bit pointers: it has to lie whole below 64 KiB.
void expect_image_in_near_flash(const fs::path& elf, const BuiltImage& built) {
    const InFlash image = image_in(elf);
    EXPECT_EQ(image.size, built.bytes.size());
    EXPECT_LT(image.at + image.size, 0x10000UL);
}

class AvrBuild : public testing::TestWithParam<std::string> {
protected:
    void SetUp() override {
        if (!have_compiler()) GTEST_SKIP() << "needs the packages gcc-avr and avr-libc";
    }
    static std::string stem() { return fs::path(GetParam()).stem(); }
};
INSTANTIATE_TEST_SUITE_P(Examples, AvrBuild, testing::ValuesIn(example_files()), test_name);

TEST_P(AvrBuild, BareWithoutAWarning) {
    const LoadedExample it = load_for_a_real_part(GetParam());
    if (it.layout.mcu.family != "avr") GTEST_SKIP() << "for another processor";
    for (const Example example : {Example::driver, Example::own_driver}) {
        const std::string name = stem() + (example == Example::driver ? "-driver" : "-own-driver");
        if (const auto no = cannot_emit(it.layout, it.image, example)) {
            EXPECT_EQ(stem(), "crowded") << no->why;  // which is too big on purpose
            continue;
        }
        const fs::path directory = emitted_into("bare-" + name, emit(it.layout, it.image, example));
        const fs::path elf = directory.string() + ".elf";
        const Ran built =
            run_shell("cd '" + directory.string() + "' && avr-g++" + target(it.layout) +
                      bare_flags + "*.cpp -o '" + elf.string() + "'");
        ASSERT_EQ(built.status, 0) << built.output;
        EXPECT_EQ(built.output, "");
        report_size("bare " + name, elf);
        expect_image_in_near_flash(elf, it.image);
    }
}

/// Arduino's core for a microcontroller as a library, compiled once.
std::string core_library(const Layout& layout) {
    const std::string mcu = lower(layout.mcu.name);
    const fs::path folder =
        fs::path(DIALPLATE_OUT) / "emit" /
        ("core-" + mcu + "-" + std::to_string(std::llround(layout.clock.value * 1e-3)));
    const std::string library = (folder / "core.a").string();
    if (fs::exists(library)) return library;
    fs::create_directories(folder);
    const std::string variant = mcu == "atmega2560" ? "mega" : "standard";
    const std::string common = target(layout) + "-DARDUINO=10819 -DARDUINO_ARCH_AVR -I" +
                               (arduino / "cores/arduino").string() + " -I" +
                               (arduino / "variants" / variant).string() + " ";
    // WString.cpp wants DECIMAL_DIG, which this compiler's float.h hides from C++.
    const Ran built = run_shell(
        "cd '" + folder.string() + "' && avr-g++ -w" +
        std::string(arduino_flags).replace(std::string(arduino_flags).find("-Wall"), 21, "") +
        common + "-DDECIMAL_DIG=__DECIMAL_DIG__ " + (arduino / "cores/arduino").string() +
        "/*.cpp && avr-gcc -w -c -g -Os -std=gnu11 -ffunction-sections -fdata-sections -flto "
        "-fno-fat-lto-objects " +
        common + (arduino / "cores/arduino").string() +
        "/*.c && avr-gcc -c -g -x assembler-with-cpp -flto " + common +
        (arduino / "cores/arduino").string() + "/*.S && avr-gcc-ar rcs core.a *.o");
    EXPECT_EQ(built.status, 0) << built.output;
    return library;
}

TEST_P(AvrBuild, AsAnArduinoSketchWithoutAWarning) {
    if (!fs::exists(arduino / "cores/arduino/Arduino.h")) {
        GTEST_SKIP() << "needs the package arduino-core-avr";
    }
    const LoadedExample it = load_for_a_real_part(GetParam());
    if (it.layout.mcu.family != "avr") GTEST_SKIP() << "for another processor";
    const std::string core = core_library(it.layout);
    const std::string variant = it.layout.mcu.name == "ATmega2560" ? "mega" : "standard";
    for (const Example example : {Example::driver, Example::own_driver}) {
        const std::string name = stem() + (example == Example::driver ? "-driver" : "-own-driver");
        if (cannot_emit(it.layout, it.image, example)) continue;
        const Emission emission = emit(it.layout, it.image, example);
        const fs::path directory = emitted_into("arduino-" + name, emission);
        // What Arduino's tools make of the sketch's own file.
        std::ifstream sketch(directory / (emission.sketch + ".ino"));
        std::ofstream(directory / (emission.sketch + ".ino.cpp")) << "#include <Arduino.h>\n"
                                                                  << sketch.rdbuf();
        const fs::path elf = directory.string() + ".elf";
        const Ran built = run_shell(
            "cd '" + directory.string() + "' && avr-g++" + arduino_flags + target(it.layout) +
            "-DARDUINO=10819 -DARDUINO_ARCH_AVR -I" + (arduino / "cores/arduino").string() + " -I" +
            (arduino / "variants" / variant).string() +
            " *.cpp && avr-gcc -Wall -Wextra -Os -g -flto -fuse-linker-plugin -Wl,--gc-sections" +
            target(it.layout) + "-o '" + elf.string() + "' *.o '" + core + "' -lm");
        ASSERT_EQ(built.status, 0) << built.output;
        EXPECT_EQ(built.output, "");
        report_size("Arduino " + name, elf);
        expect_image_in_near_flash(elf, it.image);
    }
}

TEST(AvrBuilds, CompileForEveryBusOnEveryPart) {
    if (!have_compiler()) GTEST_SKIP() << "needs the packages gcc-avr and avr-libc";
    LoadedExample it =
        load_example(std::string(DIALPLATE_TREE) + "/tests/layout/fixtures/good/everything.json");
    for (const char* part : {"ATmega328P", "ATmega2560"}) {
        for (const BusKind kind :
             {BusKind::spi, BusKind::spi_timed, BusKind::usart_spi, BusKind::parallel8}) {
            for (const int bytes_per_pixel : {2, 3}) {
                it.layout.mcu.name = part;
                it.layout.mcu.family = "avr";
                it.layout.bus = {kind, Hertz{it.layout.clock.value / 2}};
                it.layout.display.bytes_per_pixel = bytes_per_pixel;
                for (const Example example : {Example::driver, Example::own_driver}) {
                    const fs::path directory =
                        emitted_into("every-bus", emit(it.layout, it.image, example));
                    const Ran checked =
                        run_shell("cd '" + directory.string() + "' && avr-g++" + target(it.layout) +
                                  bare_flags + "-fsyntax-only main.cpp");
                    EXPECT_EQ(checked.output, "")
                        << part << ' ' << static_cast<int>(kind) << ' ' << bytes_per_pixel;
                }
            }
        }
    }
}

/// Three tables of 30,000 bytes, as a sketch with melodies or a list of stations may have.
constexpr const char* large_tables = R"(#include <avr/io.h>
#include <avr/pgmspace.h>
#include <stdint.h>
extern const uint8_t first_table[30000], second_table[30000], third_table[30000];
const uint8_t first_table[30000] PROGMEM = {1};
const uint8_t second_table[30000] PROGMEM = {2};
const uint8_t third_table[30000] PROGMEM = {3};
__attribute__((constructor)) static void keep_them() {
    GPIOR0 = pgm_read_byte(first_table + GPIOR1);
    GPIOR0 = pgm_read_byte(second_table + GPIOR1);
    GPIOR0 = pgm_read_byte(third_table + GPIOR1);
}
)";

TEST(AvrBuilds, KeepTheImageNearHoweverMuchElseIsInFlash) {
    if (!have_compiler()) GTEST_SKIP() << "needs the packages gcc-avr and avr-libc";
    const LoadedExample it =
        load_example(std::string(DIALPLATE_TREE) + "/layouts/bench-standard.json");
    ASSERT_EQ(it.layout.mcu.name, "ATmega2560");
    const fs::path directory =
        emitted_into("crowded-flash", emit(it.layout, it.image, Example::driver));
    // With -flto what is compiled last comes first.
    std::ofstream(directory / "z_tables.cpp") << large_tables;
    const auto link = [&](const std::string& name) {
        const fs::path elf = directory / name;
        const Ran built = run_shell("cd '" + directory.string() + "' && avr-g++" +
                                    target(it.layout) + bare_flags + "*.cpp -o " + name);
        EXPECT_EQ(built.output, "");
        return elf;
    };
    expect_image_in_near_flash(link("near.elf"), it.image);
    // As any other constant it would not be: what the section is for.
    const Ran changed = run_shell("cd '" + directory.string() +
                                  "' && sed -i 's/DIALPLATE_IN_FLASH/PROGMEM/' image.cpp");
    ASSERT_EQ(changed.status, 0) << changed.output;
    const InFlash far = image_in(link("far.elf"));
    EXPECT_GT(far.at + far.size, 0x10000UL);
}

TEST(OtherProcessors, TakeTheSketchWithTheirBoardsFunctions) {
    LoadedExample it =
        load_example(std::string(DIALPLATE_TREE) + "/tests/layout/fixtures/good/everything.json");
    it.layout.mcu.name = "RP2040";
    it.layout.mcu.family = "cortex-m0plus";
    const Emission emission = emit(it.layout, it.image, usual_example(it.layout.mcu));
    const fs::path directory = emitted_into("other-processor", emission);
    EXPECT_FALSE(fs::exists(directory / "main.cpp")) << "the clock of main.cpp is the AVR's";
    // Stand-ins for the functions of an Arduino core.
    fs::create_directories(directory / "stand_in");
    std::ofstream(directory / "stand_in/Arduino.h")
        << "#pragma once\n#include <stdint.h>\n#define OUTPUT 1\n#define HIGH 1\n#define LOW 0\n"
           "inline void pinMode(uint8_t, uint8_t) {}\ninline void digitalWrite(uint8_t, uint8_t) "
           "{}\n"
           "inline void delay(unsigned long) {}\ninline unsigned long millis() { return 0; }\n";
    const Ran checked = run_shell("cd '" + directory.string() +
                                  "' && g++ -x c++ -std=c++14 -Wall -Wextra -Werror "
                                  "-DARDUINO=10819 -Istand_in -fsyntax-only " +
                                  emission.sketch + ".ino");
    EXPECT_EQ(checked.output, "");
}

}  // namespace
}  // namespace dialplate
