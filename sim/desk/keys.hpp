// The keys of the window: what each does, in one table, which the list on the screen is made from too.
#pragma once

#include <optional>
#include <span>

namespace dialplate {

/// What a person asks the window for.
enum class Order {
    tune,     ///< by detents
    page,     ///< next or previous
    palette,  ///< next
    zoom,     ///< one more or one less
    fit,      ///< the greatest zoom that fits
    true_size,
    measure_screen,   ///< with a card held to it
    screen_measured,  ///< 1 take it, 0 leave it
    finding,          ///< next or previous
    keys,             ///< show or hide the help sheet
    hide,             ///< let go of what is in hand: a sheet, a list, the chosen items
    quit,
    mode,       ///< by number: operate, arrange, look
    side,       ///< open or close
    into_side,  ///< the keyboard goes to the side
    save,
    undo,
    redo,
    nudge_x,  ///< the chosen items, by pixels
    nudge_y,
    duplicate,
    remove,
    choose_all,
    choose,      ///< next or previous item
    align,       ///< by number: an Edge
    distribute,  ///< 0 across, 1 down
    raise,       ///< drawn last
    size_x,      ///< the chosen items, by pixels
    size_y,
    grid,     ///< on or off
    insert,   ///< by number: a new item of an ItemKind
    restore,  ///< takes the text of an earlier run
    give_up,  ///< drops it
    keep_mine,
    take_theirs,
    show_theirs,
    trial,  ///< starts one, or leaves the one that runs
    save_trial,
    clear_journal,
    redraw,
    leave,  ///< without saving
    stay,
};

struct Stroke {
    int key = 0;  ///< SDL_Keycode.
    bool shift = false, control = false;
};

struct Ordered {
    Order order = Order::tune;
    int by = 0;
};

/// What a key stands for; nothing for most.
/// @param arranging  In arrange the arrow keys move items instead of tuning.
std::optional<Ordered> order_of(const Stroke& stroke, bool arranging);

/// A line of the help sheet.
struct KeyLine {
    const char* keys;
    const char* what;
};
/// Its parts: a title and lines.
struct KeySheet {
    const char* title;
    std::span<const KeyLine> lines;
};
std::span<const KeySheet> key_sheets();

}  // namespace dialplate
