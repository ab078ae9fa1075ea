// The ways of looking at the glass that a picture may ask for, from the command line to the picture.
#pragma once

#include "fonts/face.hpp"
#include "sim/layout/layout.hpp"
#include "sim/look/rgb888.hpp"

#include <CLI/CLI.hpp>
#include <optional>
#include <string>

namespace dialplate {

/// What was asked for.
struct ViewWish {
    std::optional<double> lux;
    std::string vision;
    std::optional<double> eye_mm;
    std::optional<double> acuity;
    bool bezel = false;
    bool finger = false;

    /// Whether words are written into the picture.
    [[nodiscard]] bool needs_words() const { return finger || (eye_mm && !acuity); }
};

/// Adds --lux, --vision, --eye, --acuity, --bezel and --finger.
void add_view_options(CLI::App& command, ViewWish& wish);

/// The views that were asked for, one after the other: the room's light, the colours told apart, the eye's
/// blur (with both acuities: two pictures side by side, named below), and on top of it what panel and finger
/// are about.
/// @param picture  The glass, each pixel a square of `scale` x `scale`.
/// @param labels   Face for words; null when `needs_words` is false.
Rgb888 viewed(Rgb888 picture,
              int scale,
              const Layout& layout,
              int page,
              const ViewWish& wish,
              const RasterFace* labels);

}  // namespace dialplate
