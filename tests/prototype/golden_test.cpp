// Golden pictures: those that the README shows, as they were looked at and found right.
// `sh tests/pictures.sh` makes them anew; the commit that does so says why one changed.
#include "sim/layout/colour.hpp"
#include "sim/prototype/prototype.hpp"
#include "tests/prototype/examples.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <png.h>

namespace dialplate {

namespace {

struct Rgb {
    int width = 0, height = 0;
    std::vector<png_byte> bytes;  ///< Three a pixel, row-major.
};

Rgb read_rgb(const std::string& path) {
    png_image png{};
    png.version = PNG_IMAGE_VERSION;
    if (png_image_begin_read_from_file(&png, path.c_str()) == 0) return {};
    png.format = PNG_FORMAT_RGB;
    Rgb out{static_cast<int>(png.width),
            static_cast<int>(png.height),
            std::vector<png_byte>(PNG_IMAGE_SIZE(png))};
    if (png_image_finish_read(&png, nullptr, out.bytes.data(), 0, nullptr) == 0) return {};
    return out;
}

void write_rgb(const std::string& path, const Rgb& picture) {
    png_image png{};
    png.version = PNG_IMAGE_VERSION;
    png.width = static_cast<png_uint_32>(picture.width);
    png.height = static_cast<png_uint_32>(picture.height);
    png.format = PNG_FORMAT_RGB;
    png_image_write_to_file(&png, path.c_str(), 0, picture.bytes.data(), 0, nullptr);
}

}  // namespace

TEST(Golden, EveryPictureIsAsItWasLookedAt) {
    struct Row {
        const char *layout, *picture;
        int page;
    };
    const Row rows[] = {{"coast-listener", "coast-listener", 0},
                        {"coast-listener", "coast-listener-bands", 1},
                        {"pocket-broadcast", "pocket-broadcast", 0},
                        {"trail-cw", "trail-cw", 0},
                        {"bench-standard", "bench-standard", 0}};
    for (const Row& row : rows) {
        SCOPED_TRACE(row.picture);
        const LoadedExample loaded =
            load_example(std::string(DIALPLATE_TREE "/layouts/") + row.layout + ".json");
        ASSERT_FALSE(loaded.image.bytes.empty());
        Prototype p(loaded.layout, loaded.image);
        p.show_page(row.page);
        p.settle();
        const std::vector<std::uint16_t> glass = p.glass();
        const Rgb expected =
            read_rgb(std::string(DIALPLATE_TREE "/layouts/pictures/") + row.picture + ".png");
        ASSERT_EQ(expected.width, loaded.layout.glass_width());
        ASSERT_EQ(expected.height, loaded.layout.glass_height());
        Rgb actual = expected, difference = expected;
        std::string first;
        for (std::size_t i = 0; i < glass.size(); ++i) {
            const std::uint32_t rgb = expand_rgb565(glass[i]);
            bool same = true;
            for (std::size_t c = 0; c < 3; ++c) {
                actual.bytes[3 * i + c] = static_cast<png_byte>(rgb >> (16 - 8 * c));
                same = same && actual.bytes[3 * i + c] == expected.bytes[3 * i + c];
            }
            for (std::size_t c = 0; c < 3; ++c)
                difference.bytes[3 * i + c] = same ? 0 : 255;
            if (!same && first.empty()) {
                const auto width = static_cast<std::size_t>(expected.width);
                first = std::to_string(i % width) + ", " + std::to_string(i / width);
            }
        }
        if (first.empty()) continue;
        std::filesystem::create_directories(DIALPLATE_OUT);
        const std::string out = std::string(DIALPLATE_OUT "/") + row.picture;
        write_rgb(out + "-expected.png", expected);
        write_rgb(out + "-actual.png", actual);
        write_rgb(out + "-difference.png", difference);
        ADD_FAILURE() << "first different pixel: " << first << "; pictures in " << out << "-*.png";
    }
}

}  // namespace dialplate
