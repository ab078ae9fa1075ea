#include "sim/image/picture_file.hpp"

#include <png.h>
#include <vector>

namespace dialplate {

PictureFile read_picture(const std::string& path) {
    png_image png{};
    png.version = PNG_IMAGE_VERSION;
    if (png_image_begin_read_from_file(&png, path.c_str()) == 0) {
        return {std::nullopt, png.message};
    }
    png.format = PNG_FORMAT_RGB;
    const png_color white{255, 255, 255};
    std::vector<png_byte> rgb(PNG_IMAGE_SIZE(png));
    if (png_image_finish_read(&png, &white, rgb.data(), 0, nullptr) == 0) {
        png_image_free(&png);
        return {std::nullopt, png.message};
    }
    Bitmap picture{static_cast<int>(png.width), static_cast<int>(png.height), {}};
    picture.pixels.reserve(rgb.size() / 3);
    for (std::size_t i = 0; i + 2 < rgb.size(); i += 3) {
        const int luma_thousandths = 299 * rgb[i] + 587 * rgb[i + 1] + 114 * rgb[i + 2];
        picture.pixels.push_back(luma_thousandths < 127500 ? 1 : 0);
    }
    return {std::move(picture), {}};
}

}  // namespace dialplate
