#include "sim/image/picture_file.hpp"

#include <png.h>

namespace dialplate {

PictureFile read_picture(const std::string& path) {
    png_image png{};
    png.version = PNG_IMAGE_VERSION;
    if (png_image_begin_read_from_file(&png, path.c_str()) == 0) {
        return {std::nullopt, png.message};
    }
    png.format = PNG_FORMAT_RGBA;
    ColourPicture picture{static_cast<int>(png.width),
                          static_cast<int>(png.height),
                          std::vector<std::uint8_t>(PNG_IMAGE_SIZE(png))};
    if (png_image_finish_read(&png, nullptr, picture.rgba.data(), 0, nullptr) == 0) {
        png_image_free(&png);
        return {std::nullopt, png.message};
    }
    return {std::move(picture), {}};
}

}  // namespace dialplate
