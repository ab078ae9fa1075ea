// The emitted code under a play with a display that takes nothing: what the engine works besides the bus. Stands
// beside layout.hpp and image.cpp of an emission. On an AVR the simulator takes the cycles between the two marks in
// GPIOR0 and gives the orders through GPIOR1 (sim/prove/board.hpp). Elsewhere the orders stand in orders.cpp, and
// prints
//
//     play TICKS yardstick TICKS
//
// ticks of 40 instructions: timer 0 of qemu's mps2-an385 runs at 25 MHz, and under `-icount shift=0` an instruction
// takes a nanosecond. The yardstick is a loop of two million instructions.
#include "tests/firmware/portable/play.hpp"

#include "layout.hpp"
#include <stdint.h>

namespace {

struct NoBus {
    __attribute__((noinline)) static void window(uint16_t x, uint16_t y, uint16_t w, uint16_t h) {
        asm volatile("" : : "r"(x), "r"(y), "r"(w), "r"(h));
    }
    __attribute__((noinline)) static void push(uint16_t colour, uint16_t count) {
        asm volatile("" : : "r"(colour), "r"(count));
    }
};

struct Unheard {
    void operator()(const dialplate::Event&) const {}
};

uint8_t memory[layout::memory_bytes];
layout::Screen<NoBus> screen(NoBus{}, layout::image(), memory);

template <class Next>
void perform(Next next) {
    Unheard heard;
    play::perform<layout::Screen<NoBus>, dialplate::Point, dialplate::Event>(screen, next, heard);
}

}  // namespace

#ifdef __AVR__
#include <avr/io.h>

int main() {
    GPIOR0 = 1;
    perform([]() -> uint8_t { return GPIOR1; });
    GPIOR0 = 2;
    for (;;) {
    }
}
#else
#include "tests/firmware/portable/checksum_text.hpp"

extern const uint8_t orders[];

namespace {

/// Of the timer that counts down. Source: Arm, "Cortex-M System Design Kit Technical Reference Manual", APB timer;
/// its place by "Application Note AN385", both from memory; the yardstick would tell.
struct Timer {
    volatile uint32_t control, value, reload;
};
Timer& timer = *reinterpret_cast<Timer*>(0x40000000);

uint32_t ticks() {
    return 0xFFFFFFFF - timer.value;
}

}  // namespace

int main() {
    timer.reload = 0xFFFFFFFF;
    timer.value = 0xFFFFFFFF;
    timer.control = 1;
    const uint32_t begun = ticks();
    const uint8_t* at = orders;
    perform([&at] { return *at++; });
    const uint32_t ended = ticks();
    uint32_t left = 1000000;
    asm volatile(".syntax unified\n0: subs %0, #1\nbne 0b" : "+l"(left) : : "cc");
    const uint32_t measured = ticks();
    say("play ");
    say_number(ended - begun, 10);
    say(" yardstick ");
    say_number(measured - ended, 10);
    say("\n");
    return 0;
}
#endif
