// The views of a glass of 320x240, as the window uses them at every frame.
#include "sim/layout/reader.hpp"
#include "sim/look/colour_vision.hpp"
#include "sim/look/eye.hpp"
#include "sim/look/finger.hpp"
#include "sim/look/front_panel.hpp"
#include "sim/look/room_light.hpp"

#include <benchmark/benchmark.h>

namespace {

using namespace dialplate;

const Layout& example() {
    static const Layout layout = *load_layout(DIALPLATE_TREE "/layouts/coast-listener.json").layout;
    return layout;
}

/// Every pixel another colour than its neighbour: nothing can be kept from one to the next.
Rgb888 busy_glass() {
    Rgb888 picture(320, 240, 0);
    std::uint32_t state = 1;
    for (std::uint32_t& pixel : picture.pixels) {
        state = state * 1664525u + 1013904223u;
        pixel = state >> 8;
    }
    return picture;
}

void eye(benchmark::State& state) {
    const Rgb888 glass = busy_glass();
    const Eye seen{.acuity = 0.5, .distance = Millimetres{static_cast<double>(state.range(0))}};
    const PixelSize pixel{.across = Millimetres{0.18}, .down = Millimetres{0.18}};
    for (auto _ : state)
        benchmark::DoNotOptimize(seen_by(seen, glass, pixel));
}

void vision(benchmark::State& state) {
    const Rgb888 glass = busy_glass();
    for (auto _ : state)
        benchmark::DoNotOptimize(seen_with(Vision::deutan, glass));
}

void room(benchmark::State& state) {
    const Rgb888 glass = busy_glass();
    for (auto _ : state)
        benchmark::DoNotOptimize(in_room_light(glass, {.reflected = 50.0}));
}

void finger(benchmark::State& state) {
    const Rgb888 glass = busy_glass();
    for (auto _ : state)
        benchmark::DoNotOptimize(with_finger({glass, 1}, example(), 0, {}));
}

void bezel(benchmark::State& state) {
    const Rgb888 glass = busy_glass();
    for (auto _ : state)
        benchmark::DoNotOptimize(behind_panel({glass, 1}, example(), 0));
}

}  // namespace

BENCHMARK(eye)->Arg(400)->Arg(1000)->Unit(benchmark::kMillisecond);
BENCHMARK(vision)->Unit(benchmark::kMillisecond);
BENCHMARK(room)->Unit(benchmark::kMillisecond);
BENCHMARK(finger)->Unit(benchmark::kMillisecond);
BENCHMARK(bezel)->Unit(benchmark::kMillisecond);
