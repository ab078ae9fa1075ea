// The display that a test firmware is built for. From the command line: LINK (polled, timed, usart,
// parallel, split) and PANEL_..., the figures of the mounting.
#pragma once

#include "ui/mcu/display_bus.hpp"
#include "ui/mcu/parallel8.hpp"
#include "ui/mcu/spi_polled.hpp"
#include "ui/mcu/spi_timed.hpp"
#include "ui/mcu/usart_spi.hpp"

namespace links {
using dialplate::NoPin;
using dialplate::Pin;
namespace port = dialplate::port;

#if defined(__AVR_ATmega2560__)
// Lines on ports beyond the reach of SBI and OUT as well.
using DataOrCommand = Pin<port::h, 5>;
using Select = Pin<port::h, 6>;
using Write = Pin<port::g, 0>;
using Reset = Pin<port::k, 4>;
using Data = dialplate::WholePort<port::l>;
#else
using DataOrCommand = Pin<port::b, 1>;
using Select = Pin<port::b, 0>;
using Write = Pin<port::b, 2>;
using Reset = Pin<port::b, 4>;
using Data = dialplate::WholePort<port::d>;
#endif

using polled = dialplate::SpiPolled<DataOrCommand, Select, Reset>;
using polled_by_four = dialplate::SpiPolled<DataOrCommand, Select, Reset, 4>;
using timed = dialplate::SpiTimed<DataOrCommand, Select, Reset>;
using usart = dialplate::UsartSpi<DataOrCommand, Select, Reset>;
// The larger part's usual wiring: every line within reach of OUT.
using whole_port = dialplate::Parallel8<dialplate::WholePort<dialplate::port::a>,
                                        Pin<port::c, 0>,
                                        Pin<port::c, 1>,
                                        Pin<port::c, 2>,
                                        Pin<port::c, 3>,
                                        Pin<port::c, 4>>;
using parallel = dialplate::Parallel8<Data, Write, NoPin, DataOrCommand, Select, Reset>;
// Two ports share the data lines, all else is on a third.
using split = dialplate::Parallel8<dialplate::SplitPorts<port::b, port::d, 0x03>,
                                   Pin<port::c, 1>,
                                   Pin<port::c, 0>,
                                   Pin<port::c, 2>,
                                   Pin<port::c, 3>,
                                   Pin<port::c, 4>>;
}  // namespace links

#if !defined(LINK)
#define LINK polled
#endif
#if !defined(PANEL_CONTROLLER)
#define PANEL_CONTROLLER Ili9341
#endif
#if !defined(PANEL_ADDRESS_MODE)
#define PANEL_ADDRESS_MODE 0x28
#endif
#if !defined(PANEL_COLUMN_OFFSET)
#define PANEL_COLUMN_OFFSET 0
#endif
#if !defined(PANEL_PAGE_OFFSET)
#define PANEL_PAGE_OFFSET 0
#endif
#if !defined(PANEL_BYTES)
#define PANEL_BYTES 2
#endif
#if !defined(PANEL_INVERTED)
#define PANEL_INVERTED false
#endif

struct Panel {
    using Controller = dialplate::PANEL_CONTROLLER;
    static constexpr uint8_t address_mode = PANEL_ADDRESS_MODE;
    static constexpr uint16_t column_offset = PANEL_COLUMN_OFFSET;
    static constexpr uint16_t page_offset = PANEL_PAGE_OFFSET;
    static constexpr uint8_t bytes_per_pixel = PANEL_BYTES;
    static constexpr bool inverted = PANEL_INVERTED;
};

using Bus = dialplate::DisplayBus<links::LINK, Panel>;
