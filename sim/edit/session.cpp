#include "sim/edit/session.hpp"

#include "sim/layout/amend.hpp"

#include <algorithm>
#include <utility>

namespace dialplate {

std::string Session::change(std::span<const Change> changes,
                            const std::string& name,
                            const std::string& stroke,
                            const Objection& objection) {
    Amended amended = amend(text_, changes);
    if (!amended.text) return amended.mistake;
    return replace(std::move(*amended.text), name, stroke, objection);
}

std::string Session::replace(std::string text,
                             const std::string& name,
                             const std::string& stroke,
                             const Objection& objection) {
    if (objection && text != text_)
        if (std::string reason = objection(text); !reason.empty()) return reason;
    take(std::move(text), name, stroke);
    return {};
}

void Session::take(std::string text, const std::string& name, const std::string& stroke) {
    if (text == text_) return;
    // A stroke goes on where its last step began: the whole drag is one difference.
    const bool goes_on = !stroke.empty() && stroke == stroke_ && done_ > 0;
    Step step;
    step.name = name;
    step.chosen_before = step.chosen_after = chosen_;
    std::string before = text_;
    if (goes_on) {
        const Step& last = steps_[done_ - 1];
        before.replace(last.at, last.is.size(), last.was);
        step.chosen_before = last.chosen_before;
        --done_;
    }
    steps_.resize(done_);
    stroke_ = stroke;
    ++revision_;
    text_ = std::move(text);
    if (text_ == before) return;  // The drag came back to where it began.

    const std::size_t shorter = std::min(before.size(), text_.size());
    while (step.at < shorter && before[step.at] == text_[step.at])
        ++step.at;
    std::size_t tail = 0;
    while (tail < shorter - step.at &&
           before[before.size() - 1 - tail] == text_[text_.size() - 1 - tail])
        ++tail;
    step.was = before.substr(step.at, before.size() - tail - step.at);
    step.is = text_.substr(step.at, text_.size() - tail - step.at);
    steps_.push_back(std::move(step));
    done_ = steps_.size();
}

void Session::undo() {
    if (!can_undo()) return;
    Step& step = steps_[--done_];
    step.chosen_after = std::exchange(chosen_, step.chosen_before);
    text_.replace(step.at, step.is.size(), step.was);
    stroke_.clear();
    ++revision_;
}

void Session::redo() {
    if (!can_redo()) return;
    Step& step = steps_[done_++];
    step.chosen_before = std::exchange(chosen_, step.chosen_after);
    text_.replace(step.at, step.was.size(), step.is);
    stroke_.clear();
    ++revision_;
}

bool Session::has_chosen(const std::string& pointer) const {
    return std::find(chosen_.begin(), chosen_.end(), pointer) != chosen_.end();
}

void Session::choose_also(const std::string& pointer) {
    const auto found = std::find(chosen_.begin(), chosen_.end(), pointer);
    if (found == chosen_.end())
        chosen_.push_back(pointer);
    else
        chosen_.erase(found);
}

}  // namespace dialplate
