// The side of the window: ledger, findings, the chosen item, what was heard and sent; and what lies over the
// bench, such as the grips of chosen items and the help sheet. Made with Dear ImGui.
#pragma once

#include "sim/desk/bench.hpp"
#include "sim/desk/brush.hpp"
#include "sim/desk/front.hpp"
#include "sim/desk/lettering.hpp"

#include <cstdint>
#include <string>
#include <vector>

struct SDL_Window;
union SDL_Event;

namespace dialplate {

struct SideFrame;

class Side {
public:
    Side() = default;
    ~Side();
    Side(const Side&) = delete;
    Side& operator=(const Side&) = delete;

    void open(SDL_Window* window);

    /// The window has another size, or its words have: the faces are set anew.
    /// @return An empty reason, or why it cannot draw.
    std::string hold(Canvas& canvas, const Faces& faces, int unit);

    /// Takes notice of what a hand did.
    void handle(const SDL_Event& event);
    /// Whether the mouse, at this place, or the keyboard belongs to the side.
    [[nodiscard]] bool has_mouse(const Plan& plan, int x, int y) const;
    [[nodiscard]] bool has_keyboard() const;
    /// Whether something is being typed: then even the keys of the whole window go there.
    [[nodiscard]] bool is_typing() const;
    void take_keyboard();
    void give_keyboard();

    /// Prepares the next picture of the side.
    /// @param over  Draws over the bench, below the side.
    void prepare(Bench& bench);

    /// What of the prepared picture differs from the one that was drawn last.
    [[nodiscard]] std::vector<Area> changed() const;
    /// Draws it on the canvas, as far as it lies in `part`.
    void draw(const Area& part);
    /// After all parts were drawn: they are what is seen now.
    void drawn();

private:
    /// One layer as it was prepared.
    struct Layer {
        std::uint64_t print = 0;
        Area area;
    };
    void draw_side(SideFrame& side);
    void draw_handle(SideFrame& side);
    /// Questions and notices while the side that they belong to is closed.
    void draw_asked_alone(SideFrame& side);
    [[nodiscard]] std::vector<Layer> layers() const;

    Brush brush_;
    Lettering type_;
    int unit_ = 1;
    bool open_ = false;
    bool keyboard_ = false;  ///< Taken on purpose: arrow keys go from field to field.
    bool want_keyboard_ = false, drop_keyboard_ = false;
    std::vector<Layer> seen_;
    Area asked_;  ///< Of the questions, while they stand alone.
};

}  // namespace dialplate
