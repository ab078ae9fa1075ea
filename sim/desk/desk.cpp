#include "sim/desk/desk.hpp"

#include "sim/desk/arranging.hpp"
#include "sim/desk/bench.hpp"
#include "sim/desk/grip.hpp"
#include "sim/desk/keys.hpp"
#include "sim/desk/pane.hpp"
#include "sim/desk/papers.hpp"
#include "sim/desk/remembered.hpp"
#include "sim/desk/scene.hpp"
#include "sim/desk/side.hpp"
#include "sim/desk/touching.hpp"
#include "sim/desk/watch.hpp"
#include "sim/edit/item_changes.hpp"
#include "sim/layout/reader.hpp"

#include <SDL.h>

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <iterator>
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
// The side settles within so many pictures after a hand did something: what the mouse is over is known one
// picture later, what opens then is laid out in another.
constexpr int settling_pictures = 3;
// While the bus is sending, about a hundred pictures a second.
constexpr int building_period_ms = 9;
// While an item is dragged, findings and ledger wait until the hand rests.
constexpr std::uint64_t judge_after_ms = 120;

enum class Hold { nothing, glass, knob, item };

class Desk {
public:
    Desk(const std::string& file, const WindowWish& wish)
        : piece_(file, wish.live),
          bench_(piece_, session_),
          papers_(bench_),
          scene_(pane_, side_, bench_),
          arranging_(bench_),
          touching_(bench_),
          zoom_(wish.zoom) {}

    int run() {
        std::string reason = scene_.load_faces();
        if (reason.empty()) reason = pane_.join();
        if (reason.empty()) reason = open();
        while (reason.empty() && running_) {
            SDL_Event event;
            if (SDL_WaitEventTimeout(&event, wait()) != 0) {
                do
                    handle(event);
                while (SDL_PollEvent(&event) != 0);
                pictures_due_ = settling_pictures;
            }
            live();
            look();
            reason = picture();
            if (reason.empty()) judge();
        }
        if (reason.empty()) return 0;
        std::fprintf(stderr,
                     "dialplate: error: no window: %s (`dialplate shot` needs none)\n",
                     reason.c_str());
        return 2;
    }

private:
    std::string open() {
        Remembered remembered = recall();
        bench_.habits = std::move(remembered.habits);
        papers_.open();
        const WindowSize room = pane_.room();
        WindowSize size = remembered.window;
        // Another screen, or the first time: as the layout looks best.
        if (zoom_ != 0 || size.width < 420 || size.height < 300 || size.width > room.width ||
            size.height > room.height)
            size = piece_.prototype() != nullptr
                       ? wanted_window(piece_.layout(), room, zoom_, bench_.habits.side_open)
                       : WindowSize{1360, 720};
        std::string reason = pane_.open(size);
        if (!reason.empty()) return reason;
        side_.open(pane_.window());
        another_prototype();
        reason = scene_.arrange(zoom_);
        if (reason.empty()) reason = picture();
        then_ = SDL_GetTicks64();
        // The schema is for the side alone; the first picture need not wait for it.
        const std::string schema = find_file(".", "layout.schema.json");
        std::ifstream in(schema, std::ios::binary);
        bench_.schema = Schema::read(std::string(std::istreambuf_iterator<char>(in), {}));
        return reason;
    }

    [[nodiscard]] int wait() const {
        if (pictures_due_ > 0) return 0;
        if (scene_.is_building()) return building_period_ms;
        const int period = seen_ ? period_ms : period_unseen_ms;
        const std::uint64_t passed = SDL_GetTicks64() - then_;
        return static_cast<int>(passed >= static_cast<std::uint64_t>(period)
                                    ? 0
                                    : static_cast<std::uint64_t>(period) - passed);
    }

    /// One picture: what changed on the bench and, while it is not at rest, in the side.
    std::string picture() {
        bench_.now_ms = SDL_GetTicks64();
        if (touching_.fade()) pictures_due_ = std::max(pictures_due_, 1);
        if (side_.is_typing() && due_) pictures_due_ = std::max(pictures_due_, 1);
        if (pictures_due_ > 0) {
            --pictures_due_;
            side_.prepare(bench_);
            const std::string reason = do_all();
            if (!reason.empty()) return reason;
            if (bench_.weighing.weigh_one()) pictures_due_ = std::max(pictures_due_, 1);
        }
        scene_.refresh(grip_.turned());
        return {};
    }

    /// Whatever the parts of the window asked for.
    std::string do_all() {
        while (!bench_.orders.empty() || !bench_.wanted.empty()) {
            pictures_due_ = std::max(pictures_due_, settling_pictures);
            for (const Ordered& ordered : std::exchange(bench_.orders, {}))
                obey(ordered);
            for (Wanted& wanted : std::exchange(bench_.wanted, {})) {
                const std::string refusal = papers_.change(wanted);
                if (refusal.empty())
                    another_prototype();
                else
                    bench_.notice = Notice{"Not done: " + refusal, true};
            }
        }
        return std::exchange(trouble_, {});
    }

