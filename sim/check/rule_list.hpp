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
extern const Rule press_feedback;
extern const Rule character_height;
extern const Rule text_contrast;
extern const Rule graphics_contrast;
extern const Rule key_outline;
extern const Rule state_contrast;
extern const Rule flash;
extern const Rule ram;
extern const Rule image_size;
extern const Rule update_time;
extern const Rule key_action;
extern const Rule page_reach;
extern const Rule unseen_choice;
extern const Rule unused;
extern const Rule waiver_unused;

}  // namespace dialplate::rule
