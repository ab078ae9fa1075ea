#include "fonts/open_font.hpp"

#include "fonts/ink_box.hpp"

#include <SDL2/SDL_ttf.h>

#include <algorithm>

namespace dialplate::fonts {
namespace {

// SDL2_ttf counts its users, so others in the process may start and end it on their own.
class Engine {
public:
    Engine() : started_(TTF_Init() == 0) {}
    ~Engine() {
        if (started_) TTF_Quit();
    }
    Engine(const Engine&) = delete;
    Engine& operator=(const Engine&) = delete;
    [[nodiscard]] bool started() const { return started_; }

private:
    bool started_;
};

std::mutex& engine_mutex() {
    static std::mutex mutex;
    return mutex;
}

constexpr int most_strikes = 64;  // more than any strike font has; only bounds the search

// How much of a pixel is covered, 0 to 255, as the nearest of the four tones.
std::uint8_t tone_of(std::uint8_t covered) {
    constexpr int most = 255, steps = 3;
    return static_cast<std::uint8_t>((steps * covered + most / 2) / most);
}

Bitmap from_surface(const SDL_Surface& surface, bool tones) {
    Bitmap bitmap{surface.w, surface.h, {}, tones};
    bitmap.pixels.reserve(static_cast<std::size_t>(surface.w) *
                          static_cast<std::size_t>(surface.h));
    const auto* row = static_cast<const std::uint8_t*>(surface.pixels);
    for (int y = 0; y < surface.h; ++y, row += surface.pitch)
        for (int x = 0; x < surface.w; ++x)
            bitmap.pixels.push_back(tones ? tone_of(row[x]) : row[x] != 0 ? 1 : 0);
    return bitmap;
}

}  // namespace

OpenFont::OpenFont(const FontFile& file, const std::string& path, int size, bool smooth)
    : alone_(engine_mutex()), smooth_(smooth) {
    static const Engine engine;
    if (!engine.started()) {
        error_ = std::string("cannot start SDL2_ttf: ") + TTF_GetError();
        return;
    }
    if (file.traits.coloured && !file.traits.outlines) {
        error_ = "font \"" + path + "\" holds coloured pictures, not characters in one colour";
        return;
    }
    if (smooth && !file.traits.outlines) {
        error_ = "font \"" + path + "\" is drawn pixel by pixel; smoothing needs outlines";
        return;
    }
    SDL_RWops* stream = SDL_RWFromConstMem(file.bytes.data(), static_cast<int>(file.bytes.size()));
    // SDL2_ttf takes the number of a strike where it takes a size from others.
    if (stream != nullptr) font_ = TTF_OpenFontRW(stream, 1, file.traits.outlines ? size : 0);
    if (font_ == nullptr) {
        error_ = "\"" + path + "\" is not a font that can be drawn: " + TTF_GetError();
        return;
    }
    if (!file.traits.outlines && !select_strike(file, path, size)) return;
    TTF_SetFontHinting(font_, smooth ? TTF_HINTING_LIGHT : TTF_HINTING_MONO);
}

OpenFont::~OpenFont() {
    if (font_ != nullptr) TTF_CloseFont(font_);
}

bool OpenFont::select_strike(const FontFile& file, const std::string& path, int size) {
    std::string heights;
    for (int strike = 0, last = 0; strike < most_strikes; ++strike) {
        if (TTF_SetFontSize(font_, strike) != 0) break;
        const int height = TTF_FontHeight(font_);
        if (height == size || file.traits.pixel_size == size) return true;
        if (height == last) break;  // past the last strike it stays selected
        heights += (heights.empty() ? "" : ", ") + std::to_string(height);
        last = height;
    }
    error_ = "font \"" + path + "\" is drawn for a size of " + heights + " px, not " +
             std::to_string(size) + " px";
    return false;
}

bool OpenFont::has(char32_t code) const {
    const bool scalar = code != 0 && code <= 0x10FFFF && (code < 0xD800 || code > 0xDFFF);
    return scalar && TTF_GlyphIsProvided32(font_, code) != 0;
}

std::optional<Drawn> OpenFont::draw(char32_t code) const {
    // Drawn first and measured after: drawing leaves the metrics in the cache, measuring no bitmap.
    // Shaded, a pixel is the number of its shade, from 0 for the ground to 255.
    constexpr SDL_Color white{255, 255, 255, 255}, black{0, 0, 0, 255};
    SDL_Surface* surface = smooth_ ? TTF_RenderGlyph32_Shaded(font_, code, white, black)
                                   : TTF_RenderGlyph32_Solid(font_, code, white);
    int left = 0, right = 0, bottom = 0, top = 0, advance = 0;
    if (TTF_GlyphMetrics32(font_, code, &left, &right, &bottom, &top, &advance) != 0) {
        SDL_FreeSurface(surface);
        return std::nullopt;
    }
    Drawn drawn{.code = code, .advance = std::max(advance, 0), .left = 0, .top = 0, .ink = {}};
    if (surface == nullptr) return drawn;  // no width: not even a blank
    const Bitmap picture = from_surface(*surface, smooth_);
    SDL_FreeSurface(surface);
    const InkBox box = ink_box(picture);
    if (box.width > 0) {
        // The surface begins at the pen or left of it, and at the ascender or above it, whatever the
        // glyph needs.
        drawn.left = box.left - std::max(0, -left);
        drawn.top = box.top - std::max(TTF_FontAscent(font_), top);
        drawn.ink = cut(picture, box);
    }
    return drawn;
}

int OpenFont::blank_height() const {
    if (has(U'H')) {
        if (const auto letter = draw(U'H'); letter && letter->ink.height > 0)
            return letter->ink.height;
    }
    return std::max(1, TTF_FontAscent(font_));
}

}  // namespace dialplate::fonts
