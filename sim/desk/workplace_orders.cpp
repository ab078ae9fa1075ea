#include "sim/desk/remembered.hpp"
#include "sim/desk/workplace.hpp"
#include "sim/edit/item_changes.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {
namespace {

/// The whole zoom above or below what is shown.
int next_zoom(const Plan& plan, int by) {
    const double now = plan.zoom > 0 ? plan.zoom : plan.scale_x;
    return std::clamp(static_cast<int>(by > 0 ? std::floor(now) + by : std::ceil(now) + by), 1, 16);
}

}  // namespace

void Workplace::obey(const Ordered& ordered) {
    if (do_deed(bench_, ordered) || obey_always(ordered)) return;
    Prototype* prototype = piece_.prototype();
    if (prototype == nullptr) return;
    switch (ordered.order) {
        case Order::tune:
            turn(grip_.nudge(ordered.by));
            break;
        case Order::page: {
            const int pages = static_cast<int>(piece_.layout().pages.size());
            show_page((prototype->page() + pages + ordered.by) % pages);
            session_.choose({});
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
        case Order::trial:
            if (bench_.trial && bench_.trial->task() != nullptr)
                exercise_.leave();
            else
                exercise_.start();
            scene_.sent(touching_.settle("page turned"));
            scene_.say_again();
            break;
        case Order::save_trial:
            exercise_.save();
            break;
        case Order::clear_journal:
            bench_.journal.clear();
            break;
        case Order::zoom:
            times_ = next_zoom(bench_.plan, ordered.by);
            true_size_ = false;
            arrange();
            break;
        case Order::fit:
            times_ = 0;
            true_size_ = false;
            arrange();
            break;
        case Order::true_size:
            true_size_ = !true_size_;
            arrange();
            break;
        case Order::finding:
            open_finding(ordered.by);
            break;
        default:
            break;
    }
}

// What can be asked for even when nothing is shown.
bool Workplace::obey_always(const Ordered& ordered) {
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
        case Order::measure_screen:
            begin_measuring();
            return true;
        case Order::screen_measured:
            if (ordered.by != 0) take_measure();
            bench_.card.reset();
            return true;
        case Order::keys:
            bench_.help = !bench_.help;
            return true;
        case Order::hide:
            bench_.notice.reset();
            bench_.refusal.reset();
            bench_.leaving = false;
            exercise_.leave_or_clear();
            scene_.say_again();
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
            if (bench_.plan.handle.empty())
                bench_.habits.side_open = !bench_.habits.side_open;
            else
                bench_.drawer = !bench_.drawer;
            if (bench_.plan.drawer) side_.give_keyboard();
            arrange();
            return true;
        case Order::grid:
            bench_.habits.grid.on = !bench_.habits.grid.on;
            return true;
        case Order::into_side:
            show_side();
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

void Workplace::open_finding(int by) {
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
    show_page(place->page);
}

void Workplace::show_page(int page) {
    piece_.prototype()->show_page(page);
    scene_.sent(touching_.settle("page turned"));
}

void Workplace::show_side() {
    if (!bench_.plan.side.empty()) return;
    (bench_.plan.handle.empty() ? bench_.habits.side_open : bench_.drawer) = true;
    arrange();
}

void Workplace::leave() {
    if (session_.changed()) {
        bench_.leaving = true;
        return;
    }
    end();
}
void Workplace::end() {
    remember({bench_.habits, pane_.size()});
    running_ = false;
}

void Workplace::begin_measuring() {
    const int margin = 32 * bench_.plan.letter;
    bench_.help = false;
    bench_.card.emplace(margin, margin, bench_.screen.pixels_per_mm);
}

void Workplace::take_measure() {
    if (!bench_.card) return;
    bench_.habits.screens[bench_.screen.monitor] = bench_.card->pixels_per_mm();
    // At once: what was measured is not to be lost with a window that ends badly.
    remember({bench_.habits, pane_.size()});
    look_at_screen();
    true_size_ = true;
    arrange();
}

}  // namespace dialplate
