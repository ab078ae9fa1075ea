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
#include "sim/edit/first_values.hpp"
#include "sim/edit/naming.hpp"
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
    std::optional<Chosen> choose{};
    std::optional<std::string> text{};  ///< In place of changes: the document as it shall be.
    std::string member{};               ///< Pointer of the member at which a refusal is shown.
    std::optional<int> page{};          ///< To be shown then.
};

/// A change that the reader would not have, shown where it was tried.
struct Refusal {
    std::string member;  ///< Its pointer.
    std::string words;
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

/// The grid that new places catch on.
struct Grid {
    bool on = true;
    bool in_millimetres = false;
    int pixels = 4;            ///< 2..64
    double millimetres = 1.0;  ///< 0.5..20
};

/// What is remembered from one evening to the next.
struct Habits {
    bool side_open = true;
    /// Open or closed, by title.
    std::map<std::string, bool> sections{{"FLASH", false},
                                         {"RAM", false},
                                         {"TIME", false},
                                         {"TRIAL", false},
                                         {"LAYOUT", false},
                                         {"PAINTS", false},
                                         {"FACES", false},
                                         {"LOOKS", false},
                                         {"VALUES", false}};
    Grid grid;
    Finger finger;
    Aids aids;
    bool bus_speed = false;  ///< Pictures build up as fast as the bus sends them.
    bool show_windows = false;
    std::map<std::string, double>
        screens;  ///< Pixels a millimetre as measured, by MeasuredScreen::monitor.
};

/// Two versions of the file at once: the session's and the one that somebody else saved.
struct Quarrel {
    std::string theirs;
    bool showing_theirs = false;
};

/// The account of what is on disk.
struct SavedAccount {
    FlashAccount flash;
    RamAccount ram;
    std::vector<std::string> faces;  ///< Their names; the layout may have others by now.
    std::vector<EventTime> time;
};

/// What a trial was made on.
struct TrialGround {
    std::string file, text;  ///< Of the layout.
    TrialSetting setting;
};

struct Bench {
    Bench(Workpiece& on_it, Session& work) : piece(on_it), session(work) {}

    Workpiece& piece;
    Session& session;
    std::optional<Schema> schema{};  ///< Absent: not found; then members cannot be changed here.
    FlashWeighing weighing{};
    Mode mode = Mode::operate;
    Plan plan{};
    MeasuredScreen screen{};
    std::optional<Card> card{};  ///< The screen is being measured.
    Habits habits{};
    Journal journal{};
    std::optional<SavedAccount> saved{};  ///< Of the text on disk, to tell differences from.
    std::optional<Quarrel> quarrel{};
    std::optional<std::string> rescued{};       ///< Unsaved text of an earlier run, offered.
    std::unique_ptr<Trial> trial{};             ///< Running, or over and to be looked at.
    std::optional<TrialResult> trial_result{};  ///< Once it is over.
    TrialGround trial_ground{};
    std::optional<Notice> notice{};
    std::optional<Refusal> refusal{};
    std::string unfold{};                  ///< Pointer of a thing that the side shall open next.
    std::optional<std::size_t> finding{};  ///< Opened in the list.
    std::string lit{};                     ///< Pointer of the item that a finding lights up.
    Hand hand{};
    bool help = false;
    bool drawer =
        false;  ///< The side is drawn out over the bench, in a window too narrow for both.
    bool leaving = false;  ///< Asked whether to save before it closes.
    std::uint64_t now_ms = 0;

    // Asked for by the parts, done by the desk.
    std::vector<Ordered> orders{};
    std::vector<Wanted> wanted{};

    /// The session's text as a tree, or null while it is no JSON.
    [[nodiscard]] const Node* document();
    /// Whether what is shown is the session's document, so that its items can be taken hold of.
    [[nodiscard]] bool true_to_text() const;
    /// The account that is shown is that of the text on disk.
    void note_saved();
    /// Where each name of the document is used. @pre document() and schema
    [[nodiscard]] const NameUses& uses();
    /// What new members and things are made from. @pre document() and schema
    [[nodiscard]] Grounds grounds();

    void order(Order what, int by = 0) { orders.push_back({what, by}); }
    void want(std::vector<Change> changes, std::string name, std::string stroke = {}) {
        Wanted one;
        one.changes = std::move(changes);
        one.name = std::move(name);
        one.stroke = std::move(stroke);
        wanted.push_back(std::move(one));
    }
    /// Wants another text in the document's place, or shows at a member why there can be none.
    void want(Amended amended, std::string name, const std::string& member);

private:
    std::optional<Node> document_{};
    std::optional<std::size_t> document_revision_{};
    NameUses uses_{};
    std::optional<std::size_t> uses_revision_{};
};

}  // namespace dialplate
