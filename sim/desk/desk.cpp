#include "sim/desk/desk.hpp"

#include "sim/desk/front.hpp"
#include "sim/desk/grip.hpp"
#include "sim/desk/keys.hpp"
#include "sim/desk/pane.hpp"
#include "sim/desk/scene.hpp"
#include "sim/desk/watch.hpp"
#include "sim/desk/workpiece.hpp"
#include "sim/layout/reader.hpp"

#include <SDL.h>

#include <algorithm>
#include <cstdio>
#include <utility>

namespace dialplate {
namespace {

// How often the receiver gets its time and the files are looked at: a save shows after one period plus
// the time to read and draw it.
constexpr int period_ms = 40;
// Out of sight, nothing has to be smooth.
constexpr int period_unseen_ms = 400;
// A window that slept does not live through all the time it missed.
constexpr int most_passed_ms = 250;

enum class Hold { nothing, glass, knob };

class Desk {
public:
    Desk(const std::string& file, const WindowWish& wish)
        : piece_(file, wish.live), scene_(pane_, piece_), zoom_(wish.zoom) {}

    int run() {
        std::string reason = scene_.load_faces();
        if (reason.empty()) reason = pane_.join();
        if (reason.empty()) reason = open();
        if (!reason.empty()) {
            std::fprintf(stderr,
                         "dialplate: error: no window: %s (`dialplate shot` needs none)\n",
                         reason.c_str());
            return 2;
        }
        while (running_) {
            SDL_Event event;
            if (SDL_WaitEventTimeout(&event, wait()) != 0) {
                do
                    handle(event);
                while (SDL_PollEvent(&event) != 0);
            }
            live();
            look();
            scene_.refresh(view());
            // The account can wait for the first picture, but not longer.
            if (piece_.prototype() != nullptr && !piece_.judged()) {
                piece_.judge();
                scene_.refresh(view());
            }
        }
        return 0;
    }

private:
    std::string open() {
        watch_.look_after({piece_.file()});
        piece_.load();
        watch_.look_after(piece_.sources());
        std::string reason = pane_.open(piece_.prototype() != nullptr
                                            ? wanted_window(piece_.layout(), pane_.room(), zoom_)
                                            : WindowSize{960, 600});
        if (!reason.empty()) return reason;
        entitle();
        arrange();
        scene_.refresh(view());
        then_ = SDL_GetTicks64();
        return {};
    }

    void entitle() {
        pane_.entitle(piece_.prototype() != nullptr ? piece_.layout().title + " - dialplate"
                                                    : piece_.file() + " - dialplate");
    }

    void arrange() { scene_.arrange(zoom_); }

    [[nodiscard]] View view() const { return {grip_.turned(), chosen_, keys_shown_}; }

    [[nodiscard]] int wait() const {
        const int period = seen_ ? period_ms : period_unseen_ms;
        const std::uint64_t passed = SDL_GetTicks64() - then_;
        return static_cast<int>(passed >= static_cast<std::uint64_t>(period)
                                    ? 0
                                    : static_cast<std::uint64_t>(period) - passed);
    }

    /// Gives the prototype the time that went by.
    void live() {
        const std::uint64_t now = SDL_GetTicks64();
        const std::uint64_t passed = now - then_;
        const int period = seen_ ? period_ms : period_unseen_ms;
        due_ = passed >= static_cast<std::uint64_t>(period);
        if (!due_) return;
        then_ = now;
        if (piece_.prototype() == nullptr) return;
        scene_.sent(piece_.prototype()->pass(
            static_cast<int>(std::min<std::uint64_t>(passed, most_passed_ms))));
        piece_.prototype()->heard();
    }

    /// Looks whether a file was saved.
    void look() {
        if (!due_) return;
        if (!watch_.changed()) {
            // An editor may have been caught half way through a save: a mistake counts once the file
            // has stood still for a period.
            if (std::exchange(doubtful_, false)) scene_.say_again();
            return;
        }
        const bool replaced = piece_.load();
        watch_.look_after(piece_.sources());
        chosen_ = 0;
        doubtful_ = !replaced;
        if (!replaced) return;
        // The finger is on a key of a prototype that is gone.
        if (hold_ == Hold::glass) hold_ = Hold::nothing;
        entitle();
        arrange();
    }

