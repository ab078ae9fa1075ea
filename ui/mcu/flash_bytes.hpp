// Where the image lies on a microcontroller, for Rom (ui/rom.hpp): in flash that plain loads do not reach on
// the classic AVR, in flash that is part of the address space everywhere else.
//
// The address is a template argument, so that it costs no RAM and no register; the block is declared
// `extern const uint8_t name[]` and defined with DIALPLATE_IN_FLASH, which is what makes it reachable.
#pragma once

#include <stdint.h>

// avrxmega3 (tinyAVR 0 and up, megaAVR 0) maps its flash, and gcc's library headers need not know the part;
// so do the Cortex-M parts and whatever else is no AVR: there a constant is read by a plain load.
#if defined(__AVR__) && __AVR_ARCH__ != 103
#include <avr/pgmspace.h>

// Near reads reach 64 KiB, and no diagnostic comes when a sketch for an ATmega2560 has more constants than that
// and the image ends beyond: reads of its tail would silently go wrong. PROGMEM leaves the order to the linker;
// what is in `.progmem.gcc` comes right behind the vectors, in front of all PROGMEM (avr-ld's scripts, "data
// that needs to reside in the lower 64k of progmem"), and an image has fewer than 32 KiB.
#define DIALPLATE_IN_FLASH __attribute__((section(".progmem.gcc.dialplate")))
#else
#define DIALPLATE_IN_FLASH
#endif

namespace dialplate {

template <const uint8_t* bytes>
struct FlashBytes {
    /// For code in assembly, which reads flash by itself.
    static const uint8_t* address(uint16_t at) { return bytes + at; }
    static uint8_t u8(uint16_t at) {
#if defined(__AVR__) && __AVR_ARCH__ != 103
        return pgm_read_byte(bytes + at);
#else
        return bytes[at];
#endif
    }
};

}  // namespace dialplate
