// From font files to packed faces: what a layout pays before anything is drawn.
#include "fonts/face.hpp"

#include <benchmark/benchmark.h>
#include <string>

namespace dialplate {
namespace {

const std::string sans = "/usr/share/fonts/truetype/dejavu/DejaVuSans-Bold.ttf";

std::u32string ascii() {
    std::u32string all;
    for (char32_t code = 32; code < 127; ++code)
        all += code;
    return all;
}

FaceRequest legend(int size) {
    return {.file = sans, .size = size, .characters = ascii()};
}

FaceRequest readout(int size) {
    return {.file = sans, .size = size, .characters = U"0123456789. -", .even_digits = true};
}

void rasterise_a_legend(benchmark::State& state) {
    for (auto _ : state)
        benchmark::DoNotOptimize(rasterise(legend(static_cast<int>(state.range(0)))));
}
BENCHMARK(rasterise_a_legend)->Arg(9)->Arg(14)->Arg(20)->Unit(benchmark::kMillisecond);

void rasterise_a_readout(benchmark::State& state) {
    for (auto _ : state)
        benchmark::DoNotOptimize(rasterise(readout(static_cast<int>(state.range(0)))));
}
BENCHMARK(rasterise_a_readout)->Arg(24)->Arg(48)->Arg(72)->Unit(benchmark::kMillisecond);

void rasterise_a_drawn_face(benchmark::State& state) {
    const FaceRequest request{
        .file = DIALPLATE_TREE "/fonts/legend9.bdf", .size = 9, .characters = ascii()};
    for (auto _ : state)
        benchmark::DoNotOptimize(rasterise(request));
}
BENCHMARK(rasterise_a_drawn_face)->Unit(benchmark::kMillisecond);

void pack_a_legend(benchmark::State& state) {
    const RasterFace face = *rasterise(legend(20)).face;
    for (auto _ : state)
        benchmark::DoNotOptimize(pack_smallest(face, 1));
}
BENCHMARK(pack_a_legend)->Unit(benchmark::kMillisecond);

void pack_a_readout(benchmark::State& state) {
    const RasterFace face = *rasterise(readout(72)).face;
    for (auto _ : state)
        benchmark::DoNotOptimize(pack_smallest(face, 1));
}
BENCHMARK(pack_a_readout)->Unit(benchmark::kMillisecond);

// n faces of different sizes, half of them with all of ASCII; time must grow with n alone.
void rasterise_and_pack(benchmark::State& state) {
    for (auto _ : state) {
        std::size_t bytes = 0;
        for (int i = 0; i < static_cast<int>(state.range(0)); ++i) {
            const FaceRequest request = i % 2 == 0 ? legend(9 + i % 16) : readout(20 + i % 50);
            bytes += pack_smallest(*rasterise(request).face, 1).bytes.size();
        }
        benchmark::DoNotOptimize(bytes);
    }
    state.SetComplexityN(state.range(0));
}
BENCHMARK(rasterise_and_pack)
    ->RangeMultiplier(10)
    ->Range(1, 100)
    ->Arg(6)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oN);

}  // namespace
}  // namespace dialplate
