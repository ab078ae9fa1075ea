// The engine's long division by ten, against the processor's.
#include "ui/rom.hpp"

#include <gtest/gtest.h>

#include <cstdint>
#include <initializer_list>
#include <random>

namespace dialplate {
namespace {

::testing::AssertionResult is_divided(std::uint32_t number) {
    std::uint32_t rest = number;
    const int digit = take_digit(rest);
    if (rest == number / 10 && digit == static_cast<int>(number % 10)) {
        return ::testing::AssertionSuccess();
    }
    return ::testing::AssertionFailure() << number << " became " << rest << " and " << digit;
}

TEST(TakeDigit, AgreesWithDivisionAroundEveryPlaceOfEveryByte) {
    for (std::uint32_t number = 0; number < 0x20000; ++number) {
        ASSERT_TRUE(is_divided(number));
    }
    // Every pair of bytes that follow each other, at each place.
    for (std::uint32_t pair = 0; pair <= 0xFFFF; ++pair) {
        for (const int shift : {8, 16}) {
            ASSERT_TRUE(is_divided(pair << shift));
            ASSERT_TRUE(is_divided((pair << shift) - 1));
        }
    }
}

TEST(TakeDigit, AgreesWithDivisionOfLargeNumbers) {
    constexpr std::uint64_t largest = 0xFFFFFFFF;
    for (std::uint64_t power = 1; power <= largest; power *= 10) {
        for (std::uint64_t number = power; number < 10 * power && number <= largest;
             number += power) {
            ASSERT_TRUE(is_divided(static_cast<std::uint32_t>(number)));
            ASSERT_TRUE(is_divided(static_cast<std::uint32_t>(number - 1)));
        }
    }
    std::mt19937 random(10);
    for (int i = 0; i < 200'000; ++i) {
        ASSERT_TRUE(is_divided(static_cast<std::uint32_t>(random())));
    }
    ASSERT_TRUE(is_divided(static_cast<std::uint32_t>(largest)));
}

}  // namespace
}  // namespace dialplate
