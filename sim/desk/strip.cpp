#include "sim/desk/strip.hpp"

#include "sim/desk/tints.hpp"

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <vector>

namespace dialplate {
namespace {

/// `chosen`, counted around `number` of things in either direction. @pre `number` is not 0.
std::size_t counted_around(int chosen, std::size_t number) {
    const int n = static_cast<int>(number);
    return static_cast<std::size_t>(((chosen % n) + n) % n);
}

/// A word with its number, drawn in a row with others.
struct Count {
    std::size_t number = 0;
    const char* one;
    const char* many;
    Colour colour = 0;
};

class Strip {
public:
    Strip(Canvas& canvas, const Plan& plan, const Faces& faces)
        : canvas_(canvas), faces_(faces), area_(plan.strip), unit_(plan.letter) {}

    void draw(const Status& status) {
        canvas_.fill(area_, tint::strip);
        canvas_.fill({area_.x, area_.y, area_.width, unit_}, tint::strip_line);
        int right = area_.right() - 20 * unit_;
        right = draw_zoom(status, right);
        if (status.flash && status.hint.empty()) right = draw_flash(*status.flash, right);
        const Area room{area_.x + 20 * unit_, area_.y, right - area_.x - 40 * unit_, area_.height};
        if (!status.mistakes.empty())
            draw_mistakes(status, room);
        else if (!status.head.empty())
            draw_task(status, room);
        else if (!status.hint.empty())
            draw_hint(status.hint, room);
        else if (status.findings)
            draw_findings(status, room);
        else
            faces_.small.draw(
                canvas_, room.x, upper(), "FINDINGS", {.ink = tint::quiet, .spacing = 1});
    }

private:
    [[nodiscard]] int upper() const { return area_.y + 13 * unit_; }
    [[nodiscard]] int lower() const { return area_.y + 30 * unit_; }

    /// A dividing line at the left of a cell that ends at `right`; returns the next cell's right end.
    int divide(int left) {
        canvas_.fill({left - 20 * unit_, area_.y + 12 * unit_, unit_, area_.height - 24 * unit_},
                     tint::strip_line);
        return left - 40 * unit_;
    }

    int draw_zoom(const Status& status, int right) {
        const int width =
            std::max(faces_.small.width("F1 HELP", 1), faces_.large.width(status.zoom));
        const int left = right - width;
        faces_.small.draw(canvas_, left, upper(), "F1 HELP", {.ink = tint::quiet, .spacing = 1});
        faces_.large.draw(canvas_, left, lower(), status.zoom, {.ink = tint::engraved});
        return divide(left);
    }

    int draw_flash(const FlashShare& flash, int right) {
        const bool fits = flash.left >= 0;
        const std::string words = fits ? "FLASH LEFT" : "FLASH SHORT OF";
        const std::string bytes = grouped(fits ? flash.left : -flash.left) + " bytes";
        const std::string of = "of " + grouped(flash.capacity);
        const int width = 190 * unit_;
        const int left = right - width;
        faces_.small.draw(canvas_, left, upper(), words, {.ink = tint::quiet, .spacing = 1});
        faces_.small.draw(
            canvas_, right - faces_.small.width(of), upper(), of, {.ink = tint::quiet});
        const Colour ink = fits ? tint::engraved : tint::must;
        const int taken = faces_.large.draw(canvas_, left, lower(), bytes, {.ink = ink});
        // The bar takes the rest of the line.
        const int bar_left = left + taken + 14 * unit_;
        const Area bar{bar_left, lower() + 3 * unit_, right - bar_left, 7 * unit_};
        const std::int64_t whole = std::max(flash.capacity, flash.taken + flash.display);
        const auto part = [&](std::int64_t amount) {
            return static_cast<int>(amount * bar.width / std::max<std::int64_t>(whole, 1));
        };
        canvas_.fill(bar, tint::flash_left);
        canvas_.fill({bar.x, bar.y, part(flash.taken), bar.height}, tint::flash_taken);
        canvas_.fill({bar.x + part(flash.taken), bar.y, part(flash.display), bar.height},
                     fits ? tint::flash_display : tint::must);
        return divide(left);
    }

    void draw_task(const Status& status, const Area& room) {
        faces_.small.draw(canvas_, room.x, upper(), status.head, {.ink = tint::lit, .spacing = 1});
        faces_.large.draw(canvas_,
                          room.x,
                          lower(),
                          faces_.large.fitted(status.hint, room.width),
                          {.ink = tint::engraved});
    }

    /// On two lines if one is too short.
    void draw_hint(const std::string& hint, const Area& room) {
        const Typeface& face = faces_.words;
        std::vector<std::string> lines = face.lines(hint, room.width);
        if (lines.size() > 2) lines = {lines[0], lines[1] + "..."};
        const int height = face.height() + (lines.size() > 1 ? 16 * unit_ : 0);
        int y = area_.y + (area_.height - height) / 2;
        for (const std::string& line : lines) {
            face.draw(canvas_, room.x, y, face.fitted(line, room.width), {.ink = tint::quiet});
            y += 16 * unit_;
        }
    }

