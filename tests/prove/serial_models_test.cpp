// The models of the serial units alone, register by register.
#include "sim/prove/spi_model.hpp"
#include "sim/prove/usart_model.hpp"

#include <gtest/gtest.h>

#include <utility>
#include <vector>

namespace dialplate {
namespace {

constexpr std::uint8_t spi_master = 0x50, spif = 0x80, wcol = 0x40, spi2x = 0x01;
constexpr std::uint8_t usart_spi = 0xC0, txen = 0x08, txc = 0x40, udre = 0x20;

using Sent = std::vector<std::pair<CycleCount, int>>;

class SpiUnit : public testing::Test {
protected:
    Sent sent;
    SpiModel spi{SpiTiming{}, [this](CycleCount at, std::uint8_t byte) {
                     sent.push_back({at, byte});
                 }};
    void SetUp() override {
        spi.write_control(spi_master);
        spi.write_status(0, spi2x);
    }
};

TEST_F(SpiUnit, SendsNothingUnlessItIsAnEnabledMaster) {
    spi.write_control(0x40);
    spi.write_data(10, 1);
    spi.write_control(0x10);
    spi.write_data(100, 2);
    spi.settle(1000);
    EXPECT_TRUE(sent.empty());
}

TEST_F(SpiUnit, TakesEightBitsOfEachClockTheControlBitsName) {
    // SPR1:0 and SPI2X against the divider (AVR data sheets, SCK and the oscillator frequency).
    struct Row {
        std::uint8_t control, status;
        CycleCount divider;
    };
    const Row rows[] = {{0, 0, 4},
                        {1, 0, 16},
                        {2, 0, 64},
                        {3, 0, 128},
                        {0, spi2x, 2},
                        {1, spi2x, 8},
                        {2, spi2x, 32},
                        {3, spi2x, 64}};
    CycleCount now = 1000;
    for (const Row& row : rows) {
        spi.write_control(static_cast<std::uint8_t>(spi_master | row.control));
        spi.write_status(now, row.status);
        spi.write_data(now, 0x55);
        EXPECT_TRUE(spi.shifting(now + 8 * row.divider));
        EXPECT_FALSE(spi.shifting(now + 8 * row.divider + 1));
        now += 10'000;
    }
}

TEST_F(SpiUnit, ClearsTheFlagByStatusThenData) {
    spi.write_data(0, 7);
    EXPECT_EQ(spi.read_status(16) & spif, 0);
    EXPECT_EQ(spi.read_status(17) & spif, spif);
    EXPECT_EQ(spi.read_status(18) & spif, spif) << "reading the status alone keeps it";
    (void)spi.read_data(19);
    EXPECT_EQ(spi.read_status(20) & spif, 0);
}

TEST_F(SpiUnit, KeepsTheFlagOfAnEarlierByteThroughUnpolledWrites) {
    spi.write_data(0, 1);
    spi.write_data(18, 2);
    EXPECT_EQ(spi.read_status(19) & spif, spif) << "of the first byte: a poll would end at once";
    (void)spi.read_data(20);
    EXPECT_EQ(spi.read_status(21) & spif, 0) << "status and data have been touched now";
    EXPECT_EQ(spi.read_status(35) & spif, spif) << "of the second";
}

TEST_F(SpiUnit, LosesAWriteDuringAByteAndSaysSo) {
    spi.write_data(0, 1);
    spi.write_data(17, 2);
    spi.settle(100);
    EXPECT_EQ(sent, (Sent{{17, 1}}));
    EXPECT_EQ(spi.collisions(), 1);
    EXPECT_EQ(spi.read_status(101) & wcol, wcol);
    (void)spi.read_data(102);
    EXPECT_EQ(spi.read_status(103) & wcol, 0);
}

class UsartUnit : public testing::Test {
protected:
    Sent sent;
    UsartModel usart{[this](CycleCount at, std::uint8_t byte) { sent.push_back({at, byte}); }};
    void SetUp() override {
        usart.write_mode(usart_spi);
        usart.write_baud(0);
        usart.write_control(0, txen);
    }
};

TEST_F(UsartUnit, SendsBufferedBytesBackToBack) {
    usart.write_data(0, 1);
    usart.write_data(6, 2);
    EXPECT_EQ(usart.read_status(8) & udre, 0) << "the buffer holds the second";
    usart.settle(200);
    ASSERT_EQ(sent.size(), 2u);
    EXPECT_EQ(sent[1].first - sent[0].first, 16u) << "standards BUS-13";
}

TEST_F(UsartUnit, IgnoresAWriteIntoAFullBuffer) {
    usart.write_data(0, 1);
    usart.write_data(2, 2);
    usart.write_data(4, 3);
    usart.settle(200);
    EXPECT_EQ(sent.size(), 2u);
    EXPECT_EQ(usart.overruns(), 1);
}

TEST_F(UsartUnit, RaisesItsEndFlagWheneverItRunsDry) {
    EXPECT_EQ(usart.read_status(0) & (txc | udre), udre);
    usart.write_data(0, 1);
    EXPECT_EQ(usart.read_status(10) & txc, 0);
    EXPECT_EQ(usart.read_status(30) & txc, txc);
    usart.write_data(40, 2);
    EXPECT_EQ(usart.read_status(42) & txc, txc)
        << "stale: nothing but a one written to it clears it";
    usart.write_status(44, txc);
    EXPECT_EQ(usart.read_status(46) & txc, 0);
    EXPECT_EQ(usart.read_status(80) & txc, txc);
}

TEST_F(UsartUnit, TakesLongerWithAHigherBaudNumber) {
    usart.write_baud(3);
    usart.write_data(0, 1);
    usart.write_data(2, 2);
    usart.settle(1000);
    ASSERT_EQ(sent.size(), 2u);
    EXPECT_EQ(sent[1].first - sent[0].first, 64u) << "clock / (2 (UBRR + 1)), data sheet";
}

}  // namespace
}  // namespace dialplate
