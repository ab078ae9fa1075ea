#include "sim/prove/play_steps.hpp"

#include <algorithm>

namespace dialplate {
namespace {

Box box_on_page(const Layout& layout, int page, const std::string& name) {
    const auto& items = layout.pages[static_cast<std::size_t>(page)].items;
    const auto found = std::find_if(
        items.begin(), items.end(), [&](const Item& item) { return item.name == name; });
    return found == items.end() ? Box{} : found->box;
}

std::string words(const Layout& layout, const PlayStep& step) {
    switch (step.kind) {
        case StepKind::tap:
            return "tapping \"" + step.item + '"';
        case StepKind::press:
            return "pressing \"" + step.item + '"';
        case StepKind::press_at:
            return "pressing at " + std::to_string(step.x) + ", " + std::to_string(step.y);
        case StepKind::lift:
            return "lifting the finger";
        case StepKind::turn:
            return "turning by " + std::to_string(step.amount);
        case StepKind::wait:
            return "waiting " + std::to_string(step.amount) + " ms";
        case StepKind::set:
            return "setting " + layout.values[static_cast<std::size_t>(step.value)].name + " to " +
                   std::to_string(step.to);
        case StepKind::page:
            return "turning to page \"" + layout.pages[static_cast<std::size_t>(step.index)].name +
                   '"';
        case StepKind::palette:
            break;
    }
    return "drawing in palette " + std::to_string(step.index);
}

void do_step(LockStep& both, const Layout& layout, const PlayStep& step) {
    switch (step.kind) {
        case StepKind::tap:
        case StepKind::press: {
            const Box box = box_on_page(layout, both.page(), step.item);
            both.press_sheet(box.x + box.width / 2, box.y + box.height / 2);
            if (step.kind == StepKind::tap) {
                both.pass(tap_ms);
                both.lift_sheet();
            }
            break;
        }
        case StepKind::press_at:
            both.press_sheet(step.x, step.y);
            break;
        case StepKind::lift:
            both.lift_sheet();
            break;
        case StepKind::turn:
            both.turn(step.amount);
            break;
        case StepKind::wait:
            both.pass(step.amount);
            break;
        case StepKind::set:
            both.set(step.value, step.to);
            break;
        case StepKind::page:
            both.show_page(step.index);
            break;
        case StepKind::palette:
            both.use_palette(step.index);
            break;
    }
    both.settle();
}

}  // namespace

void play_steps(LockStep& both, const Layout& layout, const std::vector<PlayStep>& steps) {
    both.doing("drawing the first page");
    both.show_page(0);
    both.settle();
    for (std::size_t n = 0; n < steps.size() && both.going(); ++n) {
        both.doing("step " + std::to_string(n + 1) + " of the play, " + words(layout, steps[n]));
        do_step(both, layout, steps[n]);
    }
}

}  // namespace dialplate
