// The one list of rules. A new one: a file sim/check/<name>.cpp, a line in rule_list.hpp, an entry here,
// a test tests/check/<name>_test.cpp with a layout that just passes and one that just fails, and a case
// in layouts/crowded.json.
#include "sim/check/rule_list.hpp"

namespace dialplate {

namespace {

constexpr const char* ours = "common practice, no source";
constexpr const char* by_engine = "the engine's own rule: no pixel is drawn twice";
constexpr const char* by_hardware = "the part's data sheet, layouts/parts/mcus.json";

constexpr Rule list[] = {
    {"inside-glass",
     "Every item lies on the glass.",
     "the pixels of the display, layouts/parts/displays.json",
     rule::inside_glass},
    {"overlap",
     "Items of a page keep clear of each other; a frame has them inside its line or beside it.",
     by_engine,
     rule::overlap},
    {"text-fits", "Every text has room in its item at its widest value.", ours, rule::text_fits},
    {"behind-bezel",
     "No pixel of an item is hidden by the opening (must), nor by the bezel's depth along the line "
     "of sight (should).",
     "geometry of opening, depth and tilt",
     rule::behind_bezel},
    {"touch-size",
     "A key is 9.2 mm wide and high, 9.6 mm when it is tapped in series.",
     "Parhi, Karlson, Bederson, MobileHCI 2006: one tap (TCH-07)",
     rule::touch_size},
    {"touch-spacing",
     "A key under 6.35 mm keeps a circle of that diameter clear of its neighbours (must); gaps of "
     "3 mm are advised between keys under 9.6 mm (note).",
     "WCAG 2.2 SC 2.5.8, spacing exception (TCH-03)",
     rule::touch_spacing},
    {"press-feedback", "A key looks different while it is pressed.", ours, rule::press_feedback},
    {"character-height",
     "Capitals and digits subtend 16' (must), better 20' (should), at the viewing distance.",
     "NUREG-0700 Rev. 2 (2002), 1.3.1-4: minimum height (LEG-05)",
     rule::character_height},
    {"text-contrast",
     "Text has a contrast of 4.5:1, large text of 3:1, in every palette.",
     "WCAG 2.2 SC 1.4.3 (CON-05)",
     rule::text_contrast},
    {"graphics-contrast",
     "Bars, ticks, pointers and pictures have a contrast of 3:1 in every palette.",
     "WCAG 2.2 SC 1.4.11 (CON-05)",
     rule::graphics_contrast},
    {"key-outline",
     "The fill or the edge of a key has a contrast of 3:1 against what is behind it.",
     "WCAG 2.2 SC 1.4.11 (CON-05)",
     rule::key_outline},
    {"state-contrast",
     "A lit lamp and an active key differ from an unlit and an idle one by 3:1.",
     "WCAG 2.2 SC 1.4.11 (CON-05)",
     rule::state_contrast},
    {"flash", "Display and program fit the flash.", by_hardware, rule::flash},
    {"ram", "Display, stack and program fit the RAM.", by_hardware, rule::ram},
    {"image-size",
     "The image is no greater than one object may be.",
     "the compiler's limit for one object, layouts/parts/mcus.json (MCU-04)",
     rule::image_size},
    {"update-time",
     "What happens on the display is there within 100 ms; a new page within a second.",
     "Miller 1968; Card et al.: 100 ms feel immediate (BUS-21, from memory)",
     rule::update_time},
    {"key-action", "Every key does something.", ours, rule::key_action},
    {"page-reach", "Every page can be reached from the first one by keys.", ours, rule::page_reach},
    {"unseen-choice", "What a key chooses can be seen.", ours, rule::unseen_choice},
    {"unused", "Every paint, look, face and value is used.", ours, rule::unused},
    {"waiver-unused", "Every waiver accepts something.", ours, rule::waiver_unused},
};

}  // namespace

std::span<const Rule> rules() {
    return list;
}

}  // namespace dialplate
