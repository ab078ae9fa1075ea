// Which pixels of a page flash when something on it changes to and fro: compared on the glass, as the engine
// draws it, so that digits, inverted cells, bars in blocks and pictures count with just the pixels that change.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"

#include <cstdint>
#include <memory>
#include <vector>

namespace dialplate {

/// What a pixel does that goes to and fro between two colours; the worse the greater.
enum class Flash : std::uint8_t { none, general, red };

/// Between two colours as the display holds them.
/// Source: WCAG 2.2, general flash and red flash (SAF-10, SAF-12).
Flash flash_between(std::uint16_t rgb565, std::uint16_t other);

/// A layout that is drawn to see what flashes.
class FlashingPixels {
public:
    /// @pre `image` was made from `layout` without errors.
    FlashingPixels(const Layout& layout, const BuiltImage& image);
    ~FlashingPixels();

    /// Begins anew on a page: nothing flashes.
    void begin(int page);
    /// A value goes to and fro: a choice or flag between neighbours, the dial by one step or through a carry, any
    /// other number from end to end. Of these ways, in all palettes, the one in which most pixels flash is added.
    void add_value(ValueId value);
    /// The page and another one take turns.
    void add_turn_to(int page);
    /// The palettes take turns.
    void add_palettes();

    /// By pixel of the glass, row by row: the worst that was added.
    [[nodiscard]] const std::vector<Flash>& pixels() const { return pixels_; }
    /// So many flash.
    [[nodiscard]] std::int64_t count() const;

private:
    struct Stage;
    void add_worst();

    std::unique_ptr<Stage> stage_;
    std::vector<Flash> pixels_;
};

}  // namespace dialplate
