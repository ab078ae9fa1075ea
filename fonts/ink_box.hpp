// Where the ink of a bitmap is. What lives in namespace fonts is of this folder alone.
#pragma once

#include "fonts/face.hpp"

namespace dialplate::fonts {

/// A rectangle of pixels, half-open: left <= x < left + width. No ink: all zero.
struct InkBox {
    int left = 0;
    int top = 0;
    int width = 0;
    int height = 0;
};

/// The smallest box that holds all ink of `bitmap`.
InkBox ink_box(const Bitmap& bitmap);

/// Runs of ink in the row that has most of them.
int most_strokes_in_a_row(const Bitmap& bitmap);

/// An all-ground bitmap.
Bitmap blank(int width, int height, bool tones = false);

/// What the eye takes for ink in a bitmap in tones: those nearer to it than to the ground. Others stay as they are.
Bitmap solid(Bitmap bitmap);

/// The pixels of `bitmap` inside `box`.
/// @pre The box lies inside the bitmap.
Bitmap cut(const Bitmap& bitmap, const InkBox& box);

/// Copies `part` into `whole` with its corner at (left, top).
/// @pre It lies inside.
void paste(Bitmap& whole, const Bitmap& part, int left, int top);

/// Whether a face of the image can hold it in this packing.
bool storable(const RasterFace& raster, Packing chosen, int enlarged);

/// Columns of a digit's cell: the widest. 0: the face has none.
int digit_advance(const RasterFace& raster);

}  // namespace dialplate::fonts
