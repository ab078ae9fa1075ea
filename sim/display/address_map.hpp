// Where a column and a page land in the controller's memory under an address mode.
#pragma once

#include "sim/display/dcs.hpp"
#include "sim/layout/layout.hpp"

#include <cstdint>

namespace dialplate {

/// Size of a controller's memory in pixels, unturned; both at least 1.
struct MemorySize {
    int width = 1;
    int height = 1;
};

/// A pixel of the controller's memory, unturned: x is the physical column, y the physical page.
struct MemoryPixel {
    int x = 0;
    int y = 0;
    friend constexpr bool operator==(const MemoryPixel&, const MemoryPixel&) = default;
};

/// The eight ways of set_address_mode to walk through the memory. MX mirrors the physical column
/// and MY the physical page, whether or not MV exchanges the two.
/// Source: ST7735R data sheet V0.2 (2009-08-05), 9.11 "Memory data write/read direction"; the
/// table of the ILI9341 data sheet is the same (from memory).
struct AddressMap {
    int columns = 0;  ///< Columns go from 0 to columns - 1, ...
    int pages = 0;    ///< ... pages from 0 to pages - 1.
    // index = base + column * column_step + page * page_step; row-major, memory.width to a row.
    int base = 0;
    int column_step = 0;
    int page_step = 0;

    AddressMap() = default;
    AddressMap(std::uint8_t mode, MemorySize memory) : memory_(memory), mode_(mode) {
        const bool mx = (mode & dcs::mirror_columns) != 0;
        const bool my = (mode & dcs::mirror_pages) != 0;
        const bool mv = (mode & dcs::exchange) != 0;
        const int across = mx ? -1 : 1;
        const int down = my ? -memory.width : memory.width;
        base = (mx ? memory.width - 1 : 0) + (my ? (memory.height - 1) * memory.width : 0);
        columns = mv ? memory.height : memory.width;
        pages = mv ? memory.width : memory.height;
        column_step = mv ? down : across;
        page_step = mv ? across : down;
    }

    /// Index into the memory. @pre Column and page lie inside.
    [[nodiscard]] int index(int column, int page) const {
        return base + column * column_step + page * page_step;
    }

    /// The memory pixel under a column and page; outside the memory for those outside.
    [[nodiscard]] MemoryPixel memory_pixel(int column, int page) const {
        const bool mv = (mode_ & dcs::exchange) != 0;
        MemoryPixel at{mv ? page : column, mv ? column : page};
        if ((mode_ & dcs::mirror_columns) != 0) at.x = memory_.width - 1 - at.x;
        if ((mode_ & dcs::mirror_pages) != 0) at.y = memory_.height - 1 - at.y;
        return at;
    }

    /// The other way round: x is the column and y the page that reach a memory pixel.
    [[nodiscard]] MemoryPixel address_of(MemoryPixel at) const {
        if ((mode_ & dcs::mirror_columns) != 0) at.x = memory_.width - 1 - at.x;
        if ((mode_ & dcs::mirror_pages) != 0) at.y = memory_.height - 1 - at.y;
        return (mode_ & dcs::exchange) != 0 ? MemoryPixel{at.y, at.x} : at;
    }

private:
    MemorySize memory_{};
    std::uint8_t mode_ = 0;
};

}  // namespace dialplate
