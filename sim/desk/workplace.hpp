// Everything that makes up the window, put together: the parts on their bench, what hands do to them, and the
// time that goes by.
#pragma once

#include "sim/desk/arranging.hpp"
#include "sim/desk/bench.hpp"
#include "sim/desk/desk.hpp"
#include "sim/desk/exercise.hpp"
#include "sim/desk/grip.hpp"
#include "sim/desk/pane.hpp"
#include "sim/desk/papers.hpp"
#include "sim/desk/scene.hpp"
#include "sim/desk/side.hpp"
#include "sim/desk/touching.hpp"
#include "sim/desk/watch.hpp"

#include <SDL_events.h>

#include <cstdint>
#include <string>

namespace dialplate {

class Workplace {
public:
    Workplace(const std::string& file, const WindowWish& wish);

    /// Opens the window and shows the first picture. @return An empty reason, or why there is no window.
    std::string open();
    [[nodiscard]] bool running() const { return running_; }
    /// Milliseconds until something is due by itself.
    [[nodiscard]] int wait() const;
    /// What a hand or the desktop did; the next step takes account of it.
    void handle(const SDL_Event& event);
    /// Lets time pass, looks after the files, brings the picture up to date.
    /// @return An empty reason, or why nothing can be drawn any more.
    std::string step();

    [[nodiscard]] const Bench& bench() const { return bench_; }

private:
    // workplace.cpp: pictures and time
    std::string picture();
    std::string do_all();
    void judge();
    void try_on();
    void another_prototype();
    void arrange();
    void live();
    void look();
    void look_at_screen();
    [[nodiscard]] Zoom zoom() const;

    // workplace_hands.cpp: mouse, keyboard, and what the desktop asks
    void handle(const SDL_WindowEvent& event);
    void press_key(const SDL_KeyboardEvent& key);
    void fit_card(const SDL_KeyboardEvent& key);
    void press(int x, int y);
    void move(int x, int y);
    void let_go();
    void turn(int detents);
    void note_held(const SDL_KeyboardEvent& key);

    // workplace_orders.cpp: what is asked for, by a key, a button or a part of the window
    void obey(const Ordered& ordered);
    bool obey_always(const Ordered& ordered);
    void open_finding(int by);
    void show_page(int page);
    void show_side();
    void begin_measuring();
    void take_measure();
    void leave();
    void end();

    enum class Hold { nothing, glass, knob, item, card };

    Pane pane_;
    Workpiece piece_;
    Session session_;
    Bench bench_;
    Papers papers_;
    Side side_;
    Scene scene_;
    Arranging arranging_;
    Touching touching_;
    Exercise exercise_;
    Watch watch_;
    Grip grip_;
    int times_;  ///< Screen pixels a glass pixel, 0: what fits.
    bool true_size_ = false;
    Hold hold_ = Hold::nothing;
    Held held_;
    int pictures_due_;     ///< Of the side, until it is at rest.
    std::string trouble_;  ///< Nothing can be drawn any more.
    bool running_ = true;
    bool seen_ = true;
    bool due_ = false;
    bool doubtful_ = false;  ///< The last save had mistakes, which are not shown yet.
    bool close_button_ = false;
    bool side_is_open_ = false;
    std::uint64_t changed_at_ = 0;
    std::uint64_t then_ = 0;  ///< When the prototype last got its time, ms.
};

/// The side settles within so many pictures after a hand did something: what the mouse is over is known one
/// picture later, what opens then is laid out in another.
constexpr int settling_pictures = 3;

}  // namespace dialplate
