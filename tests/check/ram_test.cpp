#include "tests/check/sample.hpp"

namespace dialplate {

TEST(Ram, TellsADisplayThatIsOneByteTooLarge) {
    sample::Sample s;
    RamAccount& ram = s.ledger.ram;
    ram.capacity = Bytes{2048};  // ATmega328P
    ram.taken = Bytes{1800};
    ram.total = Bytes{248};
    ram.left = Bytes{0};
    EXPECT_EQ(sample::only(s.found("ram")).severity, Severity::should)
        << "it fits, with nothing to spare";

    ram.total = Bytes{226};
    ram.margin = Bytes{23};
    ram.left = Bytes{-1};
    const Finding finding = sample::only(s.found("ram"));
    EXPECT_EQ(finding.severity, Severity::must);
    EXPECT_EQ(finding.measured, 249);
    EXPECT_EQ(finding.required, 248);
    EXPECT_NE(finding.message.find("23 kept free"), std::string::npos) << finding.message;
}

TEST(Ram, AsksForSixtyFourBytesToSpare) {
    // Common practice, no source.
    sample::Sample s;
    s.ledger.ram.capacity = Bytes{2048};
    s.ledger.ram.left = Bytes{64};
    EXPECT_TRUE(s.found("ram").empty());
    s.ledger.ram.left = Bytes{63};
    const Finding finding = sample::only(s.found("ram"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_EQ(finding.required, 64);
}

}  // namespace dialplate
