#include "tests/check/sample.hpp"

namespace dialplate {

TEST(Ram, TellsADisplayThatIsOneByteTooLarge) {
    sample::Sample s;
    RamAccount& ram = s.ledger.ram;
    ram.capacity = Bytes{2048};  // ATmega328P
    ram.taken = Bytes{1800};
    ram.total = Bytes{248};
    ram.left = Bytes{0};
    EXPECT_TRUE(s.found("ram").empty());

    ram.total = Bytes{249};
    ram.left = Bytes{-1};
    const Finding finding = sample::only(s.found("ram"));
    EXPECT_EQ(finding.severity, Severity::must);
    EXPECT_EQ(finding.measured, 249);
    EXPECT_EQ(finding.required, 248);
}

}  // namespace dialplate
