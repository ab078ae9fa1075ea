#include "sim/check/flashing_pixels.hpp"

#include "sim/check/slack.hpp"
#include "sim/colour/colour_space.hpp"
#include "sim/colour/linear_light.hpp"
#include "sim/layout/colour.hpp"
#include "sim/prototype/prototype.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace dialplate {

namespace {

constexpr double least_change = 0.1;         // of relative luminance, SAF-10
constexpr double bright_enough = 0.8;        // the darker state at or above it: no flash, SAF-10
constexpr double saturated_red = 0.8;        // R / (R + G + B), SAF-12
constexpr double least_colour_change = 0.2;  // in u'v', SAF-12
bool is_red(const LinearRgb& light) {
    const double sum = light.red + light.green + light.blue;
    return sum > 0.0 && light.red / sum >= saturated_red - slack;
}

using Glass = std::vector<std::uint16_t>;
using Flashes = std::vector<Flash>;

/// Flashes that flash between two pictures. Few pairs of colours meet, mostly in runs.
Flashes compared(const Glass& one, const Glass& other) {
    Flashes pixels(one.size(), Flash::none);
    std::uint16_t a = 0, b = 0;
    Flash of_pair = Flash::none;
    for (std::size_t i = 0; i < one.size(); ++i) {
        if (one[i] == other[i]) continue;
        if (one[i] != a || other[i] != b) {
            a = one[i];
            b = other[i];
            of_pair = flash_between(a, b);
        }
        pixels[i] = of_pair;
    }
    return pixels;
}

std::int64_t count_of(const Flashes& pixels) {
    return std::count_if(
        pixels.begin(), pixels.end(), [](Flash flash) { return flash != Flash::none; });
}

}  // namespace

Flash flash_between(std::uint16_t rgb565, std::uint16_t other) {
    const LinearRgb a = light_of(expand_rgb565(rgb565)), b = light_of(expand_rgb565(other));
    if ((is_red(a) || is_red(b)) && apart(chromaticity(a), chromaticity(b)) > least_colour_change)
        return Flash::red;
    const double la = relative_luminance(a), lb = relative_luminance(b);
    const bool general =
        std::abs(la - lb) >= least_change - slack && std::min(la, lb) < bright_enough;
    return general ? Flash::general : Flash::none;
}

/// The running prototype, and the worst of the ways that it was shown.
struct FlashingPixels::Stage {
    const Layout& layout;
    Prototype prototype;
    int page = 0;
    Flashes worst{};
    std::int64_t most = 0;

    Stage(const Layout& of, const BuiltImage& image) : layout(of), prototype(of, image) {}

    [[nodiscard]] int palettes() const {
        return static_cast<int>(std::max<std::size_t>(1, layout.palettes.size()));
    }
    Glass drawn() {
        prototype.settle();
        return prototype.glass();
    }
    void keep(Flashes pixels) {
        const std::int64_t count = count_of(pixels);
        if (count <= most) return;
        most = count;
        worst = std::move(pixels);
    }
    void between(ValueId value, std::int64_t from, std::int64_t to) {
        if (from == to) return;
        prototype.set(value, static_cast<std::int32_t>(from));
        const Glass before = drawn();
        prototype.set(value, static_cast<std::int32_t>(to));
        keep(compared(before, drawn()));
    }
    void step_dial(ValueId id, const Value& value) {
        prototype.set(id, value.start);
        prototype.turn(value.start < value.max ? 1 : -1);
        const std::int64_t step =
            std::max<std::int64_t>(1, std::abs(std::int64_t{prototype.get(id)} - value.start));
        between(id, value.start, prototype.get(id));
        std::int64_t carry = 0;
        for (std::int64_t power = 10; power <= value.max; power *= 10)
            if (power - step >= value.min && power - step < power) carry = power;
        if (carry != 0) between(id, carry - step, carry);
    }
    void swing(ValueId id) {
        const Value& value = layout.values.at(static_cast<std::size_t>(id));
        if (value.type == ValueType::choice || value.type == ValueType::flag) {
            for (std::int64_t at = value.min; at <= value.max; ++at)
                between(id, at == value.min ? value.max : at - 1, at);
        } else if (value.role == Role::frequency) {
            step_dial(id, value);
        } else {
            between(id, value.min, value.max);
        }
        prototype.set(id, value.start);
    }
    void forget() {
        worst.clear();
        most = 0;
    }
    void back_to_page() {
        prototype.use_palette(0);
        prototype.show_page(page);
    }
};

FlashingPixels::FlashingPixels(const Layout& layout, const BuiltImage& image)
    : stage_(std::make_unique<Stage>(layout, image)) {}
FlashingPixels::~FlashingPixels() = default;

void FlashingPixels::begin(int page) {
    stage_->page = page;
    const auto size = static_cast<std::size_t>(stage_->layout.glass_width()) *
                      static_cast<std::size_t>(stage_->layout.glass_height());
    pixels_.assign(size, Flash::none);
}

void FlashingPixels::add_value(ValueId value) {
    Stage& stage = *stage_;
    stage.forget();
    for (int palette = 0; palette < stage.palettes(); ++palette) {
        stage.prototype.use_palette(palette);
        stage.prototype.show_page(stage.page);
        stage.swing(value);
    }
    add_worst();
}

void FlashingPixels::add_turn_to(int page) {
    Stage& stage = *stage_;
    stage.forget();
    for (int palette = 0; palette < stage.palettes(); ++palette) {
        stage.prototype.use_palette(palette);
        stage.prototype.show_page(stage.page);
        const Glass here = stage.drawn();
        stage.prototype.show_page(page);
        stage.keep(compared(here, stage.drawn()));
    }
    add_worst();
}

void FlashingPixels::add_palettes() {
    Stage& stage = *stage_;
    stage.forget();
    stage.back_to_page();
    const Glass first = stage.drawn();
    for (int palette = 1; palette < stage.palettes(); ++palette) {
        stage.prototype.use_palette(palette);
        stage.keep(compared(first, stage.drawn()));
    }
    add_worst();
}

void FlashingPixels::add_worst() {
    stage_->back_to_page();
    for (std::size_t i = 0; i < stage_->worst.size(); ++i)
        pixels_[i] = std::max(pixels_[i], stage_->worst[i]);
}

std::int64_t FlashingPixels::count() const {
    return count_of(pixels_);
}

}  // namespace dialplate
