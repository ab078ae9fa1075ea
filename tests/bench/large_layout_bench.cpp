// Loading, building, drawing and costing layouts of growing size. Complexity is printed as BigO: linear
// work shows N with a small RMS.
//
// Run: build/tests/bench/large_layout_bench
#include "sim/check/check.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/ledger.hpp"
#include "sim/prototype/prototype.hpp"
#include "tests/bench/large_layout.hpp"

#include <benchmark/benchmark.h>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace dialplate {
namespace {

const std::string here = DIALPLATE_TREE "/layouts";

struct Ready {
    Layout layout;
    BuiltImage built;
};

Ready ready(LayoutSize size) {
    Reading reading = read_layout(large_layout(size), "large.json", here);
    Building building;
    if (reading.layout) {
        building = build_image(*reading.layout);
    }
    if (!building.image) {
        for (const Finding& finding : reading.layout ? building.findings : reading.findings) {
            std::fprintf(stderr, "%s\n", gnu_line("large.json", finding).c_str());
        }
        std::exit(1);
    }
    return {std::move(*reading.layout), std::move(*building.image)};
}

LayoutSize by_items(const benchmark::State& state) {
    return {.items = static_cast<int>(state.range(0)), .faces = 4};
}

void load_items(benchmark::State& state) {
    const std::string text = large_layout(by_items(state));
    for (auto _ : state) {
        benchmark::DoNotOptimize(read_layout(text, "large.json", here));
    }
    state.SetComplexityN(state.range(0));
}

void build_items(benchmark::State& state) {
    const Ready large = ready(by_items(state));
    for (auto _ : state) {
        benchmark::DoNotOptimize(build_image(large.layout));
    }
    state.SetComplexityN(state.range(0));
}

void draw_items(benchmark::State& state) {
    const Ready large = ready(by_items(state));
    Prototype prototype(large.layout, large.built);
    for (auto _ : state) {
        for (int page = 0; page < static_cast<int>(large.layout.pages.size()); ++page) {
            prototype.show_page(page);
            benchmark::DoNotOptimize(prototype.settle());
        }
    }
    state.SetComplexityN(state.range(0));
}

void cost_items(benchmark::State& state) {
    const Ready large = ready(by_items(state));
    for (auto _ : state) {
        benchmark::DoNotOptimize(account(large.layout, large.built));
    }
    state.SetComplexityN(state.range(0));
}

void check_items(benchmark::State& state) {
    const Ready large = ready(by_items(state));
    const Ledger ledger = account(large.layout, large.built);
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            check({.layout = large.layout, .image = large.built, .ledger = ledger}));
    }
    state.SetComplexityN(state.range(0));
}

void load_and_cost_faces(benchmark::State& state) {
    const int faces = static_cast<int>(state.range(0));
    const std::string text = large_layout({.items = faces, .faces = faces});
    for (auto _ : state) {
        const Reading reading = read_layout(text, "large.json", here);
        const Building building = build_image(*reading.layout);
        benchmark::DoNotOptimize(account(*reading.layout, *building.image));
    }
    state.SetComplexityN(faces);
}

void sizes(benchmark::internal::Benchmark* bench) {
    bench->Arg(125)->Arg(250)->Arg(500)->Arg(1000)->Unit(benchmark::kMillisecond)->Complexity();
}

BENCHMARK(load_items)->Apply(sizes);
BENCHMARK(build_items)->Apply(sizes);
BENCHMARK(draw_items)->Apply(sizes);
BENCHMARK(cost_items)->Apply(sizes);
BENCHMARK(check_items)->Apply(sizes);
BENCHMARK(load_and_cost_faces)
    ->Arg(25)
    ->Arg(50)
    ->Arg(100)
    ->Arg(200)
    ->Unit(benchmark::kMillisecond)
    ->Complexity();

}  // namespace
}  // namespace dialplate
