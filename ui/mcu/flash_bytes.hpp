// Where the image lies on a microcontroller, for Rom (ui/rom.hpp): in flash that plain loads do not reach on
// the classic AVR, in flash that is part of the address space everywhere else.
//
// The address is a template argument, so that it costs no RAM and no register; the block is declared
// `extern const uint8_t name[]` and has to lie in the first 64 KiB of flash, as the linker places it.
#pragma once

#include <stdint.h>

// avrxmega3 (tinyAVR 0 and up, megaAVR 0) maps its flash, and gcc's library headers need not know the part.
#if defined(__AVR__) && __AVR_ARCH__ != 103
#include <avr/pgmspace.h>
#endif

namespace dialplate {

template <const uint8_t* bytes>
struct FlashBytes {
    static uint8_t u8(uint16_t at) {
#if defined(__AVR__) && __AVR_ARCH__ != 103
        return pgm_read_byte(bytes + at);
#else
        return bytes[at];
#endif
    }
};

}  // namespace dialplate
