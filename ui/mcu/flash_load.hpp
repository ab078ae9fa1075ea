// How assembly reads flash: by `lpm`, or by `ld` where flash is part of the address space.
#pragma once

#if defined(__AVR__) && __AVR_ARCH__ == 103
#define DIALPLATE_LOAD_FLASH "ld "
#else
#define DIALPLATE_LOAD_FLASH "lpm "
#endif
