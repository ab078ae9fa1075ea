#include "sim/commands/png.hpp"

#include <cassert>
#include <png.h>

namespace dialplate {

Rgb888 enlarged(const Rgb888& picture, int zoom) {
    assert(zoom >= 1);
    Rgb888 out(picture.width * zoom, picture.height * zoom, 0);
    for (int y = 0; y < out.height; ++y) {
        for (int x = 0; x < out.width; ++x) {
            out.at(x, y) = picture.at(x / zoom, y / zoom);
        }
    }
    return out;
}

std::vector<std::uint8_t> png_bytes(const Rgb888& picture) {
    std::vector<std::uint8_t> channels;
    channels.reserve(picture.pixels.size() * 3);
    for (const std::uint32_t pixel : picture.pixels) {
        channels.push_back(static_cast<std::uint8_t>(pixel >> 16 & 0xFF));
        channels.push_back(static_cast<std::uint8_t>(pixel >> 8 & 0xFF));
        channels.push_back(static_cast<std::uint8_t>(pixel & 0xFF));
    }
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    image.width = static_cast<png_uint_32>(picture.width);
    image.height = static_cast<png_uint_32>(picture.height);
    image.format = PNG_FORMAT_RGB;
    // Twice: once for the size, once for the bytes.
    png_alloc_size_t size = 0;
    if (png_image_write_to_memory(&image, nullptr, &size, 0, channels.data(), 0, nullptr) == 0) {
        return {};
    }
    std::vector<std::uint8_t> bytes(size);
    if (png_image_write_to_memory(&image, bytes.data(), &size, 0, channels.data(), 0, nullptr) ==
        0) {
        return {};
    }
    bytes.resize(size);
    return bytes;
}

}  // namespace dialplate
