// Where the hardware SPI and the USART come out.
// Source: ATmega328P and ATmega2560 data sheets, alternate functions of the ports (from memory; the
// simulated 328P agrees).
#pragma once

#include "ui/mcu/pin.hpp"

#include <avr/io.h>

namespace dialplate {

#if defined(__AVR_ATmega2560__)
using SpiClock = Pin<port::b, 1>;
using SpiData = Pin<port::b, 2>;  ///< MOSI.
using SpiMaster =
    Pin<port::b, 0>;  ///< SS: must not be an input that goes low, or the master gives up.
using UsartClock = Pin<port::e, 2>;  ///< XCK0.
using UsartData = Pin<port::e, 1>;   ///< TXD0: no serial console beside it.
#else
using SpiClock = Pin<port::b, 5>;
using SpiData = Pin<port::b, 3>;
using SpiMaster = Pin<port::b, 2>;
using UsartClock = Pin<port::d, 4>;
using UsartData = Pin<port::d, 1>;
#endif

}  // namespace dialplate
