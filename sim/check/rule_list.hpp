// The functions behind the rules, one file each: sim/check/<name>.cpp. The list with their names, what
// they ask for and where that comes from is in rules.cpp.
#pragma once

#include "sim/check/check.hpp"

#include <vector>

namespace dialplate::rule {

void inside_glass(const Subject&, std::vector<Finding>&);
void overlap(const Subject&, std::vector<Finding>&);
void text_fits(const Subject&, std::vector<Finding>&);
void behind_bezel(const Subject&, std::vector<Finding>&);
void touch_size(const Subject&, std::vector<Finding>&);
void touch_spacing(const Subject&, std::vector<Finding>&);
void press_feedback(const Subject&, std::vector<Finding>&);
void character_height(const Subject&, std::vector<Finding>&);
void text_contrast(const Subject&, std::vector<Finding>&);
void graphics_contrast(const Subject&, std::vector<Finding>&);
void key_outline(const Subject&, std::vector<Finding>&);
void state_contrast(const Subject&, std::vector<Finding>&);
void flash(const Subject&, std::vector<Finding>&);
void ram(const Subject&, std::vector<Finding>&);
void image_size(const Subject&, std::vector<Finding>&);
void update_time(const Subject&, std::vector<Finding>&);
void key_action(const Subject&, std::vector<Finding>&);
void page_reach(const Subject&, std::vector<Finding>&);
void unseen_choice(const Subject&, std::vector<Finding>&);
void unused(const Subject&, std::vector<Finding>&);
void waiver_unused(const Subject&, std::vector<Finding>&);

}  // namespace dialplate::rule
