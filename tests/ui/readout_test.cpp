// Readouts against a slow twin: the number put into words by the C++ library, its characters drawn one by
// one from the face as it was rasterised.
#include "tests/ui/page.hpp"

#include <random>

namespace dialplate {

namespace {

struct Form {
    const char* json;  ///< Members of the readout.
    std::vector<int> groups;
    int drop, least;
    bool sign;
};

// What the readout has to say, a character a cell.
std::string words(std::int32_t number, const Form& form) {
    std::string digits = std::to_string(std::abs(static_cast<std::int64_t>(number)));
    digits = digits.size() > static_cast<std::size_t>(form.drop)
                 ? digits.substr(0, digits.size() - static_cast<std::size_t>(form.drop))
                 : "0";
    if (digits == "0" && form.least == 0) digits.clear();
    while (digits.size() < static_cast<std::size_t>(form.least))
        digits.insert(0, "0");
    int room = 0;
    for (const int g : form.groups)
        room += g;
    if (digits.size() > static_cast<std::size_t>(room))
        digits = digits.substr(digits.size() - static_cast<std::size_t>(room));
    while (digits.size() < static_cast<std::size_t>(room))
        digits.insert(0, " ");
    std::string out;
    std::size_t at = 0;
    for (std::size_t g = 0; g < form.groups.size(); ++g) {
        if (g != 0) out += digits[at - 1] == ' ' ? "_" : ".";
        out += digits.substr(at, static_cast<std::size_t>(form.groups[g]));
        at += static_cast<std::size_t>(form.groups[g]);
    }
    return (form.sign ? (number < 0 ? "-" : " ") : "") + out;
}

std::string twin(const TestPage& page, const std::string& cells, const Box& box) {
    const RasterFace& face = page.image.rasters[1];
    const auto glyph = [&](char c) -> const Glyph* {
        for (const Glyph& g : face.glyphs) {
            if (g.code == static_cast<char32_t>(c)) return &g;
        }
        return nullptr;
    };
    std::vector<std::string> rows(static_cast<std::size_t>(face.height));
    for (const char c : cells) {
        const Glyph* g = glyph(c == ' ' ? '0' : c == '_' ? '.' : c);
        for (int y = 0; y < face.height; ++y) {
            for (int x = 0; x < g->cell.width; ++x) {
                rows[static_cast<std::size_t>(y)] +=
                    c != ' ' && c != '_' && g->cell.ink(x, y) ? '#' : '.';
            }
        }
    }
    std::string out;
    const int above = (box.height - face.height) / 2;
    for (int y = 0; y < box.height; ++y) {
        const bool inside = y >= above && y < above + face.height;
        std::string row = inside ? rows[static_cast<std::size_t>(y - above)] : "";
        row.resize(static_cast<std::size_t>(box.width), '.');
        out += row + "\n";
    }
    return out;
}

}  // namespace

TEST(Readout, ShowsWhatTheLibraryWouldWrite) {
    const Form forms[] = {
        {R"("value": "count", "groups": [2, 3, 3], "separator": ".", "least": 7)",
         {2, 3, 3},
         0,
         7,
         false},
        {R"("value": "count", "groups": [2, 3, 3], "separator": ".")", {2, 3, 3}, 0, 1, false},
        {R"("value": "count", "groups": [2, 3, 2], "separator": ".", "drop": 1, "least": 6)",
         {2, 3, 2},
         1,
         6,
         false},
        {R"("value": "number", "groups": [8])", {8}, 0, 1, true},
        {R"("value": "count", "groups": [1, 1, 1, 1, 1, 1, 1, 1], "separator": ".")",
         {1, 1, 1, 1, 1, 1, 1, 1},
         0,
         1,
         false},
        {R"("value": "count", "groups": [4, 3], "separator": ".", "drop": 1, "least": 4)",
         {4, 3},
         1,
         4,
         false},
    };
    const Box box{8, 10, 200, 30};
    for (const Form& form : forms) {
        SCOPED_TRACE(form.json);
        TestPage page(
            R"({"kind": "readout", "at": [8, 10], "size": [200, 30], "face": "figures", "ink": "white", "ground": "black", "align": "left", )" +
            std::string(form.json) + "}");
        ASSERT_NE(page.prototype, nullptr);
        std::mt19937 random(11);
        std::vector<std::int32_t> numbers = {0,
                                             1,
                                             9,
                                             10,
                                             99,
                                             100,
                                             999,
                                             1000,
                                             9999,
                                             10000,
                                             99999,
                                             100000,
                                             999999,
                                             1000000,
                                             9999999,
                                             10000000,
                                             99999999};
        for (int i = 0; i < 60; ++i)
            numbers.push_back(static_cast<std::int32_t>(random() % 100000000U) >> random() % 20U);
        // RX-15 (custom): 7100000 as 7.100.000, 29700000 as 29.700.000, 530000 as 0.530.000
        for (const std::int32_t n : {7100000, 29700000, 530000})
            numbers.push_back(n);
        if (form.sign) {
            for (const std::int32_t n : std::vector<std::int32_t>(numbers))
                numbers.push_back(-n);
        }
        for (const std::int32_t number : numbers) {
            page.set(form.sign ? "number" : "count", number);
            ASSERT_EQ(page.drawing(box, white), twin(page, words(number, form), box)) << number;
        }
    }
}

TEST(Readout, GroupsAsIsTheCustom) {
    // standards RX-15, "custom"
    const Form form{"", {2, 3, 3}, 0, 7, false};
    EXPECT_EQ(words(7100000, form), " 7.100.000");
    EXPECT_EQ(words(29700000, form), "29.700.000");
    EXPECT_EQ(words(530000, form), " 0.530.000");
}

TEST(Readout, SendsOnlyTheDigitsThatChanged) {
    TestPage page(
        R"({"kind": "readout", "at": [8, 10], "size": [200, 30], "face": "figures", "ink": "white", "ground": "black", "value": "count", "groups": [2, 3, 3], "separator": ".", "least": 7})");
    struct Row {
        std::int32_t from, to;
        int windows;  ///< Cells that differ.
    };
    const Row rows[] = {
        {7100000, 7100001, 1},
        {7100009, 7100010, 2},
        {7100999, 7101000, 4},
        {7999999, 8000000, 7},
        {9999999, 10000000, 8},  // one more digit, and all others
        {7100000, 7100000, 0},
        {10000000, 20000000, 1},
    };
    const std::int64_t cell = 10LL * 13;  // figures16: advance 10, 13 rows of ink
    for (const Row& row : rows) {
        page.set("count", row.from);
        page.prototype->set(page.value("count"), row.to);
        const Update update = page.prototype->settle();
        SCOPED_TRACE(std::to_string(row.from) + " to " + std::to_string(row.to));
        EXPECT_EQ(update.sent.windows, row.windows);
        EXPECT_EQ(update.sent.pixels, row.windows * cell);
        // 11 bytes a window (standards BUS-04), two a pixel
        EXPECT_EQ(update.sent.bytes, row.windows * (11 + 2 * cell));
    }
}

TEST(Readout, MarksTheDigitThatTheKnobTurns) {
    for (const std::string mark : {"underline", "invert"}) {
        SCOPED_TRACE(mark);
        TestPage page(
            R"({"kind": "readout", "at": [0, 0], "size": [100, 40], "face": "figures", "ink": "white", "ground": "black", "value": "count", "groups": [8], "align": "left", "tuning": {"value": "step", "mark": ")" +
            mark + R"("}})");
        page.set("count", 12345678);
        const Box box{0, 0, 100, 40};
        std::string plain[3];
        const int digit_from_right[] = {0, 1, 3};
        for (int choice = 0; choice < 3; ++choice) {
            page.set("step", choice);
            plain[choice] = page.drawing(box, white);
            // Columns of the cell that is marked: 8 cells of 10 from the left.
            const int left = 70 - 10 * digit_from_right[choice];
            int full_rows = 0;
            for (int y = 0; y < 40; ++y) {
                int ink = 0;
                for (int x = left; x < left + 10; ++x)
                    ink += page.at(x, y) == white ? 1 : 0;
                full_rows += ink == 10 ? 1 : 0;
            }
            EXPECT_GE(full_rows, 1) << "choice " << choice;
        }
        EXPECT_NE(plain[0], plain[1]);
        page.set("step", 0);
        EXPECT_EQ(page.drawing(box, white), plain[0]);
    }
}

}  // namespace dialplate