    void draw_mistakes(const Status& status, const Area& room) {
        const std::size_t number = status.mistakes.size();
        std::string head = status.mistakes.front().place.line == 0 ? "THE FILE CANNOT BE READ"
                           : number == 1                           ? "THE FILE HAS A MISTAKE"
                                         : "THE FILE HAS " + std::to_string(number) + " MISTAKES";
        if (status.shown_is_old) head += ". SHOWN IS THE LAST GOOD SAVE.";
        mark(room.x, upper(), tint::must);
        faces_.small.draw(canvas_,
                          room.x + 14 * unit_,
                          upper(),
                          faces_.small.fitted(head, room.width - 14 * unit_),
                          {.ink = tint::must, .spacing = 1});
        const Finding& first = status.mistakes[counted_around(status.chosen, number)];
        write_out(first, status.file, room);
    }

    void draw_findings(const Status& status, const Area& room) {
        // What was accepted on purpose is counted and no more; `dialplate check` prints the reasons.
        std::vector<Finding> open;
        std::copy_if(status.findings->begin(),
                     status.findings->end(),
                     std::back_inserter(open),
                     [](const Finding& finding) { return !finding.waived; });
        const auto number = [&](Severity severity) {
            return static_cast<std::size_t>(
                std::count_if(open.begin(), open.end(), [&](const Finding& finding) {
                    return finding.severity == severity;
                }));
        };
        const Count counts[] = {
            {number(Severity::must), "must", "must", tint::must},
            {number(Severity::should), "should", "should", tint::should},
            {number(Severity::note), "note", "notes", tint::note},
            {status.findings->size() - open.size(), "waived", "waived", tint::rule},
        };
        int x = room.x;
        x += faces_.small.draw(canvas_, x, upper(), "FINDINGS", {.ink = tint::quiet, .spacing = 1});
        x += 18 * unit_;
        if (open.empty()) x = draw_count("none", tint::fine, x);
        for (const Count& count : counts)
            if (count.number > 0)
                x = draw_count(std::to_string(count.number) + " " +
                                   (count.number == 1 ? count.one : count.many),
                               count.colour,
                               x);
        if (open.empty()) {
            faces_.large.draw(canvas_,
                              room.x,
                              lower(),
                              faces_.large.fitted("Nothing to mend.", room.width),
                              {.ink = tint::engraved});
            return;
        }
        if (open.size() > 1)
            faces_.small.draw(canvas_,
                              x,
                              upper(),
                              faces_.small.fitted("F: next", std::max(room.right() - x, 0)),
                              {.ink = tint::quiet});
        write_out(open[counted_around(status.chosen, open.size())], status.file, room);
    }

    /// A dot and words; @return where the next may begin.
    int draw_count(const std::string& words, Colour colour, int x) {
        mark(x, upper(), colour);
        x += 12 * unit_;
        x += faces_.small.draw(canvas_, x, upper(), words, {.ink = tint::engraved});
        return x + 18 * unit_;
    }

    /// One finding below: its place and sentence, in the large face if it fits, else in the small one,
    /// on two lines if it must.
    void write_out(const Finding& finding, const std::string& file, const Area& room) {
        std::string place = std::filesystem::path{file}.filename().string();
        if (finding.place.line > 0)
            place += ":" + std::to_string(finding.place.line) + ":" +
                     std::to_string(finding.place.column);
        const std::string words = finding.message + " [" + finding.rule + "]";
        const Typeface& small = faces_.small;
        const int left = room.x + 14 * unit_;
        const int after_place = left + small.width(place) + 12 * unit_;
        const bool large = faces_.large.width(words) <= room.right() - after_place;
        const bool one_line = large || small.width(words) <= room.right() - after_place;
        const Setting ink{.ink = tint::engraved};
        const Setting quiet{.ink = tint::quiet};

        const int base = lower() + faces_.large.ascent();
        const int first = one_line ? base - small.ascent() : lower() - 3 * unit_;
        canvas_.fill({room.x, lower() - 2 * unit_, 3 * unit_, faces_.large.height() + 4 * unit_},
                     colour_of(finding.severity));
        small.draw(canvas_, left, first, place, quiet);
        if (one_line) {
            const Typeface& face = large ? faces_.large : small;
            face.draw(canvas_, after_place, base - face.ascent(), words, ink);
            return;
        }
        const std::string start = small.lines(words, room.right() - after_place).front();
        small.draw(canvas_, after_place, first, start, ink);
        const std::string rest = words.substr(std::min(start.size() + 1, words.size()));
        small.draw(canvas_, left, first + 14 * unit_, small.fitted(rest, room.right() - left), ink);
    }

    /// A dot before a line of small words.
    void mark(int x, int y, Colour colour) {
        canvas_.disc({x + 3.5 * unit_, y + faces_.small.ascent() / 2.0, 3.5 * unit_}, colour);
    }

    Canvas& canvas_;
    const Faces& faces_;
    Area area_;
    int unit_;
};

}  // namespace

std::string grouped(std::int64_t number) {
    std::string digits = std::to_string(number < 0 ? -number : number);
    for (int at = static_cast<int>(digits.size()) - 3; at > 0; at -= 3)
        digits.insert(static_cast<std::size_t>(at), " ");
    return number < 0 ? "-" + digits : digits;
}

void draw_strip(Canvas& canvas, const Plan& plan, const Faces& faces, const Status& status) {
    Strip(canvas, plan, faces).draw(status);
}

}  // namespace dialplate