    void handle(const SDL_Event& event) {
        switch (event.type) {
            case SDL_QUIT:
                running_ = false;
                break;
            case SDL_WINDOWEVENT:
                handle(event.window);
                break;
            case SDL_KEYDOWN: {
                const Stroke stroke{.key = event.key.keysym.sym,
                                    .shift = (event.key.keysym.mod & KMOD_SHIFT) != 0,
                                    .control = (event.key.keysym.mod & KMOD_CTRL) != 0};
                if (const std::optional<Ordered> ordered = order_of(stroke)) obey(*ordered);
                break;
            }
            case SDL_MOUSEWHEEL: {
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
    }

    void handle(const SDL_WindowEvent& event) {
        switch (event.event) {
            case SDL_WINDOWEVENT_SIZE_CHANGED:
                arrange();
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

    void obey(const Ordered& ordered) {
        Prototype* prototype = piece_.prototype();
        switch (ordered.order) {
            case Order::quit:
                running_ = false;
                return;
            case Order::keys:
                keys_shown_ = !keys_shown_;
                return;
            case Order::hide:
                keys_shown_ = false;
                return;
            case Order::finding:
                chosen_ += ordered.by;
                scene_.say_again();
                return;
            default:
                break;
        }
        if (prototype == nullptr) return;
        switch (ordered.order) {
            case Order::tune:
                turn(grip_.nudge(ordered.by));
                break;
            case Order::page: {
                const int pages = static_cast<int>(piece_.layout().pages.size());
                prototype->show_page((prototype->page() + pages + ordered.by) % pages);
                scene_.sent(prototype->settle());
                break;
            }
            case Order::palette: {
                const int palettes = static_cast<int>(piece_.layout().palettes.size());
                prototype->use_palette((prototype->palette() + ordered.by) % palettes);
                scene_.sent(prototype->settle());
                break;
            }
            case Order::zoom:
                zoom_ = std::clamp(scene_.plan().zoom + ordered.by, 1, 16);
                arrange();
                break;
            case Order::fit:
                zoom_ = 0;
                arrange();
                break;
            default:
                break;
        }
    }

    void turn(int detents) {
        if (detents == 0 || piece_.prototype() == nullptr) return;
        piece_.prototype()->turn(detents);
        scene_.sent(piece_.prototype()->settle());
    }

    void press(int x, int y) {
        if (piece_.prototype() == nullptr || keys_shown_) {
            keys_shown_ = false;
            return;
        }
        if (scene_.plan().glass_at(x, y)) {
            hold_ = Hold::glass;
            SDL_CaptureMouse(SDL_TRUE);
            move(x, y);
        } else if (scene_.plan().on_knob(x, y)) {
            hold_ = Hold::knob;
            SDL_CaptureMouse(SDL_TRUE);
            grip_.take(scene_.plan().knob, x, y);
        } else if (scene_.plan().strip.holds(x, y)) {
            obey({Order::finding, 1});
        }
    }

    void move(int x, int y) {
        if (hold_ == Hold::knob) turn(grip_.move(scene_.plan().knob, x, y));
        if (hold_ != Hold::glass) return;
        // A finger that slides onto the bezel has left the glass.
        const std::optional<GlassPixel> point = scene_.plan().glass_at(x, y);
        if (!point) return let_go();
        piece_.prototype()->touch(point->x, point->y);
        scene_.sent(piece_.prototype()->settle());
    }

    void let_go() {
        SDL_CaptureMouse(SDL_FALSE);
        const Hold was = std::exchange(hold_, Hold::nothing);
        if (was != Hold::glass || piece_.prototype() == nullptr) return;
        piece_.prototype()->lift();
        scene_.sent(piece_.prototype()->settle());
    }

    Pane pane_;
    Workpiece piece_;
    Scene scene_;
    Watch watch_;
    Grip grip_;
    int zoom_;
    Hold hold_ = Hold::nothing;
    int chosen_ = 0;
    bool keys_shown_ = false;
    bool running_ = true;
    bool seen_ = true;
    bool due_ = false;
    bool doubtful_ = false;   ///< The last save had mistakes, which are not shown yet.
    std::uint64_t then_ = 0;  ///< When the prototype last got its time, ms.
};

}  // namespace

int open_window(const std::string& layout_file, const WindowWish& wish) {
    return Desk(layout_file, wish).run();
}

}  // namespace dialplate
