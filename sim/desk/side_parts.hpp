// What the side is put together from: titles of sections, figures at the right edge, tips.
#pragma once

#include "sim/desk/bench.hpp"
#include "sim/desk/lettering.hpp"

#include <imgui.h>
#include <string>

namespace dialplate {

/// One picture of the side in the making.
struct SideFrame {
    Bench& bench;
    Lettering type;
    float unit = 1.0f;  ///< Screen pixels a pixel of the window's words.
};

/// A number as printf's format has it, "%.1f ms"; at most 47 characters.
std::string in_words(const char* format, double number);

/// A title that opens and closes what is below it, with a figure that is good to know either way.
/// @return Whether it is open.
bool section(SideFrame& side, const char* title, const std::string& figure, Colour colour);

void say(const SideFrame& side, Colour colour, const std::string& words);
void say_small(const SideFrame& side, Colour colour, const std::string& words);
/// Running words on as many lines as they need.
void say_wrapped(const SideFrame& side, Colour colour, const std::string& words);
/// Words that end at the right edge of the present room or column.
void say_right(const SideFrame& side, Colour colour, const std::string& words);
/// Explains what the mouse rests on.
void tip(const SideFrame& side, const std::string& words);

/// A box to tick, with an edge that can be seen.
bool check_box(const SideFrame& side, const char* label, bool& on);
/// A button as wide as its words; a lit one is switched on.
bool press_button(const SideFrame& side, const char* label, bool on = false, float width = 0.0f);
/// A dot in a colour, in line with the words behind it.
void dot(const SideFrame& side, Colour colour);
/// A rectangle of a colour, as high as a line.
void swatch(const SideFrame& side, Colour colour);

// The parts themselves.
void draw_head(SideFrame& side);
void draw_asked(SideFrame& side);  ///< Questions that wait for an answer, and the last notice.
void draw_ledger(SideFrame& side);
void draw_findings(SideFrame& side);
void draw_item(SideFrame& side);
void draw_trial(SideFrame& side);
void draw_updates(SideFrame& side);
void draw_events(SideFrame& side);
void draw_look(SideFrame& side);
void draw_size(SideFrame& side);            ///< Zoom and true size.
void draw_card(SideFrame& side);            ///< Over everything, while the screen is measured.
void draw_layout_members(SideFrame& side);  ///< The page, what has a name, and the head.
void draw_mistakes(SideFrame& side);        ///< Of the file as it is, each with its member.

}  // namespace dialplate
