// The display that a test firmware is built for. From the command line: LINK (polled, timed, usart,
// parallel, split) and PANEL_..., the figures of the mounting.
#pragma once

#include "ui/mcu/display_bus.hpp"
#include "ui/mcu/parallel8.hpp"
#include "ui/mcu/spi_polled.hpp"
#include "ui/mcu/spi_timed.hpp"
#include "ui/mcu/usart_spi.hpp"

using DataOrCommand = dialplate::Pin<dialplate::port::b, 1>;
using Select = dialplate::Pin<dialplate::port::b, 0>;
using Write = dialplate::Pin<dialplate::port::b, 2>;
using Reset = dialplate::Pin<dialplate::port::b, 4>;

namespace links {
using polled = dialplate::SpiPolled<DataOrCommand, Select, Reset>;
using polled_by_four = dialplate::SpiPolled<DataOrCommand, Select, Reset, 4>;
using timed = dialplate::SpiTimed<DataOrCommand, Select, Reset>;
using usart = dialplate::UsartSpi<DataOrCommand, Select, Reset>;
using parallel = dialplate::Parallel8<dialplate::WholePort<dialplate::port::d>,
                                      Write,
                                      dialplate::NoPin,
                                      DataOrCommand,
                                      Select,
                                      Reset>;
using split =
    dialplate::Parallel8<dialplate::SplitPorts<dialplate::port::b, dialplate::port::d, 0x03>,
                         dialplate::Pin<dialplate::port::c, 1>,
                         dialplate::Pin<dialplate::port::c, 0>,
                         dialplate::Pin<dialplate::port::c, 2>,
                         dialplate::Pin<dialplate::port::c, 3>,
                         dialplate::Pin<dialplate::port::c, 4>>;
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
