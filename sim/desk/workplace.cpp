#include "sim/desk/workplace.hpp"

#include "sim/desk/remembered.hpp"
#include "sim/layout/reader.hpp"

#include <SDL.h>

#include <algorithm>
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
// While the bus is sending, about a hundred pictures a second.
constexpr int building_period_ms = 9;
// While an item is dragged, findings and ledger wait until the hand rests.
constexpr std::uint64_t judge_after_ms = 120;

}  // namespace

Workplace::Workplace(const std::string& file, const WindowWish& wish)
    : piece_(file, wish.live),
      bench_(piece_, session_),
      papers_(bench_),
      scene_(pane_, side_, bench_),
      arranging_(bench_),
      touching_(bench_),
      exercise_(bench_),
      times_(wish.zoom),
      pictures_due_(settling_pictures) {}

std::string Workplace::open() {
    std::string reason = scene_.load_faces();
    if (reason.empty()) reason = pane_.join();
    if (!reason.empty()) return reason;
    Remembered remembered = recall();
    bench_.habits = std::move(remembered.habits);
    papers_.open();
    const WindowSize room = pane_.room();
    WindowSize size = remembered.window;
    // Another screen, or the first time: as the layout looks best.
    if (times_ != 0 || size.width < 420 || size.height < 300 || size.width > room.width ||
        size.height > room.height)
        size = piece_.prototype() != nullptr
                   ? wanted_window(piece_.layout(), room, times_, bench_.habits.side_open)
                   : WindowSize{1360, 720};
    reason = pane_.open(size);
    if (!reason.empty()) return reason;
    side_.open(pane_.window());
    look_at_screen();
    another_prototype();
    reason = scene_.arrange(zoom());
    bench_.now_ms = SDL_GetTicks64();
    if (reason.empty()) reason = picture();
    then_ = SDL_GetTicks64();
    // The schema is for the side alone; the first picture need not wait for it.
    const std::string schema = find_file(".", "layout.schema.json");
    std::ifstream in(schema, std::ios::binary);
    bench_.schema = Schema::read(std::string(std::istreambuf_iterator<char>(in), {}));
    return reason;
}

int Workplace::wait() const {
    if (pictures_due_ > 0) return 0;
    if (scene_.is_building()) return building_period_ms;
    const int period = seen_ ? period_ms : period_unseen_ms;
    const std::uint64_t passed = SDL_GetTicks64() - then_;
    return static_cast<int>(passed >= static_cast<std::uint64_t>(period)
                                ? 0
                                : static_cast<std::uint64_t>(period) - passed);
}

std::string Workplace::step() {
    bench_.now_ms = SDL_GetTicks64();
    live();
    look();
    try_on();
    std::string reason = picture();
    if (reason.empty()) judge();
    return reason;
}

// One picture: what changed on the bench and, while it is not at rest, in the side.
std::string Workplace::picture() {
    if (touching_.fade()) pictures_due_ = std::max(pictures_due_, 1);
    if (side_.is_typing() && due_) pictures_due_ = std::max(pictures_due_, 1);
    if (bench_.weighing.has_news()) pictures_due_ = settling_pictures;
    if (pictures_due_ > 0) {
        --pictures_due_;
        side_.prepare(bench_);
        const std::string reason = do_all();
        if (!reason.empty()) return reason;
    }
    scene_.refresh(grip_.turned());
    return {};
}

// Whatever the parts of the window asked for.
std::string Workplace::do_all() {
    while (!bench_.orders.empty() || !bench_.wanted.empty()) {
        pictures_due_ = std::max(pictures_due_, settling_pictures);
        for (const Ordered& ordered : std::exchange(bench_.orders, {}))
            obey(ordered);
        for (Wanted& wanted : std::exchange(bench_.wanted, {})) {
            const std::string refusal = papers_.change(wanted);
            if (refusal.empty()) {
                another_prototype();
                if (wanted.page) show_page(*wanted.page);
            } else if (!bench_.refusal) {
                bench_.notice = Notice{"Not done: " + refusal, true};
            }
        }
    }
    return std::exchange(trouble_, {});
}

// The account can wait for the picture, and for a hand that is dragging something.
void Workplace::judge() {
    if (piece_.prototype() == nullptr || piece_.judged()) return;
    if (hold_ == Hold::item && SDL_GetTicks64() - changed_at_ < judge_after_ms) return;
    piece_.judge();
    if (!session_.changed() && bench_.true_to_text()) bench_.note_saved();
    if (bench_.finding && *bench_.finding >= piece_.findings()->size()) bench_.finding.reset();
    scene_.say_again();
    pictures_due_ = std::max(pictures_due_, 1);
}

// After anything that may have put another prototype on the bench.
void Workplace::another_prototype() {
    changed_at_ = SDL_GetTicks64();
    // The finger is on a key of a prototype that is gone.
    if (hold_ == Hold::glass) hold_ = Hold::nothing;
    touching_.begin();
    exercise_.interrupt();
    watch_.look_after(piece_.sources());
    pane_.entitle((session_.changed() ? "* " : "") +
                  (piece_.prototype() != nullptr ? piece_.layout().title : piece_.file()) +
                  " - dialplate");
    if (side_is_open_) trouble_ = scene_.renew(zoom());
    side_is_open_ = true;
    pictures_due_ = settling_pictures;
}

void Workplace::try_on() {
    if (!exercise_.look()) return;
    scene_.say_again();
    pictures_due_ = settling_pictures;
}

void Workplace::arrange() {
    trouble_ = scene_.arrange(zoom());
    pictures_due_ = settling_pictures;
}

// Gives the prototype the time that went by.
void Workplace::live() {
    const std::uint64_t now = SDL_GetTicks64();
    const std::uint64_t passed = now - then_;
    const int period = seen_ ? period_ms : period_unseen_ms;
    due_ = passed >= static_cast<std::uint64_t>(period);
    if (!due_) return;
    then_ = now;
    papers_.keep_rescue(now);
    if (piece_.prototype() == nullptr) return;
    scene_.sent(touching_.pass(static_cast<int>(std::min<std::uint64_t>(passed, most_passed_ms))));
    if (touching_.has_news()) pictures_due_ = std::max(pictures_due_, 1);
}

// Looks whether a file was saved.
void Workplace::look() {
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

Zoom Workplace::zoom() const {
    return true_size_ ? Zoom::true_size(bench_.screen.pixels_per_mm) : Zoom{times_};
}

void Workplace::look_at_screen() {
    bench_.screen = screen_on(pane_.monitor(), bench_.habits.screens);
}

}  // namespace dialplate
