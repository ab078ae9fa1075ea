// The rules, one file each: sim/check/<name>.cpp has what a rule says of itself and the function that finds.
// Their order in reports is that of rules.cpp.
#pragma once

#include "sim/check/check.hpp"

#include <vector>

namespace dialplate::rule {

extern const Rule inside_glass;
extern const Rule overlap;
extern const Rule text_fits;
extern const Rule behind_bezel;
extern const Rule touch_size;
extern const Rule touch_spacing;
extern const Rule touch_hit;
extern const Rule touch_neighbour;
extern const Rule touch_round;
extern const Rule touch_reach;
extern const Rule touch_edge;
extern const Rule press_feedback;
extern const Rule character_height;
extern const Rule character_width;
extern const Rule stroke_width;
extern const Rule character_spacing;
extern const Rule dot_matrix;
extern const Rule x_height;
extern const Rule acuity;
extern const Rule text_contrast;
extern const Rule graphics_contrast;
extern const Rule key_outline;
extern const Rule state_contrast;
extern const Rule ambient_contrast;
extern const Rule modulation;
extern const Rule colour_vision_text;
extern const Rule colour_vision_state;
extern const Rule flash;
extern const Rule ram;
extern const Rule image_size;
extern const Rule bus_clock;
extern const Rule mcu_clock;
extern const Rule logic_level;
extern const Rule backlight_current;
extern const Rule update_time;
extern const Rule update_rate;
extern const Rule digit_time;
extern const Rule flashing;
extern const Rule band_edges;
extern const Rule signal_marks;
extern const Rule sideband;
extern const Rule readout_digits;
extern const Rule tuning_step;
extern const Rule key_action;
extern const Rule page_reach;
extern const Rule unseen_choice;
extern const Rule unused;
extern const Rule waiver_unused;

}  // namespace dialplate::rule
