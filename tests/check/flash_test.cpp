#include "tests/check/sample.hpp"

namespace dialplate {

TEST(Flash, TellsADisplayThatIsOneByteTooLarge) {
    // MCU-02: 32,768 bytes less 512 for the boot loader leave 32,256; 14,200 are taken.
    sample::Sample s;
    FlashAccount& flash = s.ledger.flash;
    flash.capacity = Bytes{32768};
    flash.boot = Bytes{512};
    flash.taken = Bytes{14200};
    flash.total = Bytes{18056};
    flash.left = Bytes{0};
    EXPECT_TRUE(s.found("flash").empty());

    flash.total = Bytes{18057};
    flash.left = Bytes{-1};
    const Finding finding = sample::only(s.found("flash"));
    EXPECT_EQ(finding.severity, Severity::must);
    EXPECT_EQ(finding.measured, 18057);
    EXPECT_EQ(finding.required, 18056);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("1 bytes have to go"));
}

}  // namespace dialplate