    /// The account can wait for the picture, and for a hand that is dragging something.
    void judge() {
        if (piece_.prototype() == nullptr || piece_.judged()) return;
        if (hold_ == Hold::item && SDL_GetTicks64() - changed_at_ < judge_after_ms) return;
        piece_.judge();
        if (!session_.changed() && bench_.true_to_text()) bench_.ledger_saved = piece_.ledger();
        if (bench_.finding && *bench_.finding >= piece_.findings()->size()) bench_.finding.reset();
        scene_.say_again();
        pictures_due_ = std::max(pictures_due_, 1);
    }

    /// After anything that may have put another prototype on the bench.
    void another_prototype() {
        changed_at_ = SDL_GetTicks64();
        // The finger is on a key of a prototype that is gone.
        if (hold_ == Hold::glass) hold_ = Hold::nothing;
        touching_.begin();
        watch_.look_after(piece_.sources());
        pane_.entitle((session_.changed() ? "* " : "") +
                      (piece_.prototype() != nullptr ? piece_.layout().title : piece_.file()) +
                      " - dialplate");
        if (side_is_open_) trouble_ = scene_.renew(zoom_);
        side_is_open_ = true;
        pictures_due_ = settling_pictures;
    }

    void arrange() {
        trouble_ = scene_.arrange(zoom_);
        pictures_due_ = settling_pictures;
    }

    /// Gives the prototype the time that went by.
    void live() {
        const std::uint64_t now = SDL_GetTicks64();
        const std::uint64_t passed = now - then_;
        const int period = seen_ ? period_ms : period_unseen_ms;
        due_ = passed >= static_cast<std::uint64_t>(period);
        if (!due_) return;
        then_ = now;
        papers_.keep_rescue(now);
        if (piece_.prototype() == nullptr) return;
        scene_.sent(
            touching_.pass(static_cast<int>(std::min<std::uint64_t>(passed, most_passed_ms))));
        if (touching_.has_news()) pictures_due_ = std::max(pictures_due_, 1);
    }

    /// Looks whether a file was saved.
    void look() {
        if (!due_) return;
        if (!watch_.changed()) {
            // An editor may have been caught half way through a save: a mistake counts once the file
            // has stood still for a period.
            if (std::exchange(doubtful_, false)) {
                scene_.say_again();
                pictures_due_ = settling_pictures;
            }
            return;
        }
        doubtful_ = !papers_.read_again();
        another_prototype();
    }

    void handle(const SDL_Event& event) {
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
        trouble_ = do_all();
    }

