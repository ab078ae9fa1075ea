// What decoding a bitmap takes, against glyphs that were coded on paper by ui/image.md, "Contexts".
#include "sim/prototype/image_map.hpp"

#include "ui/image_format.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace dialplate {
namespace {

/// An image of which only the chances, all even, and one stream matter.
std::vector<std::uint8_t> image_with(const std::vector<std::uint8_t>& stream) {
    std::vector<std::uint8_t> image(header::bytes + context_model::contexts, 128);
    image.insert(image.end(), stream.begin(), stream.end());
    return image;
}

TEST(ContextWork, IsAsDecidedOnPaper) {
    struct Row {
        const char* what;
        std::vector<std::uint8_t> stream;
        int times;
        std::array<std::int32_t, work::context_fields> expected;
    };
    // Two columns, three rows. Of a range of 255 ground leaves 127, of 254 either side leaves 127: after each
    // decision one bit comes in, and value >= 127 is ink.
    const Row rows[] = {
        {"all ground: three rows of a flag and two pixels", {0, 0, 0}, 1, {3, 0, 6, 0, 9, 0, 6}},
        // value 81: no; 163: ink; 72: ground | 144: the same | 34: no; 68: ground; 136: ink
        {"ink and ground, the same, ground and ink", {81, 0x80}, 1, {2, 1, 4, 2, 7, 2, 6}},
        {"that, enlarged", {81, 0x80}, 3, {2, 1, 4, 2, 7, 2, 18}},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.what);
        CodedBitmap bitmap;
        bitmap.data = header::bytes + context_model::contexts;
        bitmap.packing = packing::context;
        bitmap.width = 2;
        bitmap.height = 3;
        bitmap.times = row.times;
        EngineWork work;
        add_decoding(image_with(row.stream), bitmap, work);
        const int first = row.times > 1 ? work::large_context : work::context;
        for (int kind = 0; kind < work::kinds; ++kind) {
            const bool counted = kind >= first && kind < first + work::context_fields;
            EXPECT_EQ(work.times[static_cast<std::size_t>(kind)],
                      counted ? row.expected[static_cast<std::size_t>(kind - first)] : 0)
                << name_of_work(kind);
        }
    }
}

}  // namespace
}  // namespace dialplate
