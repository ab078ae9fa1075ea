#include "tests/check/drawn_face.hpp"

namespace dialplate {

using sample::Sample;

namespace {

/// A 3 and an 8 that differ by squares of one pixel of 0.180 mm, 3 px stroke or not.
Sample three_and_eight(int thick) {
    Sample s;
    sample::begin_face(s, 5 * thick);
    s.layout.faces[0].scale = thick;
    sample::draw(s, U'3', {"###.", "..#.", "###.", "..#.", "###."});
    sample::draw(s, U'8', {"###.", "#.#.", "###.", "#.#.", "###."});
    return s;
}

}  // namespace

TEST(Acuity, IsOneOverTheDetailInMinutesOfArc) {
    // LEG-04 (derived): one pixel of 0.180 mm is 1.5470' at 400 mm, 1.2376' at 500 mm, 0.8840' at 700 mm.
    struct Row {
        double distance;
        double minutes;
        bool over;
    };
    for (const Row& row :
         {Row{400, 1.5470, false}, Row{500, 1.2376, false}, Row{700, 0.8840, true}}) {
        SCOPED_TRACE(row.distance);
        Sample s = three_and_eight(1);
        s.layout.viewing.distance = Millimetres{row.distance};
        const Finding finding = sample::only(s.found("acuity"));
        EXPECT_NEAR(*finding.measured, 1.0 / row.minutes, 0.0005);
        EXPECT_EQ(finding.severity, row.over ? Severity::should : Severity::note);
        EXPECT_THAT(finding.message, ::testing::HasSubstr("3/8 differ by 1 px"));
    }
}

TEST(Acuity, IsFineFromTwoMinutesOfArc) {
    // Two pixels of 0.180 mm at 500 mm: 2.475'. At 619 mm they are 1.9993', at 618 mm 2.0026'.
    Sample s = three_and_eight(2);
    EXPECT_TRUE(s.found("acuity").empty());
    s.layout.viewing.distance = Millimetres{618};
    EXPECT_TRUE(s.found("acuity").empty());
    s.layout.viewing.distance = Millimetres{619};
    EXPECT_EQ(sample::only(s.found("acuity")).required, 0.5);
}

TEST(Acuity, NamesTheOtherPairsWithTheirDifference) {
    Sample s = three_and_eight(1);
    sample::draw(s, U'0', {"###.", "#.#.", "#.#.", "#.#.", "###."});
    EXPECT_THAT(sample::only(s.found("acuity")).message, ::testing::HasSubstr("; 3/8 by 1.2'"));
}

TEST(Acuity, CountsPixelsAsTheTiltShowsThem) {
    Sample s = three_and_eight(2);
    s.layout.viewing.tilt = Degrees{40};  // 2.475' * cos 40 = 1.896'
    EXPECT_NEAR(*sample::only(s.found("acuity")).measured, 1.0 / 1.896, 0.001);
}

}  // namespace dialplate
