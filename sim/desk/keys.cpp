#include "sim/desk/keys.hpp"

#include "sim/desk/tints.hpp"

#include <SDL_keycode.h>

#include <algorithm>

namespace dialplate {
namespace {

constexpr int any = -1, no = 0, yes = 1;

struct Binding {
    int key;
    int shift;  ///< any, no, yes
    int control;
    Ordered ordered;
};

constexpr Binding bindings[] = {
    {SDLK_UP, no, no, {Order::tune, 1}},       {SDLK_RIGHT, no, no, {Order::tune, 1}},
    {SDLK_DOWN, no, no, {Order::tune, -1}},    {SDLK_LEFT, no, no, {Order::tune, -1}},
    {SDLK_UP, yes, no, {Order::tune, 10}},     {SDLK_RIGHT, yes, no, {Order::tune, 10}},
    {SDLK_DOWN, yes, no, {Order::tune, -10}},  {SDLK_LEFT, yes, no, {Order::tune, -10}},
    {SDLK_PAGEUP, any, no, {Order::tune, 10}}, {SDLK_PAGEDOWN, any, no, {Order::tune, -10}},
    {SDLK_TAB, no, no, {Order::page, 1}},      {SDLK_TAB, yes, no, {Order::page, -1}},
    {SDLK_p, any, no, {Order::palette, 1}},    {SDLK_PLUS, any, no, {Order::zoom, 1}},
    {SDLK_EQUALS, any, no, {Order::zoom, 1}},  {SDLK_KP_PLUS, any, no, {Order::zoom, 1}},
    {SDLK_MINUS, any, no, {Order::zoom, -1}},  {SDLK_KP_MINUS, any, no, {Order::zoom, -1}},
    {SDLK_0, any, no, {Order::fit, 0}},        {SDLK_KP_0, any, no, {Order::fit, 0}},
    {SDLK_f, no, no, {Order::finding, 1}},     {SDLK_f, yes, no, {Order::finding, -1}},
    {SDLK_F1, any, any, {Order::keys, 0}},     {SDLK_h, any, no, {Order::keys, 0}},
    {SDLK_ESCAPE, any, any, {Order::hide, 0}}, {SDLK_q, any, yes, {Order::quit, 0}},
    {SDLK_w, any, yes, {Order::quit, 0}},
};

bool meets(int wanted, bool held) {
    return wanted == any || (wanted == yes) == held;
}

struct Line {
    const char* keys;
    const char* what;
};

constexpr Line lines[] = {
    {"Mouse on the glass", "a finger: press, hold, slide off"},
    {"Wheel, drag on the knob", "tune, one step a click"},
    {"Arrow keys", "tune; with Shift ten steps"},
    {"Page Up, Page Down", "tune ten steps"},
    {"Tab, Shift Tab", "next and previous page"},
    {"P", "next palette"},
    {"+, -, 0", "zoom in, out, to the window"},
    {"F, Shift F", "next and previous finding"},
    {"F1, H", "this list"},
    {"Ctrl Q", "close"},
};

}  // namespace

std::optional<Ordered> order_of(const Stroke& stroke) {
    for (const Binding& binding : bindings)
        if (binding.key == stroke.key && meets(binding.shift, stroke.shift) &&
            meets(binding.control, stroke.control))
            return binding.ordered;
    return std::nullopt;
}

void draw_keys(Canvas& canvas, const Plan& plan, const Faces& faces) {
    const int unit = plan.letter;
    const int pitch = faces.small.height() + 9 * unit;
    const int pad = 24 * unit;
    int keys_width = 0, what_width = 0;
    for (const Line& line : lines) {
        keys_width = std::max(keys_width, faces.small.width(line.keys));
        what_width = std::max(what_width, faces.small.width(line.what));
    }
    const int gap = 22 * unit;
    const int rows = static_cast<int>(std::size(lines));
    const int width = keys_width + gap + what_width + 2 * pad;
    const int height = rows * pitch - 9 * unit + 2 * pad;
    const Area box{plan.panel.x + (plan.panel.width - width) / 2,
                   plan.panel.y + (plan.panel.height - height) / 2,
                   width,
                   height};
    canvas.rounded(grown(box, unit), 5.0 * unit, tint::rule);
    canvas.rounded(box, 4.0 * unit, tint::strip);
    int y = box.y + pad;
    for (const Line& line : lines) {
        faces.small.draw(canvas, box.x + pad, y, line.keys, {.ink = tint::engraved});
        faces.small.draw(
            canvas, box.x + pad + keys_width + gap, y, line.what, {.ink = tint::quiet});
        y += pitch;
    }
}

}  // namespace dialplate
