#include "tests/check/sample.hpp"

namespace dialplate {

TEST(ImageSize, TellsAnImageOneByteOverTheGreatestObject) {
    sample::Sample s;
    s.image.bytes.resize(32767);  // MCU-04
    EXPECT_TRUE(s.found("image-size").empty());

    s.image.bytes.resize(32768);
    PictureCost picture;
    picture.file = "waterfall.png";
    picture.bytes = Bytes{20000};
    s.image.pictures.push_back(picture);
    const Finding finding = sample::only(s.found("image-size"));
    EXPECT_EQ(finding.severity, Severity::must);
    EXPECT_EQ(finding.measured, 32768);
    EXPECT_EQ(finding.required, 32767);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("picture \"waterfall.png\" with 20000"));
}

TEST(ImageSize, AsksNothingOfAPartWithoutSuchALimit) {
    sample::Sample s;
    s.image.bytes.resize(60000);
    s.layout.mcu.object_max.reset();
    EXPECT_TRUE(s.found("image-size").empty());
}

}  // namespace dialplate
