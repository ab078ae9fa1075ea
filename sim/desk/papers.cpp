#include "sim/desk/papers.hpp"

#include "sim/edit/json_words.hpp"
#include "sim/edit/naming.hpp"
#include "sim/edit/rescue.hpp"
#include "sim/layout/amend.hpp"

#include <algorithm>
#include <filesystem>
#include <utility>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

/// A crash takes this much at most.
constexpr std::uint64_t between_rescues_ms = 700;

std::string ending_of(const std::string& file) {
    std::string ending = fs::path(file).extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(), [](unsigned char c) {
        return static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
    });
    return ending;
}

/// A file as the layout would name it: beside the layout by its name, else by its whole path.
std::string named_from(const std::string& layout_file, const std::string& file) {
    std::error_code fault;
    const fs::path folder = fs::absolute(layout_file, fault).parent_path();
    const fs::path whole = fs::absolute(file, fault);
    return whole.parent_path() == folder ? whole.filename().string() : whole.string();
}

}  // namespace

void Papers::open() {
    Workpiece& piece = bench_.piece;
    const std::optional<std::string> text = piece.read();
    bench_.session = Session(text.value_or(""), bench_.session.revision() + 1);
    if (text) piece.show(*text);
    kept_ = false;
    kept_revision_ = 0;
    bench_.quarrel.reset();
    bench_.rescued.reset();
    bench_.saved.reset();
    if (const std::optional<Rescue> rescue = kept(piece.file())) {
        if (text && rescue->text != *text)
            bench_.rescued = rescue->text;
        else
            forget(piece.file());
    }
}

void Papers::show_own() {
    bench_.piece.show(bench_.session.text());
}

bool Papers::read_again() {
    Workpiece& piece = bench_.piece;
    Session& session = bench_.session;
    const std::optional<std::string> text = piece.read();
    bench_.weighing.forget();
    if (!text) return false;
    if (*text == session.text()) {
        // Saved by this window, or to the same effect; or a font or a picture is another.
        session.mark_saved();
        bench_.quarrel.reset();
        return piece.show(*text);
    }
    if (session.changed()) {
        if (*text == session.saved()) return piece.show(session.text());
        bench_.quarrel = Quarrel{*text, false};
        return true;
    }
    session.replace(*text, "save by another program");
    session.mark_saved();
    session.choose({});
    return piece.show(*text);
}

std::string Papers::change(Wanted& wanted) {
    if (bench_.quarrel && bench_.quarrel->showing_theirs)
        return "theirs is shown; choose between the two versions first";
    const auto objection = [&](const std::string& text) {
        return bench_.piece.mistakes().empty() ? bench_.piece.try_to_show(text)
                                               : bench_.piece.show_if_better(text);
    };
    Session& session = bench_.session;
    const std::string refusal =
        wanted.text
            ? session.replace(std::move(*wanted.text), wanted.name, wanted.stroke, objection)
            : session.change(wanted.changes, wanted.name, wanted.stroke, objection);
    bench_.refusal.reset();
    if (!refusal.empty() && !wanted.member.empty())
        bench_.refusal = Refusal{wanted.member, refusal};
    if (!refusal.empty()) return refusal;
    if (wanted.choose) bench_.session.choose(std::move(*wanted.choose));
    bench_.notice.reset();
    return {};
}

void Papers::obey(const Ordered& ordered) {
    Session& session = bench_.session;
    switch (ordered.order) {
        case Order::save:
            save();
            break;
        case Order::undo:
            session.undo();
            show_own();
            break;
        case Order::redo:
            session.redo();
            show_own();
            break;
        case Order::restore:
            if (!bench_.rescued) break;
            session.replace(*std::exchange(bench_.rescued, {}), "restore unsaved changes");
            show_own();
            break;
        case Order::give_up:
            bench_.rescued.reset();
            forget(bench_.piece.file());
            break;
        case Order::keep_mine: {
            if (!bench_.quarrel) break;
            // Undo leads to theirs: nothing is lost by the choice.
            const std::string mine = session.text();
            session.replace(bench_.quarrel->theirs, "save by another program");
            session.replace(mine, "keep mine");
            session.mark_saved(std::move(bench_.quarrel->theirs));
            bench_.quarrel.reset();
            show_own();
            break;
        }
        case Order::take_theirs:
            if (!bench_.quarrel) break;
            session.replace(std::move(bench_.quarrel->theirs), "take theirs");
            session.mark_saved();
            session.choose({});
            bench_.quarrel.reset();
            show_own();
            break;
        case Order::show_theirs:
            if (!bench_.quarrel) break;
            bench_.quarrel->showing_theirs = ordered.by != 0;
            if (ordered.by != 0)
                bench_.piece.show(bench_.quarrel->theirs);
            else
                show_own();
            break;
        default:
            break;
    }
}

