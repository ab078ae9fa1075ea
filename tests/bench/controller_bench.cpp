// A full screen of 320x240 into the controller model: byte by byte, run by run, and read back.
#include "sim/display/controller.hpp"
#include "sim/display/wire.hpp"

#include <benchmark/benchmark.h>

namespace {

using namespace dialplate;

Display module_240x320() {
    Display display;
    display.width = display.memory_width = 240;
    display.height = display.memory_height = 320;
    display.turns = {
        TurnMode{0x48, 0, 0}, TurnMode{0x28, 0, 0}, TurnMode{0x88, 0, 0}, TurnMode{0xE8, 0, 0}};
    return display;
}

/// Fills the glass row by row in the turn given as the benchmark's argument.
void fill(benchmark::State& state, bool byte_by_byte) {
    const Display display = module_240x320();
    const int turn = static_cast<int>(state.range(0));
    const bool upright = turn % 180 == 0;
    const auto width = static_cast<std::uint16_t>(upright ? 240 : 320);
    const auto height = static_cast<std::uint16_t>(upright ? 320 : 240);
    Controller controller(display);
    Wire wire(controller, display, turn);
    std::int64_t heard = 0;
    if (byte_by_byte) wire.observe([&](bool, std::uint8_t) { ++heard; });
    wire.start();
    for (auto _ : state) {
        controller.begin_update();
        wire.window(0, 0, width, height);
        for (int y = 0; y < height; ++y)
            wire.push(static_cast<std::uint16_t>(y * 77), width);
    }
    benchmark::DoNotOptimize(controller.counters().bytes);
    state.SetBytesProcessed(state.iterations() * 153'600);
}

void full_screen_by_bytes(benchmark::State& state) {
    fill(state, true);
}
void full_screen_by_runs(benchmark::State& state) {
    fill(state, false);
}

void glass(benchmark::State& state) {
    const Display display = module_240x320();
    Controller controller(display);
    Wire wire(controller, display, 90);
    wire.start();
    for (auto _ : state)
        benchmark::DoNotOptimize(controller.glass(90));
}

}  // namespace

BENCHMARK(full_screen_by_bytes)->Arg(0)->Arg(90);
BENCHMARK(full_screen_by_runs)->Arg(0)->Arg(90);
BENCHMARK(glass);
