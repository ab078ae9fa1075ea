// One evening's work on a layout document: its text, what was done to it, and what is chosen on the page.
// Plain values; no window, no files.
#pragma once

#include "sim/layout/finding.hpp"

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <vector>

namespace dialplate {

/// JSON Pointers of the chosen items, in the order in which they were chosen.
using Chosen = std::vector<std::string>;

class Session {
public:
    Session() = default;
    /// @param text      The document as it is on disk.
    /// @param revision  To count on from: what is remembered of an earlier document by its revision is not
    ///                  taken for this one's.
    explicit Session(std::string text, std::size_t revision = 0)
        : text_(text), saved_(std::move(text)), revision_(revision) {}

    [[nodiscard]] const std::string& text() const { return text_; }
    /// What is on disk, as far as the session was told.
    [[nodiscard]] const std::string& saved() const { return saved_; }
    [[nodiscard]] bool changed() const { return text_ != saved_; }
    /// Grows with every change of the text, undone ones included.
    [[nodiscard]] std::size_t revision() const { return revision_; }

    /// Makes changes to the document as one step (sim/layout/amend.hpp). Nothing happens when they come to
    /// nothing.
    /// @param name    What was done, for the lists of undo and redo: "move dial".
    /// @param stroke  Steps of the same stroke, one after the other, are one: a drag, a held arrow key. Empty:
    ///                a step of its own.
    /// @param objection  Is asked whether the new text will do; returns why not, and nothing is changed.
    /// @return Empty, or why nothing was changed: one sentence.
    using Objection = std::function<std::string(const std::string& text)>;
    std::string change(std::span<const Change> changes,
                       const std::string& name,
                       const std::string& stroke = {},
                       const Objection& objection = {});
    /// Puts another text in the document's place, as one step.
    /// @return Empty, or the objection.
    std::string replace(std::string text,
                        const std::string& name,
                        const std::string& stroke = {},
                        const Objection& objection = {});
    /// The next step begins a new stroke, whatever it is called.
    void end_stroke() { stroke_.clear(); }

    [[nodiscard]] bool can_undo() const { return done_ > 0; }
    [[nodiscard]] bool can_redo() const { return done_ < steps_.size(); }
    /// What undo() would take back. @pre can_undo()
    [[nodiscard]] const std::string& undo_name() const { return steps_[done_ - 1].name; }
    [[nodiscard]] const std::string& redo_name() const { return steps_[done_].name; }
    void undo();
    void redo();

    /// The text is on disk now.
    void mark_saved() { saved_ = text_; }
    /// Something else is on disk now; the session's own text stays.
    void mark_saved(std::string on_disk) { saved_ = std::move(on_disk); }

    [[nodiscard]] const Chosen& chosen() const { return chosen_; }
    void choose(Chosen items) { chosen_ = std::move(items); }
    [[nodiscard]] bool has_chosen(const std::string& pointer) const;
    /// Adds an item to those that are chosen, or takes it away.
    void choose_also(const std::string& pointer);

private:
    /// One step: at one place, some bytes became others.
    struct Step {
        std::string name;
        std::size_t at = 0;
        std::string was, is;
        Chosen chosen_before, chosen_after;
    };

    void take(std::string text, const std::string& name, const std::string& stroke);

    std::string text_, saved_;
    std::vector<Step> steps_;
    std::size_t done_ = 0;  ///< Steps that are in the text; those behind can be done again.
    std::size_t revision_ = 0;
    std::string stroke_;
    Chosen chosen_;
};

}  // namespace dialplate
