// What fonts weigh, for people and for scripts.
#pragma once

#include "sim/commands/weigh_fonts.hpp"

#include <string>

namespace dialplate {

std::string faces_text(const Weighing& weighing, const WeighWish& wish);
std::string faces_json(const Weighing& weighing, const WeighWish& wish);

/// " x2" for a face that is drawn twice as large as it is stored; else nothing.
std::string enlargement_words(const WeighedFace& face);

/// "U+0041"
std::string hexadecimal(char32_t code);

}  // namespace dialplate
