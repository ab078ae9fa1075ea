#include "sim/desk/desk.hpp"

#include "sim/desk/workplace.hpp"

#include <SDL.h>

#include <cstdio>

namespace dialplate {

int open_window(const std::string& layout_file, const WindowWish& wish) {
    Workplace workplace(layout_file, wish);
    std::string reason = workplace.open();
    while (reason.empty() && workplace.running()) {
        SDL_Event event;
        if (SDL_WaitEventTimeout(&event, workplace.wait()) != 0) {
            do
                workplace.handle(event);
            while (SDL_PollEvent(&event) != 0);
        }
        reason = workplace.step();
    }
    if (reason.empty()) return 0;
    std::fprintf(
        stderr, "dialplate: error: no window: %s (`dialplate shot` needs none)\n", reason.c_str());
    return 2;
}

}  // namespace dialplate
