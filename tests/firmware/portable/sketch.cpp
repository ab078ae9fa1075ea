// The emitted sketch itself, with the display driver that stands for the author's own, on a board that is made up:
// what its pins send is put together into bytes, as the display would, and goes into a checksum. Stands beside an
// emission; SKETCH is the name of its .ino file. Time stands still, so that only the first page is drawn. Prints
//
//     bus CRC BYTES stack BYTES
#include "tests/firmware/portable/checksum_text.hpp"
#include "tests/firmware/portable/crc32.hpp"
#include "tests/firmware/portable/outside.hpp"

#include "Arduino.h"

#include SKETCH

namespace {

constexpr uint8_t clock_pin = 13, data_pin = 11, select_pin = 10, reset_pin = 8, pins = 20;

bool levels[pins];
bool outputs[pins];
uint8_t shifted;
uint8_t bits;
Crc32 sent;

}  // namespace

void pinMode(uint8_t pin, uint8_t mode) {
    outputs[pin] = mode == OUTPUT;
}

void digitalWrite(uint8_t pin, uint8_t level) {
    const bool rises = level == HIGH && !levels[pin];
    levels[pin] = level == HIGH;
    // The display takes a bit when the clock rises, as long as it is selected and not held in reset.
    if (pin != clock_pin || !rises || !outputs[clock_pin] || !outputs[data_pin] ||
        levels[select_pin] || !levels[reset_pin]) {
        return;
    }
    shifted = static_cast<uint8_t>(shifted << 1 | levels[data_pin]);
    if (++bits == 8) {
        bits = 0;
        sent.add(shifted);
    }
}

void delay(unsigned long) {}

unsigned long millis() {
    return 0;
}

int main() {
    setup();
    // One piece each: far more than a page has.
    for (int n = 0; n < 5000; ++n) {
        loop();
    }
    say_checksum("bus ", sent);
    say(" stack ");
    say_number(stack_used(), 10);
    say("\n");
    return 0;
}
