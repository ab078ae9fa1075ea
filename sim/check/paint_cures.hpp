// What to do about a paint that does not stand out: give it another colour where nobody loses by that, else take
// another paint of the layout that does.
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/layout.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// The rest of a finding's sentence, and the change to the document if there is just one sensible way.
struct PaintCure {
    std::string words;  ///< Begins with a colon; empty: nothing helps.
    std::vector<Change> changes;
};

/// A paint that would have to be lighter or darker.
struct FaintPaint {
    const char* part = "ink";  ///< What the paint is of the item: "ink", "edge".
    PaintId paint = 0;
    PaintId against = 0;
    std::size_t palette = 0;              ///< In which it is faint.
    std::optional<std::uint32_t> colour;  ///< 0xRRGGBB that would do there; none: no colour does.
    double needed = 1.0;                  ///< Ratio.
    int decimals = 2;                     ///< With which ratios are told.
    /// How it stands out against `against` with the colours of a palette, 0xRRGGBB of RGB565 expanded.
    std::function<double(std::uint16_t paint, std::uint16_t against)> ratio;
};

class PaintCures {
public:
    /// @param layout  Must outlive this.
    explicit PaintCures(const Layout& layout);

    /// A colour for the paint itself if it keeps or raises the contrast of everything that meets it anywhere;
    /// else the paint most like it that reaches the ratio in every palette, measured.
    [[nodiscard]] PaintCure cure(const FaintPaint& faint) const;

    /// The same of a paint whose contrast as the WCAG has it is too low in a palette.
    [[nodiscard]] PaintCure cure_of_contrast(
        const char* part, PaintId paint, PaintId against, std::size_t palette, double needed) const;

private:
    /// Two paints that meet on the glass, or take turns there.
    struct Meeting {
        PaintId one = 0, other = 0;
        friend auto operator<=>(const Meeting&, const Meeting&) = default;
    };
    [[nodiscard]] bool nobody_loses(const FaintPaint& faint) const;
    [[nodiscard]] bool inherits(PaintId paint, std::size_t palette) const;
    [[nodiscard]] std::optional<std::string> other_paint(const FaintPaint& faint) const;

    const Layout& layout_;
    std::vector<Meeting> meetings_;
};

}  // namespace dialplate
