#include "sim/desk/workplace.hpp"

#include <SDL.h>

#include <optional>
#include <utility>

namespace dialplate {

void Workplace::handle(const SDL_Event& event) {
    bench_.now_ms = SDL_GetTicks64();
    side_.handle(event);
    switch (event.type) {
        case SDL_QUIT:
            // A signal closes at once, and what is not saved is kept for the next time; the window's own
            // button is asked about.
            if (std::exchange(close_button_, false))
                leave();
            else
                end();
            break;
        case SDL_WINDOWEVENT:
            handle(event.window);
            break;
        case SDL_KEYDOWN:
            note_held(event.key);
            press_key(event.key);
            break;
        case SDL_KEYUP:
            note_held(event.key);
            break;
        case SDL_DROPFILE:
            papers_.dropped(event.drop.file);
            SDL_free(event.drop.file);
            another_prototype();
            arrange();
            break;
        case SDL_MOUSEWHEEL: {
            int x = 0, y = 0;
            SDL_GetMouseState(&x, &y);
            if (side_.has_mouse(bench_.plan, x, y)) break;
            const double up = static_cast<double>(event.wheel.preciseY);
            turn(grip_.nudge(event.wheel.direction == SDL_MOUSEWHEEL_FLIPPED ? -up : up));
            break;
        }
        case SDL_MOUSEBUTTONDOWN:
            if (event.button.button == SDL_BUTTON_LEFT) press(event.button.x, event.button.y);
            break;
        case SDL_MOUSEMOTION:
            move(event.motion.x, event.motion.y);
            break;
        case SDL_MOUSEBUTTONUP:
            if (event.button.button == SDL_BUTTON_LEFT) let_go();
            break;
        default:
            break;
    }
    pictures_due_ = settling_pictures;
    trouble_ = do_all();
    try_on();
}

void Workplace::handle(const SDL_WindowEvent& event) {
    switch (event.event) {
        case SDL_WINDOWEVENT_CLOSE:
            close_button_ = true;
            break;
        case SDL_WINDOWEVENT_SIZE_CHANGED:
            arrange();
            break;
        case SDL_WINDOWEVENT_DISPLAY_CHANGED:
            look_at_screen();
            if (true_size_) arrange();
            break;
        case SDL_WINDOWEVENT_EXPOSED:
            scene_.show_again();
            break;
        case SDL_WINDOWEVENT_HIDDEN:
        case SDL_WINDOWEVENT_MINIMIZED:
            seen_ = false;
            break;
        case SDL_WINDOWEVENT_SHOWN:
        case SDL_WINDOWEVENT_RESTORED:
        case SDL_WINDOWEVENT_MAXIMIZED:
            seen_ = true;
            break;
        default:
            break;
    }
}

void Workplace::press_key(const SDL_KeyboardEvent& key) {
    if (bench_.card) return fit_card(key);
    const Stroke stroke{.key = key.keysym.sym,
                        .shift = (key.keysym.mod & KMOD_SHIFT) != 0,
                        .control = (key.keysym.mod & KMOD_CTRL) != 0};
    if (bench_.help && stroke.key != SDLK_F1) {
        bench_.help = false;
        return;
    }
    // In the side only what no field could want goes to the window.
    const bool for_all = stroke.control || (stroke.key >= SDLK_F1 && stroke.key <= SDLK_F12);
    if (side_.has_keyboard()) {
        if (stroke.key == SDLK_ESCAPE && !side_.is_typing()) side_.give_keyboard();
        if (!for_all || (side_.is_typing() && stroke.control && stroke.key != SDLK_s)) return;
    }
    if (const std::optional<Ordered> ordered = order_of(stroke, bench_.mode == Mode::arrange))
        bench_.orders.push_back(*ordered);
}

void Workplace::fit_card(const SDL_KeyboardEvent& key) {
    const int by = (key.keysym.mod & KMOD_SHIFT) != 0 ? 10 : 1;
    switch (key.keysym.sym) {
        case SDLK_RIGHT:
        case SDLK_UP:
            bench_.card->widen(by);
            break;
        case SDLK_LEFT:
        case SDLK_DOWN:
            bench_.card->widen(-by);
            break;
        case SDLK_RETURN:
        case SDLK_KP_ENTER:
            bench_.order(Order::screen_measured, 1);
            break;
        case SDLK_ESCAPE:
            bench_.order(Order::screen_measured, 0);
            break;
        default:
            break;
    }
}

void Workplace::press(int x, int y) {
    if (bench_.help) {
        bench_.help = false;
        return;
    }
    if (bench_.card) {
        if (side_.has_mouse(bench_.plan, x, y)) return;
        bench_.card->press(x, y);
        hold_ = Hold::card;
        SDL_CaptureMouse(SDL_TRUE);
        return;
    }
    if (side_.has_mouse(bench_.plan, x, y) || piece_.prototype() == nullptr) return;
    side_.give_keyboard();
    const Plan& plan = bench_.plan;
    if (plan.on_knob(x, y)) {
        hold_ = Hold::knob;
        grip_.take(plan.knob, x, y);
    } else if (plan.strip.holds(x, y)) {
        obey({Order::finding, 1});
        return;
    } else if (bench_.mode == Mode::arrange) {
        hold_ = Hold::item;
        arranging_.press(x, y, held_);
    } else if (const std::optional<GlassPixel> point = plan.glass_at(x, y)) {
        hold_ = Hold::glass;
        scene_.sent(touching_.press(*point));
    } else {
        return;
    }
    SDL_CaptureMouse(SDL_TRUE);
}

void Workplace::move(int x, int y) {
    if (hold_ == Hold::knob) turn(grip_.move(bench_.plan.knob, x, y));
    if (hold_ == Hold::card && bench_.card) bench_.card->move(x, y);
    if (hold_ == Hold::item) arranging_.move(x, y, held_);
    if (hold_ != Hold::glass) return;
    // A finger that slides onto the bezel has left the glass.
    const std::optional<GlassPixel> point = bench_.plan.glass_at(x, y);
    if (!point) return let_go();
    scene_.sent(touching_.slide(*point));
}

void Workplace::let_go() {
    SDL_CaptureMouse(SDL_FALSE);
    const Hold was = std::exchange(hold_, Hold::nothing);
    if (was == Hold::card && bench_.card) bench_.card->release();
    if (was == Hold::item) arranging_.release();
    if (was == Hold::glass && piece_.prototype() != nullptr) scene_.sent(touching_.lift());
}

void Workplace::turn(int detents) {
    if (detents == 0 || piece_.prototype() == nullptr) return;
    piece_.prototype()->turn(detents);
    scene_.sent(touching_.settle("tuning step"));
}

// In the order of the events: SDL's own state is already that of the last one that waits.
void Workplace::note_held(const SDL_KeyboardEvent& key) {
    const bool down = key.type == SDL_KEYDOWN;
    if (key.keysym.sym == SDLK_LALT || key.keysym.sym == SDLK_RALT) held_.alt = down;
    if (key.keysym.sym == SDLK_LSHIFT || key.keysym.sym == SDLK_RSHIFT) held_.shift = down;
}

}  // namespace dialplate