    void handle(const SDL_WindowEvent& event) {
        switch (event.event) {
            case SDL_WINDOWEVENT_CLOSE:
                close_button_ = true;
                break;
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

    void press_key(const SDL_KeyboardEvent& key) {
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

    void obey(const Ordered& ordered) {
        if (do_deed(bench_, ordered) || obey_always(ordered)) return;
        Prototype* prototype = piece_.prototype();
        if (prototype == nullptr) return;
        switch (ordered.order) {
            case Order::tune:
                turn(grip_.nudge(ordered.by));
                break;
            case Order::page: {
                const int pages = static_cast<int>(piece_.layout().pages.size());
                prototype->show_page((prototype->page() + pages + ordered.by) % pages);
                session_.choose({});
                scene_.sent(touching_.settle("page turned"));
                break;
            }
            case Order::palette: {
                const int palettes = static_cast<int>(piece_.layout().palettes.size());
                prototype->use_palette((prototype->palette() + ordered.by) % palettes);
                scene_.sent(touching_.settle("palette"));
                break;
            }
            case Order::redraw:
                scene_.sent(touching_.redraw());
                break;
            case Order::clear_journal:
                bench_.journal.clear();
                break;
            case Order::zoom:
                zoom_ = std::clamp(bench_.plan.zoom + ordered.by, 1, 16);
                arrange();
                break;
            case Order::fit:
                zoom_ = 0;
                arrange();
                break;
            case Order::finding:
                open_finding(ordered.by);
                break;
            default:
                break;
        }
    }

    /// What can be asked for even when nothing is shown.
    bool obey_always(const Ordered& ordered) {
        switch (ordered.order) {
            case Order::quit:
                leave();
                return true;
            case Order::leave:
                if (ordered.by == 0 && session_.changed()) return true;  // The save was refused.
                papers_.give_up();
                end();
                return true;
            case Order::stay:
                bench_.leaving = false;
                return true;
            case Order::keys:
                bench_.help = !bench_.help;
                return true;
            case Order::hide:
                bench_.notice.reset();
                bench_.leaving = false;
                bench_.lit.clear();
                bench_.finding.reset();
                session_.choose({});
                return true;
            case Order::mode:
                bench_.mode = static_cast<Mode>(ordered.by);
                bench_.notice.reset();
                side_.give_keyboard();
                scene_.say_again();
                return true;
            case Order::side:
                bench_.habits.side_open = !bench_.habits.side_open;
                arrange();
                return true;
            case Order::into_side:
                side_.take_keyboard();
                return true;
            case Order::save:
            case Order::undo:
            case Order::redo:
            case Order::restore:
            case Order::give_up:
            case Order::keep_mine:
            case Order::take_theirs:
            case Order::show_theirs:
                papers_.obey(ordered);
                another_prototype();
                return true;
            default:
                return false;
        }
    }

    /// Goes to the place that a finding speaks of.
    void open_finding(int by) {
        const auto& findings = piece_.findings();
        if (!findings || findings->empty()) return;
        const int count = static_cast<int>(findings->size());
        if (by != 0) {
            const int now = bench_.finding ? static_cast<int>(*bench_.finding) : by > 0 ? -1 : 0;
            bench_.finding = static_cast<std::size_t>((now + by + count) % count);
        }
        scene_.say_again();
        if (!bench_.finding) return;
        bench_.lit = (*findings)[*bench_.finding].pointer;
        const std::optional<ItemIndex> place = item_at(piece_.layout(), bench_.lit);
        if (!place) return;
        bench_.lit = item_pointer(*place);
        if (bench_.mode == Mode::arrange) session_.choose({bench_.lit});
        if (place->page == piece_.prototype()->page()) return;
        piece_.prototype()->show_page(place->page);
        scene_.sent(touching_.settle("page turned"));
    }

    void leave() {
        if (session_.changed()) {
            bench_.leaving = true;
            if (bench_.plan.side.empty()) {
                bench_.habits.side_open = true;
                arrange();
            }
            return;
        }
        end();
    }
    void end() {
        remember({bench_.habits, pane_.size()});
        running_ = false;
    }

    void turn(int detents) {
        if (detents == 0 || piece_.prototype() == nullptr) return;
        piece_.prototype()->turn(detents);
        scene_.sent(touching_.settle("tuning step"));
    }

    void press(int x, int y) {
        if (bench_.help) {
            bench_.help = false;
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

    void move(int x, int y) {
        if (hold_ == Hold::knob) turn(grip_.move(bench_.plan.knob, x, y));
        if (hold_ == Hold::item) arranging_.move(x, y, held_);
        if (hold_ != Hold::glass) return;
        // A finger that slides onto the bezel has left the glass.
        const std::optional<GlassPixel> point = bench_.plan.glass_at(x, y);
        if (!point) return let_go();
        scene_.sent(touching_.slide(*point));
    }

    void let_go() {
        SDL_CaptureMouse(SDL_FALSE);
        const Hold was = std::exchange(hold_, Hold::nothing);
        if (was == Hold::item) arranging_.release();
        if (was == Hold::glass && piece_.prototype() != nullptr) scene_.sent(touching_.lift());
    }

    /// In the order of the events: SDL's own state is already that of the last one that waits.
    void note_held(const SDL_KeyboardEvent& key) {
        const bool down = key.type == SDL_KEYDOWN;
        if (key.keysym.sym == SDLK_LALT || key.keysym.sym == SDLK_RALT) held_.alt = down;
        if (key.keysym.sym == SDLK_LSHIFT || key.keysym.sym == SDLK_RSHIFT) held_.shift = down;
    }

    Pane pane_;
    Workpiece piece_;
    Session session_;
    Bench bench_;
    Papers papers_;
    Side side_;
    Scene scene_;
    Arranging arranging_;
    Touching touching_;
    Watch watch_;
    Grip grip_;
    int zoom_;
    Hold hold_ = Hold::nothing;
    Held held_;
    int pictures_due_ = settling_pictures;  ///< Of the side, until it is at rest.
    std::string trouble_;                   ///< Nothing can be drawn any more.
    bool running_ = true;
    bool seen_ = true;
    bool due_ = false;
    bool doubtful_ = false;  ///< The last save had mistakes, which are not shown yet.
    bool close_button_ = false;
    bool side_is_open_ = false;
    std::uint64_t changed_at_ = 0;
    std::uint64_t then_ = 0;  ///< When the prototype last got its time, ms.
};

}  // namespace

int open_window(const std::string& layout_file, const WindowWish& wish) {
    return Desk(layout_file, wish).run();
}

}  // namespace dialplate
