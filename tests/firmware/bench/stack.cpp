// Fills DEPTH bytes of the stack below main; DEPTH 0 calls nothing.
#include "tests/firmware/bench/bench.hpp"

volatile uint8_t kept[40];

#if DEPTH > 0
__attribute__((noinline)) static void fill() {
    uint8_t deep[DEPTH];
    for (uint8_t& byte : deep) {
        *const_cast<volatile uint8_t*>(&byte) = 0;
    }
}
#endif

int main() {
    kept[0] = 1;
#if DEPTH > 0
    fill();
#endif
    mark(1);
    for (;;) {
    }
}
