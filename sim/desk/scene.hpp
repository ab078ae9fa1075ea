// The picture in the window, kept up to date piece by piece: what did not change is not drawn again.
#pragma once

#include "sim/desk/front.hpp"
#include "sim/desk/pane.hpp"
#include "sim/desk/workpiece.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// What of the picture the hand at the mouse and the keys decide.
struct View {
    double turned = 0.0;      ///< Of the knob, in turns.
    int chosen = 0;           ///< Finding in the strip, counted around its number.
    bool keys_shown = false;  ///< The list of keys.
};

class Scene {
public:
    Scene(Pane& pane, Workpiece& piece) : pane_(pane), piece_(piece) {}

    /// @return An empty reason, or why the window has no faces.
    std::string load_faces();

    /// Plans everything anew, for the window's present size: after a resize, a load or a zoom.
    /// @param zoom  1..16, or 0 for the greatest that fits.
    void arrange(int zoom);
    [[nodiscard]] const Plan& plan() const { return plan_; }

    /// The prototype sent this to the glass.
    void sent(const Update& update);
    /// The strip has something else to say.
    void say_again() { strip_old_ = true; }
    /// The window lost what it showed.
    void show_again() { parts_ = {picture_.all()}; }

    /// Draws what changed and sends it to the screen.
    void refresh(const View& view);

private:
    void draw_all(const View& view);
    void draw_lonely_mistakes();
    [[nodiscard]] CaptionWords caption() const;
    [[nodiscard]] std::string step() const;
    void refresh_glass();
    void refresh_strip(const View& view);

    Pane& pane_;
    Workpiece& piece_;
    Faces faces_;
    Plan plan_;
    Canvas ground_;   ///< Plate, rules, bezel: what never changes between two arrangements.
    Canvas picture_;  ///< What the window shows.
    std::vector<Area> parts_;  ///< Of the picture, changed since it was last sent.

    bool all_old_ = true;
    bool strip_old_ = true;
    Box glass_old_;  ///< Part of the glass that was sent since it was last drawn.
    double turned_drawn_ = 0.0;
    bool keys_drawn_ = false;
    bool judged_drawn_ = false;
    CaptionWords caption_drawn_;
    std::string step_drawn_;
};

}  // namespace dialplate
