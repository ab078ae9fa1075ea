// The window: a front panel on a bench, with the running prototype behind its opening.
#pragma once

#include <string>

namespace dialplate {

/// How the window opens; without wishes it sizes itself after the screen.
struct WindowWish {
    int zoom = 0;      ///< Screen pixels a glass pixel, 1..16; 0: the greatest that fits.
    bool live = true;  ///< The receiver lives by itself: the signal fades, clocks run.
};

/// Opens the window on a layout file and stays until it is closed. The file is watched; a save shows at
/// once, and a broken file leaves the last good picture standing with its first mistake below it.
/// @return Exit status: 0 fine; 2 when no window can be opened, which is then said on standard error.
int open_window(const std::string& layout_file, const WindowWish& wish = {});

}  // namespace dialplate
