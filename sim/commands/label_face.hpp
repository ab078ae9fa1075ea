// The small face for words in pictures.
#pragma once

#include "fonts/face.hpp"

namespace dialplate {

/// The project's own face of 9 pixels with the characters of ASCII, or why it cannot be had.
FaceResult load_label_face();

}  // namespace dialplate
