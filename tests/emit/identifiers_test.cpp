#include "sim/emit/identifiers.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace dialplate {
namespace {

TEST(Identifiers, TakeTheWordsOfAText) {
    struct Row {
        const char* text;
        const char* words;
        const char* why;
    };
    const Row rows[] = {
        {"frequency", "frequency", "already one"},
        {"Band Up", "band_up", "capitals belong to the headers of the microcontroller"},
        {"PB0", "pb0", "a macro of avr-libc"},
        {"40 m", "40_m", "a digit in front is the caller's business"},
        {"2.4 kHz", "2_4_khz", "a point separates"},
        {"-10 dB", "minus_10_db", "a minus before a number is no hyphen"},
        {"\xE2\x88\x92"
         "10 dB",
         "minus_10_db",
         "U+2212 is the minus of typographers"},
        {"key-3", "key_3", "a hyphen inside is none"},
        {"-", "minus", "a key that steps down"},
        {"+", "plus", "a key that steps up"},
        {"+20", "plus_20", "sign and number"},
        {"<<", "left_left", "signs repeat"},
        {"\xE2\x96\xB2", "up", "U+25B2, a triangle that points up"},
        {"50 %", "50_percent", "sign at the end"},
        {"Gr\xC3\xB6\xC3\x9F"
         "e",
         "grosse",
         "U+00F6 and U+00DF"},
        {"\xC5\x81\xC3\xB3"
         "d\xC5\xBA",
         "lodz",
         "U+0141, U+00F3, U+017A"},
        {"\xC2\xB5V", "uv", "U+00B5, micro"},
        {"AM\nwide", "am_wide", "lines of a key"},
        {"__a__b__", "a_b", "two underscores in a row are the compiler's"},
        {"\xE6\x97\xA5\xE6\x9C\xAC", "", "no letter that C++14 compilers of the AVR take"},
        {"???", "", "signs without a word"},
        {"", "", "nothing"},
        {"a\xFF\xC3", "a", "bytes that are no UTF-8 have no words"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.why);
        EXPECT_EQ(words_of(row.text), row.words) << row.text;
    }
}

TEST(Identifiers, AreValidAndUniqueInTheirScope) {
    struct Row {
        const char* words;
        const char* name;
        const char* why;
    };
    // One scope, in this order.
    const Row rows[] = {
        {"band", "band", "free"},
        {"band", "band_2", "taken"},
        {"band", "band_3", "taken twice"},
        {"band_2", "band_2_2", "its own name was given away"},
        {"switch", "switch_", "a word of the language"},
        {"switch", "switch_2", "never two underscores in a row"},
        {"co_await", "co_await_", "a word of C++20"},
        {"xor", "xor_", "an operator's name"},
        {"stdin", "stdin_", "a macro of avr-libc in lower case"},
        {"40_m", "key_40_m", "starts with a digit"},
        {"", "key", "no word at all"},
        {"", "key_2", "no word at all, again"},
    };
    Identifiers scope;
    for (const Row& row : rows) {
        SCOPED_TRACE(row.why);
        EXPECT_EQ(scope.add(row.words, "key"), row.name);
    }
}

}  // namespace
}  // namespace dialplate