void Papers::save() {
    Session& session = bench_.session;
    if (bench_.quarrel) {
        bench_.notice = Notice{"Not saved: choose between the two versions first.", true};
        return;
    }
    if (!session.changed()) {
        bench_.notice = Notice{"Nothing to save: the file is as it is shown.", false};
        return;
    }
    // Somebody may have saved within the last moment.
    if (const std::optional<std::string> there = bench_.piece.read();
        there && *there != session.saved() && *there != session.text()) {
        bench_.quarrel = Quarrel{*there, false};
        return;
    }
    const std::string trouble = write_whole(bench_.piece.file(), session.text());
    if (!trouble.empty()) {
        bench_.notice = Notice{"Not saved: " + trouble, true};
        return;
    }
    session.mark_saved();
    session.end_stroke();
    bench_.note_saved();
    forget(bench_.piece.file());
    kept_ = false;
    bench_.notice.reset();
}

void Papers::keep_rescue(std::uint64_t now_ms) {
    Session& session = bench_.session;
    if (!session.changed()) {
        if (std::exchange(kept_, false) && !bench_.rescued) forget(bench_.piece.file());
        return;
    }
    if (kept_ && kept_revision_ == session.revision()) return;
    if (now_ms - kept_at_ < between_rescues_ms) return;
    // What an earlier run left is still on offer: it moves into this session's steps instead of being lost.
    if (bench_.rescued) {
        const std::string mine = session.text();
        session.replace(*std::exchange(bench_.rescued, {}), "unsaved changes of the last time");
        session.replace(mine, "back to these");
    }
    kept_at_ = now_ms;
    kept_ = keep({bench_.piece.file(), session.saved(), session.text()});
    kept_revision_ = session.revision();
}

void Papers::give_up() {
    forget(bench_.piece.file());
    kept_ = false;
}

void Papers::dropped(const std::string& file) {
    const std::string ending = ending_of(file);
    if (ending == ".json") {
        if (bench_.session.changed()) {
            bench_.notice =
                Notice{"Save or undo your changes before opening another layout.", true};
            return;
        }
        bench_.piece.move_to(file);
        const bool exercising = bench_.trial && bench_.trial->task() != nullptr;
        bench_.trial.reset();
        bench_.trial_result.reset();
        bench_.notice.reset();
        if (exercising) bench_.notice = Notice{"The trial is over: the layout changed.", false};
        return open();
    }
    if (bench_.piece.prototype() == nullptr || !bench_.true_to_text()) return;
    if (ending == ".ttf" || ending == ".otf" || ending == ".bdf") return add_face(file);
    if (ending == ".png") return add_picture(file);
    bench_.notice = Notice{"\"" + fs::path(file).filename().string() +
                               "\" is neither a layout (.json) nor a font (.ttf, .otf, .bdf) nor a "
                               "picture (.png).",
                           true};
}

void Papers::add_face(const std::string& file) {
    const std::string name = shortened(fs::path(file).stem().string(), 40);
    const std::string tried = free_name(*bench_.document(), Shape::Kind::face, name);
    // The size of a BDF's strike stands in its name more often than not.
    int size = 16;
    if (const std::size_t digits = name.find_first_of("0123456789"); digits != std::string::npos)
        size = std::clamp(std::atoi(name.c_str() + digits), 4, 255);
    const std::string face = "{\"file\": " + json_text(named_from(bench_.piece.file(), file)) +
                             ", \"size\": " + std::to_string(size) + "}";
    const bool there = written_at(bench_.session.text(), "/faces").has_value();
    Wanted wanted{{{Change::Kind::add,
                    there ? "/faces" + pointer_part(tried) : "/faces",
                    there ? face : "{\n  " + json_text(tried) + ": " + face + "\n}"}},
                  "new face " + tried,
                  {},
                  std::nullopt};
    const std::string refusal = change(wanted);
    bench_.notice =
        refusal.empty()
            ? Notice{"There is a face \"" + tried + "\" now; items can choose it.", false}
            : Notice{"Not done: " + refusal, true};
}

void Papers::add_picture(const std::string& file) {
    const Layout& layout = bench_.piece.layout();
    const int page = bench_.piece.prototype()->page();
    const std::string list = "/pages/" + std::to_string(page) + "/items";
    const std::size_t count = layout.pages[static_cast<std::size_t>(page)].items.size();
    Wanted wanted{{{Change::Kind::add,
                    list + "/-",
                    "{\"kind\": \"picture\", \"at\": [0, 0], \"file\": " +
                        json_text(named_from(bench_.piece.file(), file)) + ", \"ink\": " +
                        json_text(layout.paints[layout.paints.size() > 1 ? 1 : 0].name) + "}"}},
                  "new picture",
                  {},
                  Chosen{list + "/" + std::to_string(count)}};
    const std::string refusal = change(wanted);
    if (!refusal.empty()) bench_.notice = Notice{"Not done: " + refusal, true};
}

}  // namespace dialplate
