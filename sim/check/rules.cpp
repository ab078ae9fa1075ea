// The one list of rules. A new one: a file sim/check/<name>.cpp, a line in rule_list.hpp, an entry here,
// a test tests/check/<name>_test.cpp with a layout that just passes and one that just fails, and a case
// in layouts/crowded.json.
#include "sim/check/rule_list.hpp"

namespace dialplate {

std::span<const Rule> rules() {
    // clang-format off
    static const Rule list[] = {
        rule::inside_glass,
        rule::overlap,
        rule::text_fits,
        rule::behind_bezel,
        rule::touch_size,
        rule::touch_spacing,
        rule::touch_hit,
        rule::touch_neighbour,
        rule::touch_round,
        rule::touch_reach,
        rule::touch_edge,
        rule::press_feedback,
        rule::character_height,
        rule::character_width,
        rule::stroke_width,
        rule::character_spacing,
        rule::dot_matrix,
        rule::x_height,
        rule::acuity,
        rule::text_contrast,
        rule::graphics_contrast,
        rule::key_outline,
        rule::state_contrast,
        rule::ambient_contrast,
        rule::modulation,
        rule::colour_vision_text,
        rule::colour_vision_state,
        rule::flash,
        rule::ram,
        rule::image_size,
        rule::bus_clock,
        rule::mcu_clock,
        rule::logic_level,
        rule::backlight_current,
        rule::update_time,
        rule::update_rate,
        rule::digit_time,
        rule::flashing,
        rule::band_edges,
        rule::signal_marks,
        rule::sideband,
        rule::readout_digits,
        rule::tuning_step,
        rule::key_action,
        rule::page_reach,
        rule::unseen_choice,
        rule::unused,
        rule::waiver_unused,
    };
    // clang-format on
    return list;
}

}  // namespace dialplate
