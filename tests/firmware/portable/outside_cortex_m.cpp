// A Cortex-M without a library: vectors, start, semihosting, and the three functions that gcc calls by itself.
//
// Modelled on: ARMv6-M Architecture Reference Manual, "The vector table" and "Reset behavior" (the first word
// is the stack pointer, the second where to begin, bit 0 set for Thumb), and Arm's "Semihosting for AArch32 and
// AArch64": BKPT 0xAB, operation in r0, parameter in r1. Both from memory; qemu agrees.
#include "tests/firmware/portable/outside.hpp"

#include <stddef.h>
#include <stdint.h>

int main();

// From cortex_m.ld.
extern "C" {
extern uint32_t data_in_flash[], data_begin[], data_end[], zeroed_begin[], zeroed_end[],
    stack_top[];
using Constructor = void (*)();
extern const Constructor constructors_begin[], constructors_end[];
}

namespace {

constexpr uint32_t unused_stack = 0x5AC0FFEE;

constexpr int write_text = 0x04, leave = 0x18;
constexpr uintptr_t well = 0x20026, badly = 0x20023;  // ApplicationExit, RunTimeErrorUnknown

void ask_host(int operation, uintptr_t parameter) {
    register int r0 asm("r0") = operation;
    register uintptr_t r1 asm("r1") = parameter;
    asm volatile("bkpt 0xAB" : "+r"(r0) : "r"(r1) : "memory");
}

[[noreturn]] void end(uintptr_t how) {
    for (;;) {
        ask_host(leave, how);
    }
}

}  // namespace

void say(const char* text) {
    ask_host(write_text, reinterpret_cast<uintptr_t>(text));
}

uint32_t stack_used() {
    const volatile uint32_t* at = zeroed_end;
    while (*at == unused_stack) {
        ++at;
    }
    return static_cast<uint32_t>(reinterpret_cast<uintptr_t>(stack_top) -
                                 reinterpret_cast<uintptr_t>(at));
}

extern "C" {

[[noreturn]] void begin() {
    const uint32_t* from = data_in_flash;
    for (volatile uint32_t* to = data_begin; to != data_end; ++to) {
        *to = *from++;
    }
    for (volatile uint32_t* to = zeroed_begin; to != zeroed_end; ++to) {
        *to = 0;
    }
    // Paints all that is free below this function's own frame.
    volatile uint32_t* frame = nullptr;
    asm volatile("mov %0, sp" : "=r"(frame));
    for (volatile uint32_t* to = zeroed_end; to < frame; ++to) {
        *to = unused_stack;
    }
    for (const Constructor* each = constructors_begin; each != constructors_end; ++each) {
        (*each)();
    }
    main();
    end(well);
}

[[noreturn]] void fault() {
    say("fault\n");
    end(badly);
}

// gcc calls these by name even in a program without a library.
void* memcpy(void* to, const void* from, size_t bytes) {
    volatile char* const out = static_cast<char*>(to);
    for (size_t i = 0; i < bytes; ++i) {
        out[i] = static_cast<const char*>(from)[i];
    }
    return to;
}
void* memset(void* to, int byte, size_t bytes) {
    volatile char* const out = static_cast<char*>(to);
    for (size_t i = 0; i < bytes; ++i) {
        out[i] = static_cast<char>(byte);
    }
    return to;
}

using Vector = void (*)();
struct Vectors {
    uint32_t* stack;
    Vector reset;
    Vector faults[14];  // NMI, hard fault and on: none of them is expected
};
__attribute__((section(".vectors"), used)) extern const Vectors vectors = {stack_top,
                                                                           begin,
                                                                           {fault,
                                                                            fault,
                                                                            fault,
                                                                            fault,
                                                                            fault,
                                                                            fault,
                                                                            fault,
                                                                            fault,
                                                                            fault,
                                                                            fault,
                                                                            fault,
                                                                            fault,
                                                                            fault,
                                                                            fault}};
}
