#include "sim/desk/keys.hpp"

#include <SDL_keycode.h>

namespace dialplate {
namespace {

constexpr int any = -1, no = 0, yes = 1;

struct Binding {
    int key;
    int shift;  ///< any, no, yes
    int control;
    Ordered ordered;
};

constexpr Binding always[] = {
    {SDLK_PAGEUP, any, no, {Order::tune, 10}}, {SDLK_PAGEDOWN, any, no, {Order::tune, -10}},
    {SDLK_TAB, no, no, {Order::page, 1}},      {SDLK_TAB, yes, no, {Order::page, -1}},
    {SDLK_p, any, no, {Order::palette, 1}},    {SDLK_PLUS, any, no, {Order::zoom, 1}},
    {SDLK_EQUALS, any, no, {Order::zoom, 1}},  {SDLK_KP_PLUS, any, no, {Order::zoom, 1}},
    {SDLK_MINUS, any, no, {Order::zoom, -1}},  {SDLK_KP_MINUS, any, no, {Order::zoom, -1}},
    {SDLK_0, any, no, {Order::fit, 0}},        {SDLK_KP_0, any, no, {Order::fit, 0}},
    {SDLK_t, no, no, {Order::true_size, 0}},   {SDLK_t, yes, no, {Order::measure_screen, 0}},
    {SDLK_f, no, no, {Order::finding, 1}},     {SDLK_f, yes, no, {Order::finding, -1}},
    {SDLK_F1, any, any, {Order::keys, 0}},     {SDLK_h, any, no, {Order::keys, 0}},
    {SDLK_ESCAPE, any, any, {Order::hide, 0}}, {SDLK_q, any, yes, {Order::quit, 0}},
    {SDLK_w, any, yes, {Order::quit, 0}},      {SDLK_F2, any, no, {Order::mode, 0}},
    {SDLK_F3, any, no, {Order::mode, 1}},      {SDLK_F4, any, no, {Order::mode, 2}},
    {SDLK_F5, any, no, {Order::trial, 0}},     {SDLK_s, no, no, {Order::save_trial, 0}},
    {SDLK_F6, any, no, {Order::into_side, 0}}, {SDLK_F9, any, no, {Order::side, 0}},
    {SDLK_s, no, yes, {Order::save, 0}},       {SDLK_z, no, yes, {Order::undo, 0}},
    {SDLK_z, yes, yes, {Order::redo, 0}},      {SDLK_y, any, yes, {Order::redo, 0}},
    {SDLK_r, any, no, {Order::redraw, 0}},     {SDLK_r, any, yes, {Order::restore, 0}},
    {SDLK_F7, any, no, {Order::keep_mine, 0}}, {SDLK_F8, any, no, {Order::take_theirs, 0}},
};

constexpr Binding tuning[] = {
    {SDLK_UP, no, no, {Order::tune, 1}},
    {SDLK_RIGHT, no, no, {Order::tune, 1}},
    {SDLK_DOWN, no, no, {Order::tune, -1}},
    {SDLK_LEFT, no, no, {Order::tune, -1}},
    {SDLK_UP, yes, no, {Order::tune, 10}},
    {SDLK_RIGHT, yes, no, {Order::tune, 10}},
    {SDLK_DOWN, yes, no, {Order::tune, -10}},
    {SDLK_LEFT, yes, no, {Order::tune, -10}},
};

constexpr Binding arranging_keys[] = {
    {SDLK_UP, no, no, {Order::nudge_y, -1}},    {SDLK_DOWN, no, no, {Order::nudge_y, 1}},
    {SDLK_LEFT, no, no, {Order::nudge_x, -1}},  {SDLK_RIGHT, no, no, {Order::nudge_x, 1}},
    {SDLK_UP, yes, no, {Order::nudge_y, -8}},   {SDLK_DOWN, yes, no, {Order::nudge_y, 8}},
    {SDLK_LEFT, yes, no, {Order::nudge_x, -8}}, {SDLK_RIGHT, yes, no, {Order::nudge_x, 8}},
    {SDLK_UP, no, yes, {Order::size_y, -1}},    {SDLK_DOWN, no, yes, {Order::size_y, 1}},
    {SDLK_LEFT, no, yes, {Order::size_x, -1}},  {SDLK_RIGHT, no, yes, {Order::size_x, 1}},
    {SDLK_UP, yes, yes, {Order::size_y, -8}},   {SDLK_DOWN, yes, yes, {Order::size_y, 8}},
    {SDLK_LEFT, yes, yes, {Order::size_x, -8}}, {SDLK_RIGHT, yes, yes, {Order::size_x, 8}},
    {SDLK_g, any, no, {Order::grid, 0}},        {SDLK_d, any, yes, {Order::duplicate, 0}},
    {SDLK_DELETE, any, no, {Order::remove, 0}}, {SDLK_BACKSPACE, any, no, {Order::remove, 0}},
    {SDLK_a, any, yes, {Order::choose_all, 0}}, {SDLK_n, no, no, {Order::choose, 1}},
    {SDLK_n, yes, no, {Order::choose, -1}},
};

bool meets(int wanted, bool held) {
    return wanted == any || (wanted == yes) == held;
}

std::optional<Ordered> find(std::span<const Binding> bindings, const Stroke& stroke) {
    for (const Binding& binding : bindings)
        if (binding.key == stroke.key && meets(binding.shift, stroke.shift) &&
            meets(binding.control, stroke.control))
            return binding.ordered;
    return std::nullopt;
}

constexpr KeyLine anywhere[] = {
    {"F2, F3, F4", "operate, arrange, look"},
    {"Tab, Shift Tab", "next and previous page"},
    {"P", "next palette"},
    {"+, -, 0", "zoom in, out, to the window"},
    {"T, Shift T", "true size; measure the screen for it"},
    {"F, Shift F", "next and previous finding"},
    {"F6, Esc", "keyboard into the side, and back"},
    {"F9", "close or open the side"},
    {"Ctrl S", "save"},
    {"Ctrl Z, Ctrl Y", "undo, redo"},
    {"F7, F8", "saved by two programs: keep mine, take theirs"},
    {"Ctrl R", "restore what was left unsaved the last time"},
    {"F1", "this sheet"},
    {"Ctrl Q", "close"},
};
constexpr KeyLine operate[] = {
    {"Mouse on the glass", "a finger: press, hold, slide off"},
    {"Wheel, drag on the knob", "tune, one step a click"},
    {"Arrow keys", "tune; with Shift ten steps"},
    {"Page Up, Page Down", "tune ten steps"},
    {"R", "draw the page again"},
    {"F5, S", "start or leave a trial; save what it measured"},
};
constexpr KeyLine arrange[] = {
    {"Click, Shift click", "choose an item, choose one more"},
    {"Drag from bare ground", "choose all inside"},
    {"Drag, grips", "move, size; with Alt nothing catches"},
    {"Arrow keys", "move by 1 pixel; with Shift by 8"},
    {"Ctrl arrow keys", "size by 1 pixel; with Shift by 8"},
    {"G", "grid on or off"},
    {"N, Shift N", "next and previous item"},
    {"Ctrl D, Delete", "duplicate, delete"},
    {"Ctrl A", "choose all"},
};
constexpr KeyLine in_side[] = {
    {"Arrow keys", "from control to control"},
    {"Space, Enter", "press, open a list; type into a field"},
    {"Esc", "out of a field or a list, then out of the side"},
};
constexpr KeySheet all_sheets[] = {{"ANYWHERE", anywhere},
                                   {"OPERATE", operate},
                                   {"ARRANGE", arrange},
                                   {"IN THE SIDE (F6)", in_side}};

}  // namespace

std::optional<Ordered> order_of(const Stroke& stroke, bool arranging) {
    std::optional<Ordered> found = find(
        arranging ? std::span<const Binding>(arranging_keys) : std::span<const Binding>(tuning),
        stroke);
    return found ? found : find(always, stroke);
}

std::span<const KeySheet> key_sheets() {
    return all_sheets;
}

}  // namespace dialplate
