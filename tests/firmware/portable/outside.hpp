// What the firmware needs of the machine it runs on, written for each: outside_pc.cpp,
// outside_cortex_m.cpp, outside_avr_mapped.cpp.
#pragma once

#include <stdint.h>

/// Prints a text.
void say(const char* text);

/// Bytes of stack that were used since the start; 0 where nobody watches.
uint32_t stack_used();
