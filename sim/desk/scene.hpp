// The picture in the window, kept up to date piece by piece: what did not change is not drawn again.
#pragma once

#include "sim/desk/bench.hpp"
#include "sim/desk/front.hpp"
#include "sim/desk/pane.hpp"
#include "sim/desk/side.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

class Scene {
public:
    Scene(Pane& pane, Side& side, Bench& bench)
        : pane_(pane), side_(side), bench_(bench), piece_(bench.piece) {}

    /// @return An empty reason, or why the window has no faces.
    std::string load_faces();

    /// Plans everything anew, for the window's present size: after a resize or a zoom.
    /// @return An empty reason, or why nothing can be drawn.
    std::string arrange(const Zoom& zoom);
    /// Another prototype lies on the bench; plans anew only if it has other measures.
    std::string renew(const Zoom& zoom);

    /// The prototype sent this to the glass.
    void sent(const Update& update);
    /// Whether the picture goes on by itself: the bus is still sending.
    [[nodiscard]] bool is_building() const { return !building_.empty(); }
    /// The strip has something else to say.
    void say_again() { strip_old_ = true; }
    /// The window lost what it showed.
    void show_again() { lost_ = true; }

    /// Draws what changed and sends it to the screen.
    /// @param turned  Of the knob, in turns.
    void refresh(double turned);

private:
    void draw_bench(double turned);
    void draw_lonely_mistakes();
    [[nodiscard]] CaptionWords caption() const;
    [[nodiscard]] std::string step() const;
    void refresh_glass();
    void draw_looked_at();
    /// Draws what the bus has brought by now. @return Whether more is to come.
    bool build_up();
    void refresh_strip();
    void compose();

    Pane& pane_;
    Side& side_;
    Bench& bench_;
    Workpiece& piece_;
    Faces faces_;
    Canvas ground_;   ///< Plate, rules, bezel: what never changes between two arrangements.
    Canvas picture_;  ///< The bench.
    Canvas shown_;    ///< The bench with the side over it, as the window shows it.
    std::vector<Area> parts_;  ///< Of the bench, changed since it was last shown.
    std::string title_;        ///< As it is engraved.

    /// An update on its way over the bus.
    struct Underway {
        std::vector<SentWindow> windows;
        double milliseconds = 0.0;
        std::uint64_t began = 0;
        std::size_t done = 0;  ///< Windows that have arrived whole.
    };
    std::vector<Underway> building_;
    RasterFace labels_;         ///< For the aids of look.
    std::optional<Aids> aids_;  ///< As the glass was last drawn; absent: without any.

    bool all_old_ = true;
    bool strip_old_ = true;
    Box glass_old_;  ///< Part of the glass that was sent since it was last drawn.
    bool lost_ = false;
    double turned_drawn_ = 0.0;
    bool judged_drawn_ = false;
    CaptionWords caption_drawn_;
    std::string hint_drawn_;
    std::string step_drawn_;
};

}  // namespace dialplate
