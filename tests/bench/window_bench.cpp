// The window at 1280x800 on SDL's dummy driver: the same surface in memory and the same software renderer as on a
// screen, without sending it there. Read the CPU column: what is done, not what was waited for.
#include "sim/desk/workplace.hpp"

#include <SDL.h>

#include <benchmark/benchmark.h>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>

namespace {

using namespace dialplate;
namespace fs = std::filesystem;

const char* const example = DIALPLATE_TREE "/layouts/coast-listener.json";

/// Nothing of the user's is read or written.
const fs::path& folder() {
    static const fs::path made = [] {
        const fs::path path = fs::temp_directory_path() / "dialplate-window-bench";
        fs::remove_all(path);
        fs::create_directories(path);
        setenv("SDL_VIDEODRIVER", "dummy", 1);
        setenv("XDG_STATE_HOME", path.c_str(), 1);
        return path;
    }();
    return made;
}

/// As the loop of the program does it, but without waiting.
void take_events(Workplace& place) {
    SDL_Event event;
    while (SDL_PollEvent(&event) != 0)
        place.handle(event);
}

std::unique_ptr<Workplace> opened(const std::string& file, bool live) {
    (void)folder();
    auto place = std::make_unique<Workplace>(file, WindowWish{.zoom = 0, .live = live});
    if (!place->open().empty()) std::abort();
    // SDL numbers windows from 1 on and never twice.
    static Uint32 number = 1;
    while (SDL_GetWindowFromID(number) == nullptr)
        ++number;
    SDL_SetWindowSize(SDL_GetWindowFromID(number), 1280, 800);
    for (int i = 0; i < 10; ++i) {
        take_events(*place);
        (void)place->step();
    }
    return place;
}

void press(Workplace& place, int key) {
    SDL_Event event{};
    event.type = SDL_KEYDOWN;
    event.key.keysym.sym = key;
    place.handle(event);
}

/// A detent and its picture, at a key of the mode: F2 operate, F4 look.
void tuning(benchmark::State& state) {
    const std::unique_ptr<Workplace> place = opened(example, false);
    if (place->bench().plan.window != WindowSize{1280, 800}) state.SkipWithError("another size");
    press(*place, static_cast<int>(state.range(0)));
    for (auto _ : state) {
        press(*place, SDLK_UP);
        (void)place->step();
    }
    state.counters["pictures/s"] =
        benchmark::Counter(static_cast<double>(state.iterations()), benchmark::Counter::kIsRate);
}
BENCHMARK(tuning)->ArgName("key")->Arg(SDLK_F2)->Arg(SDLK_F4)->Unit(benchmark::kMillisecond);

/// From before the program's window to its first picture.
void first_picture(benchmark::State& state) {
    (void)folder();
    for (auto _ : state) {
        Workplace place(example, WindowWish{.zoom = 0, .live = false});
        if (!place.open().empty()) state.SkipWithError("no window");
    }
}
BENCHMARK(first_picture)->Unit(benchmark::kMillisecond);

/// A save by another program, until its picture is drawn; up to 40 ms go by before the file is looked at.
void save_to_picture(benchmark::State& state) {
    const fs::path file = folder() / "saved.json";
    std::ifstream in(example, std::ios::binary);
    std::string text{std::istreambuf_iterator<char>(in), {}};
    std::ofstream(file) << text;
    const std::unique_ptr<Workplace> place = opened(file.string(), false);
    const std::size_t blue = text.find("#0C161B") + 5;
    for (auto _ : state) {
        text[blue] = text[blue] == '1' ? '3' : '1';
        std::ofstream(file) << text;
        while (place->bench().piece.text() != text) {
            SDL_Delay(static_cast<Uint32>(place->wait()));
            (void)place->step();
        }
    }
}
BENCHMARK(save_to_picture)->Unit(benchmark::kMillisecond)->Iterations(40);

/// A second without a hand on it; argument 1: with a signal that fades. The counter is the share of one processor.
void idle(benchmark::State& state) {
    const std::unique_ptr<Workplace> place = opened(example, state.range(0) != 0);
    double busy = 0.0, seconds = 0.0;
    for (auto _ : state) {
        const std::uint64_t end = SDL_GetTicks64() + 1000;
        const std::clock_t began = std::clock();
        while (SDL_GetTicks64() < end) {
            take_events(*place);
            SDL_Delay(static_cast<Uint32>(place->wait()));
            (void)place->step();
        }
        busy += static_cast<double>(std::clock() - began) / CLOCKS_PER_SEC;
        seconds += 1.0;
    }
    state.counters["busy %"] = 100.0 * busy / seconds;
}
BENCHMARK(idle)->ArgName("live")->Arg(0)->Arg(1)->Iterations(4)->Unit(benchmark::kMillisecond);

}  // namespace
