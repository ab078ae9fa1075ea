// Which columns of two rows differ, against a look at every pixel; and which windows a digit that changes opens.
#include "ui/changed_runs.hpp"
#include "ui/parts.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

namespace dialplate {
namespace {

using ::testing::ElementsAre;

/// A row as text, '#' is ink.
Edges edges_of(const std::string& row) {
    Edges edges;
    std::uint8_t* next = edges.at;
    for (std::size_t x = 0; x < row.size(); ++x) {
        if (row[x] != (x == 0 ? '.' : row[x - 1])) *next++ = static_cast<std::uint8_t>(x);
    }
    *next = Edges::end;
    return edges;
}

struct Found {
    int from, gap_from, gap_to, to;
    friend bool operator==(const Found&, const Found&) = default;
    friend void PrintTo(const Found& found, std::ostream* out) {
        *out << found.from << ".." << found.gap_from << ", " << found.gap_to << ".." << found.to;
    }
};

/// Pixel by pixel; of gaps that are equally wide the first.
Found looked_at(const std::string& a, const std::string& b) {
    Found found{0, 0, 0, 0};
    int last = -1;
    for (int x = 0; x < static_cast<int>(a.size()); ++x) {
        const auto at = static_cast<std::size_t>(x);
        if (a[at] == b[at]) continue;
        if (last < 0) found.from = x;
        if (last >= 0 && x - last - 1 > found.gap_to - found.gap_from) {
            found.gap_from = last + 1;
            found.gap_to = x;
        }
        last = x;
    }
    found.to = last + 1;
    return found;
}

TEST(RowsThatDiffer, AreToldByTheirEdgesAsByTheirPixels) {
    std::mt19937 random(20);
    // A row of a digit has at most four strokes.
    const auto some_row = [&random](int width) {
        std::string row(static_cast<std::size_t>(width), '.');
        for (int stroke = static_cast<int>(random() % 5); stroke != 0; --stroke) {
            const auto from = random() % row.size();
            const auto length = std::min<std::size_t>(1 + random() % 4, row.size() - from);
            row.replace(from, length, length, '#');
        }
        return row;
    };
    for (int i = 0; i < 20'000; ++i) {
        const int width = 1 + static_cast<int>(random() % 24);
        const std::string a = some_row(width), b = some_row(width);
        SCOPED_TRACE(a + " and " + b);
        const Spans spans =
            RunsCore::difference(edges_of(a), edges_of(b), static_cast<std::uint8_t>(width));
        const Found expected = looked_at(a, b);
        ASSERT_EQ(spans.to, expected.to);
        if (expected.to == 0) continue;
        ASSERT_EQ((Found{spans.from, spans.gap_from, spans.gap_to, spans.to}), expected);
    }
}

/// x, y, width and height of the windows that are opened, and the pixels each is sent.
struct Recorder {
    std::vector<std::vector<int>> windows;
    std::vector<int> pixels;
    void window(std::uint16_t x, std::uint16_t y, std::uint16_t width, std::uint16_t height) {
        windows.push_back({x, y, width, height});
        pixels.push_back(0);
    }
    void push(std::uint16_t, std::uint16_t count) { pixels.back() += count; }
};

/// Sends a change from blank to rows of 16 pixels that are given by their bits.
Recorder changed_to(const std::vector<std::uint16_t>& rows) {
    // A plain face of 16 columns: fields as in ui/image.md; a blank glyph, then one with ink.
    const auto height = static_cast<std::uint8_t>(rows.size());
    std::vector<std::uint8_t> bytes = {packing::plain, height, 1, 2, 16, 0};
    constexpr std::uint16_t blank = 6, inked = 10;
    bytes.insert(bytes.end(), {0, 0, 0, 0});
    bytes.insert(bytes.end(), {0, 0, 16, height});
    for (const std::uint16_t row : rows) {
        bytes.push_back(static_cast<std::uint8_t>(row >> 8));
        bytes.push_back(static_cast<std::uint8_t>(row));
    }
    using Changes = ChangedRuns<Recorder, EveryPart>;
    const Rom<MemoryBytes> rom{MemoryBytes(bytes.data(), static_cast<std::uint16_t>(bytes.size()))};
    Changes::Rows was(rom, 0, GlyphMetrics{16, blank});
    Changes::Rows is(rom, 0, GlyphMetrics{16, inked});
    Recorder recorder;
    Changes(recorder, Point{100, 50}, 1, Colours{1, 0}).send(was, is, 16, height);
    for (std::size_t i = 0; i < recorder.windows.size(); ++i)
        EXPECT_EQ(recorder.pixels[i], recorder.windows[i][2] * recorder.windows[i][3]);
    return recorder;
}

TEST(ChangedRunsWindows, AreTwoSideBySideWhereTheGapTakesLongerThanAWindow) {
    // Two rows with 12 pixels between two strokes: 24 pixels, and a window costs 9.
    EXPECT_THAT(changed_to({0xC003, 0xC003}).windows,
                ElementsAre(ElementsAre(100, 50, 2, 2), ElementsAre(114, 50, 2, 2)));
    // One row with 8 pixels between them.
    EXPECT_THAT(changed_to({0xF00F, 0x0000}).windows, ElementsAre(ElementsAre(100, 50, 16, 1)));
    // A row that fills the gap goes out by itself if that sends fewer pixels than a window costs.
    EXPECT_THAT(
        changed_to({0xC003, 0xC003, 0xC003, 0xFFFF}).windows,
        ElementsAre(
            ElementsAre(100, 50, 2, 3), ElementsAre(114, 50, 2, 3), ElementsAre(100, 53, 16, 1)));
}

TEST(ChangedRunsWindows, LeaveOutRowsThatDoNotDiffer) {
    EXPECT_THAT(changed_to({0x0FF0, 0x0000, 0x0000, 0x0FF0}).windows,
                ElementsAre(ElementsAre(104, 50, 8, 1), ElementsAre(104, 53, 8, 1)));
    EXPECT_THAT(changed_to({0x0000, 0x0000}).windows, ElementsAre());
}

}  // namespace
}  // namespace dialplate
