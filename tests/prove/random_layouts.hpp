// Layout documents for proofs, of all that a layout can say: every item kind, faces of each kind and
// packing, palettes, turns, buses, controllers, both microcontrollers.
#pragma once

#include <cstdint>
#include <string>

namespace dialplate {

/// A document that the reader accepts, by construction. The same seed gives the same text on every
/// machine. Seeds go round the four buses, the four turns and the controllers, so that few cover them all.
/// The glass is small, 64 x 48 to 128 x 96 pixels: a proof's time is to go into variety.
std::string random_layout(std::uint32_t seed);

}  // namespace dialplate
