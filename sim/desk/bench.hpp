// What lies on the bench and what the person at it has in hand: all that the window's parts show and change.
// The parts change it only between two pictures; what they want done to the document they ask for.
#pragma once

#include "sim/check/check.hpp"
#include "sim/desk/aids.hpp"
#include "sim/desk/card.hpp"
#include "sim/desk/journal.hpp"
#include "sim/desk/keys.hpp"
#include "sim/desk/plan.hpp"
#include "sim/desk/screen.hpp"
#include "sim/desk/weighing.hpp"
#include "sim/desk/workpiece.hpp"
#include "sim/edit/schema.hpp"
#include "sim/edit/session.hpp"
#include "sim/trial/result.hpp"

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// The three ways to be in the window.
enum class Mode { operate, arrange, look };
[[nodiscard]] const char* name_of(Mode mode);

/// A change that a part of the window asks for.
struct Wanted {
    std::vector<Change> changes;
    std::string name;    ///< "move dial"
    std::string stroke;  ///< See Session::change.
    std::optional<Chosen> choose;
};

/// A sentence for the person, until something else happens.
struct Notice {
    std::string words;
    bool bad = false;
};

/// Fingertip that the mouse stands for.
struct Finger {
    double millimetres = 10.0;  ///< Diameter of the pad.
    bool scattered = false;     ///< Lands where a finger would, not where the mouse points.
};

/// What the hand at the mouse is doing, for drawing.
struct Hand {
    std::optional<int> line_x,
        line_y;                ///< Lines that the moving items have caught on, in glass pixels.
    std::optional<Area> band;  ///< Drawn from bare ground around items.
    std::optional<GlassPixel> finger;  ///< Where the finger is on the glass.
    std::vector<Box> sent;             ///< Windows that are outlined now.
};

/// What is remembered from one evening to the next.
struct Habits {
    bool side_open = true;
    /// Open or closed, by title.
    std::map<std::string, bool> sections{
        {"FLASH", false}, {"RAM", false}, {"TIME", false}, {"TRIAL", false}, {"LAYOUT", false}};
    int grid = 4;  ///< Pixels that new places catch on; 0: none.
    Finger finger;
    Aids aids;
    bool bus_speed = false;  ///< Pictures build up as fast as the bus sends them.
    bool show_windows = false;
    std::map<std::string, double>
        screens;  ///< Pixels a millimetre as measured, by Screen::monitor.
};

/// Two versions of the file at once: the session's and the one that somebody else saved.
struct Quarrel {
    std::string theirs;
    bool showing_theirs = false;
};

struct Bench {
    Bench(Workpiece& on_it, Session& work) : piece(on_it), session(work) {}

    Workpiece& piece;
    Session& session;
    std::optional<Schema> schema{};  ///< Absent: not found; then members cannot be changed here.
    FlashWeighing weighing{};
    Mode mode = Mode::operate;
    Plan plan{};
    Screen screen{};
    std::optional<Card> card{};  ///< The screen is being measured.
    Habits habits{};
    Journal journal{};
    std::optional<Ledger> ledger_saved{};  ///< Of the text on disk, to tell differences from.
    std::optional<Quarrel> quarrel{};
    std::optional<std::string> rescued{};       ///< Unsaved text of an earlier run, offered.
    std::unique_ptr<Trial> trial{};             ///< Running, or over and to be looked at.
    std::optional<TrialResult> trial_result{};  ///< Once it is over.
    std::optional<Notice> notice{};
    std::optional<std::size_t> finding{};  ///< Opened in the list.
    std::string lit{};                     ///< Pointer of the item that a finding lights up.
    Hand hand{};
    bool help = false;
    bool leaving = false;  ///< Asked whether to save before it closes.
    std::uint64_t now_ms = 0;

    // Asked for by the parts, done by the desk.
    std::vector<Ordered> orders{};
    std::vector<Wanted> wanted{};

    /// The session's text as a tree, or null while it is no JSON.
    [[nodiscard]] const Node* document();
    /// Whether what is shown is the session's document, so that its items can be taken hold of.
    [[nodiscard]] bool true_to_text() const;
    void order(Order what, int by = 0) { orders.push_back({what, by}); }
    void want(std::vector<Change> changes, std::string name, std::string stroke = {}) {
        wanted.push_back({std::move(changes), std::move(name), std::move(stroke), std::nullopt});
    }

private:
    std::optional<Node> document_{};
    std::optional<std::size_t> document_revision_{};
};

}  // namespace dialplate
