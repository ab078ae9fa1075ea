// The start of a megaAVR 0 with 48 KiB of mapped flash (ATmega4809), for which this compiler has neither start
// file nor device header: its vectors and what comes before main(). Linked to be weighed, never run.
//
// 40 vectors of two words, as that part has (data sheet, from memory).
#include "tests/firmware/portable/outside.hpp"

#include <stdint.h>

// It goes to the transmit register of USART0 (data sheet, peripherals, from memory), at no certain speed.
void say(const char* text) {
    volatile uint8_t& transmit = *reinterpret_cast<volatile uint8_t*>(0x0802);
    while (*text != 0) {
        transmit = static_cast<uint8_t>(*text++);
    }
}

uint32_t stack_used() {
    return 0;
}

asm(".section .vectors, \"ax\", @progbits\n"
    "    jmp begin\n"
    "    .rept 39\n"
    "    jmp begin\n"
    "    .endr\n"
    ".text\n");

extern "C" {

extern const uint8_t data_in_flash[];
extern uint8_t data_begin[], data_end[], zeroed_begin[], zeroed_end[];

__attribute__((naked, used, noreturn)) void begin() {
    asm volatile(
        "clr __zero_reg__\n"
        "out __SREG__, __zero_reg__\n"
        "ldi r28, lo8(stack_top)\n"
        "ldi r29, hi8(stack_top)\n"
        "out __SP_L__, r28\n"
        "out __SP_H__, r29\n"
        "call start\n"
        "call main\n"
        "0: rjmp 0b");
    __builtin_unreachable();
}

__attribute__((used)) void start() {
    const uint8_t* from = data_in_flash;
    for (volatile uint8_t* to = data_begin; to != data_end; ++to) {
        *to = *from++;
    }
    for (volatile uint8_t* to = zeroed_begin; to != zeroed_end; ++to) {
        *to = 0;
    }
    // Static objects make themselves: gcc's table of what makes them holds addresses in words.
    extern void (*const constructors_begin[])();
    extern void (*const constructors_end[])();
    for (void (*const* each)() = constructors_begin; each != constructors_end; ++each) {
        (*each)();
    }
}

}  // extern "C"
