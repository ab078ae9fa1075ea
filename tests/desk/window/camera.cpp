#include "tests/desk/window/camera.hpp"

#include <X11/Xlib.h>
#include <X11/Xutil.h>
#include <X11/extensions/XShm.h>
#include <cstddef>
#include <png.h>
#include <stdexcept>
#include <sys/shm.h>

namespace dialplate {

Colour Photograph::at(int x, int y) const {
    if (x < 0 || y < 0 || x >= width || y >= height) return 0;
    return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                  static_cast<std::size_t>(x)] &
           0xFFFFFFU;
}

bool Photograph::save(const std::string& file) const {
    std::vector<Colour> opaque = pixels;
    for (Colour& pixel : opaque)
        pixel |= 0xFF000000U;
    png_image picture{};
    picture.version = PNG_IMAGE_VERSION;
    picture.width = static_cast<png_uint_32>(width);
    picture.height = static_cast<png_uint_32>(height);
    picture.format = PNG_FORMAT_BGRA;
    picture.flags = PNG_IMAGE_FLAG_FAST;
    return png_image_write_to_file(&picture, file.c_str(), 0, opaque.data(), 0, nullptr) != 0;
}

struct Camera::Film {
    Display* connection = nullptr;
    XShmSegmentInfo memory{};
    XImage* image = nullptr;

    ~Film() {
        if (image != nullptr) {
            XShmDetach(connection, &memory);
            XDestroyImage(image);
        }
        if (memory.shmaddr != nullptr) shmdt(memory.shmaddr);
        if (connection != nullptr) XCloseDisplay(connection);
    }
};

Camera::Camera(const std::string& display) : film_(std::make_unique<Film>()) {
    Film& film = *film_;
    film.connection = XOpenDisplay(display.c_str());
    if (film.connection == nullptr) throw std::runtime_error("no X server at " + display);
    const int screen = DefaultScreen(film.connection);
    const auto width = static_cast<unsigned>(DisplayWidth(film.connection, screen));
    const auto height = static_cast<unsigned>(DisplayHeight(film.connection, screen));
    film.image = XShmCreateImage(film.connection,
                                 DefaultVisual(film.connection, screen),
                                 24,
                                 ZPixmap,
                                 nullptr,
                                 &film.memory,
                                 width,
                                 height);
    // Xvfb has a colour as we do: red above green above blue, in four bytes, and rows without gaps.
    if (film.image == nullptr || film.image->red_mask != 0xFF0000 ||
        film.image->bytes_per_line != static_cast<int>(sizeof(Colour) * width))
        throw std::runtime_error(display + " has not 24 bits a pixel in four bytes");
    film.memory.shmid = shmget(IPC_PRIVATE, sizeof(Colour) * width * height, IPC_CREAT | 0600);
    film.memory.shmaddr = static_cast<char*>(shmat(film.memory.shmid, nullptr, 0));
    film.image->data = film.memory.shmaddr;
    XShmAttach(film.connection, &film.memory);
    XSync(film.connection, False);
    shmctl(film.memory.shmid, IPC_RMID, nullptr);  // goes with the last of both
}

Camera::~Camera() = default;

Photograph Camera::take() const {
    XShmGetImage(
        film_->connection, DefaultRootWindow(film_->connection), film_->image, 0, 0, AllPlanes);
    const auto* const pixels = reinterpret_cast<const Colour*>(film_->image->data);
    const int width = film_->image->width, height = film_->image->height;
    return {width, height, {pixels, pixels + static_cast<std::ptrdiff_t>(width) * height}};
}

}  // namespace dialplate
