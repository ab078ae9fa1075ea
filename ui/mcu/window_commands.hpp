// The commands that open a window: columns, pages, then pixels (standards BUS-04).
#pragma once

#include "ui/mcu/display_command.hpp"

#include <stdint.h>

namespace dialplate {

/// Columns or pages of the controller's memory, both included.
struct MemoryRange {
    uint16_t first, last;
};

template <class Link>
__attribute__((noinline)) void set_range(uint8_t command, MemoryRange range) {
    Link::command(command);
    Link::parameter(static_cast<uint8_t>(range.first >> 8));
    Link::parameter(static_cast<uint8_t>(range.first));
    Link::parameter(static_cast<uint8_t>(range.last >> 8));
    Link::parameter(static_cast<uint8_t>(range.last));
}

/// For links that send byte by byte.
template <class Link>
void window_by_parameters(MemoryRange columns, MemoryRange pages) {
    set_range<Link>(display_command::set_column_address, columns);
    set_range<Link>(display_command::set_page_address, pages);
    Link::command(display_command::write_memory_start);
}

}  // namespace dialplate
