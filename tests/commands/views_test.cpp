// The views that `dialplate shot` can take.
#include "tests/commands/program.hpp"

#include <gmock/gmock.h>

#include <set>

namespace dialplate {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

using Views = Program;

TEST_F(Views, AreEachAnotherPictureOfTheSameSize) {
    std::set<std::string> seen{run("shot '" + coast + "' -o -").out};
    for (const char* view :
         {"--lux 5000",
          "--vision protan",
          "--vision deutan",
          "--vision tritan",
          "--eye 400 --acuity 1",
          "--eye 400 --acuity 0.5",
          "--bezel",
          "--finger",
          "--lux 5000 --vision deutan --eye 400 --acuity 0.5 --bezel --finger"}) {
        SCOPED_TRACE(view);
        const Outcome result = run("shot '" + coast + "' -o - " + view);
        ASSERT_EQ(result.status, 0) << result.err;
        EXPECT_THAT(result.err, IsEmpty());
        EXPECT_EQ(size_of_png(result.out), std::pair(320, 240));
        EXPECT_TRUE(seen.insert(result.out).second);
    }
}

TEST_F(Views, OfTwoEyesStandSideBySideWithAStripOfWords) {
    const auto [width, height] = size_of_png(run("shot '" + coast + "' -o - --eye 400").out);
    EXPECT_GT(width, 2 * 320);
    EXPECT_GT(height, 240);
}

TEST_F(Views, GrowWithTheZoom) {
    EXPECT_EQ(size_of_png(run("shot '" + coast + "' -o - --zoom 2 --finger --bezel").out),
              std::pair(640, 480));
}

TEST_F(Views, RefuseWhatCannotBe) {
    struct Row {
        const char* option;
        const char* says;
    };
    const Row rows[] = {
        {"--vision blue", "--vision"},
        {"--eye 3", "--eye"},
        {"--acuity 1", "--eye"},
        {"--lux -1", "--lux"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.option);
        const Outcome result = run("shot '" + coast + "' -o a.png " + row.option);
        EXPECT_EQ(result.status, 2);
        EXPECT_THAT(result.err, HasSubstr(row.says));
        EXPECT_FALSE(std::filesystem::exists(folder_ / "a.png"));
    }
}

}  // namespace
}  // namespace dialplate
