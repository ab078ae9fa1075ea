#include "tests/firmware/portable/outside.hpp"

#include <stdio.h>

void say(const char* text) {
    fputs(text, stdout);
}

uint32_t stack_used() {
    return 0;
}
