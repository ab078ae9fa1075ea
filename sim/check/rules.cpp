// The one list of rules. A new one: a file sim/check/<name>.cpp, a line in rule_list.hpp, an entry here,
// a test tests/check/<name>_test.cpp with a layout that just passes and one that just fails, and a case
// in layouts/crowded.json.
#include "sim/check/rule_list.hpp"

namespace dialplate {

std::span<const Rule> rules() {
    static const Rule list[] = {
        rule::inside_glass,   rule::overlap,
        rule::text_fits,      rule::behind_bezel,
        rule::touch_size,     rule::touch_spacing,
        rule::press_feedback, rule::character_height,
        rule::text_contrast,  rule::graphics_contrast,
        rule::key_outline,    rule::state_contrast,
        rule::flash,          rule::ram,
        rule::image_size,     rule::update_time,
        rule::key_action,     rule::page_reach,
        rule::unseen_choice,  rule::unused,
        rule::waiver_unused,
    };
    return list;
}

}  // namespace dialplate
