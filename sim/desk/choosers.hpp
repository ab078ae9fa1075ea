// Lists to choose from that show what each choice would mean: contrast of a paint, flash of a face, measures of a
// part.
#pragma once

#include "sim/desk/side_parts.hpp"

#include <optional>
#include <string>

namespace dialplate {

/// What was taken from a list.
struct Picked {
    enum class What {
        value,        ///< JSON to stand in the member's place.
        another,      ///< A new thing, like the one of this name.
        written_out,  ///< The figures of a part, as JSON, in its name's place.
    };
    What what = What::value;
    std::string value;
};

/// A list for a member that names something, or a colour. The width is what SetNextItemWidth said.
/// @return What was taken; nothing most of the time.
std::optional<Picked> choose(SideFrame& side,
                             const std::string& pointer,
                             const std::string& name,
                             const Shape& shape,
                             const Node& value);

/// The parts of such lists.
namespace chooser {

std::optional<Picked> paint(SideFrame& side, const std::string& pointer, const std::string& now);
std::optional<Picked> colour(SideFrame& side, const std::string& now);
/// Faces by name, packings and sizes, with the flash that each would take.
std::optional<Picked> face(SideFrame& side, const std::string& pointer, const std::string& now);
std::optional<Picked> packing(SideFrame& side,
                              const std::string& pointer,
                              const std::vector<std::string>& choices,
                              const std::string& now);
std::optional<Picked> size(SideFrame& side,
                           const std::string& pointer,
                           const Shape& shape,
                           int now);
/// Display modules and microcontrollers.
std::optional<Picked> part(SideFrame& side, const std::string& pointer, const std::string& now);

/// One line of an open list: words, and a figure at its right edge. @return Whether it was taken.
bool line(const SideFrame& side,
          const std::string& words,
          bool chosen,
          const std::string& figure,
          Colour colour);

}  // namespace chooser

/// A paint as the display shows it.
[[nodiscard]] Colour on_screen(const Paint& paint);
[[nodiscard]] const Paint* paint_named(const Layout& layout, const std::string& name);

/// Lines that say how a paint stands out from the others that it is seen against.
void draw_contrasts(SideFrame& side, const Paint& paint);

}  // namespace dialplate
