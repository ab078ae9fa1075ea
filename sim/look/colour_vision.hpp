// The glass as somebody sees it who lacks one kind of cone.
#pragma once

#include "sim/colour/vision.hpp"
#include "sim/look/rgb888.hpp"

namespace dialplate {

/// The picture with the colours that such an eye tells apart.
/// Source: Machado, Oliveira, Fernandes 2009, severity 1.0, on linear RGB. The model is held to be weak for
/// tritan: that one is an indication only.
Rgb888 seen_with(Vision vision, const Rgb888& picture);

}  // namespace dialplate
