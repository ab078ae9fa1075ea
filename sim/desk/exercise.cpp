#include "sim/desk/exercise.hpp"

#include "sim/edit/rescue.hpp"

#include <ctime>
#include <filesystem>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

std::string now_in_words() {
    const std::time_t now = std::time(nullptr);
    std::tm utc{};
    gmtime_r(&now, &utc);
    char words[32];
    std::strftime(words, sizeof words, "%Y-%m-%dT%H:%M:%SZ", &utc);
    return words;
}

/// NAME-trial-1.json beside NAME.json, or the first number that is free.
fs::path free_name_beside(const fs::path& layout_file) {
    for (int number = 1;; ++number) {
        fs::path file = layout_file.parent_path() / (layout_file.stem().string() + "-trial-" +
                                                     std::to_string(number) + ".json");
        std::error_code fault;
        if (!fs::exists(file, fault)) return file;
    }
}

}  // namespace

Situation situation_of(const Bench& bench) {
    const Prototype& prototype = *bench.piece.prototype();
    Situation now{prototype.page(), {}};
    for (std::size_t i = 0; i < bench.piece.layout().values.size(); ++i)
        now.values.push_back(prototype.get(static_cast<ValueId>(i)));
    return now;
}

void Exercise::start() {
    bench_.piece.prototype()->show_page(0);
    bench_.trial_result.reset();
    bench_.trial = std::make_unique<Trial>(bench_.piece.layout(), ++seed_);
    const std::string& file = bench_.piece.file();
    bench_.trial_ground = {.file = file,
                           .text = bench_.piece.text(),
                           .setting = {.layout_file = fs::path(file).filename().string(),
                                       .date = now_in_words(),
                                       .finger_mm = bench_.habits.finger.millimetres,
                                       .scattered = bench_.habits.finger.scattered}};
    bench_.trial->begin(situation_of(bench_), bench_.now_ms);
    bench_.habits.sections["TRIAL"] = true;
    bench_.notice.reset();
    bench_.mode = Mode::operate;
    if (bench_.trial->task() != nullptr) return;
    bench_.trial.reset();
    bench_.notice =
        Notice{"No trial: this layout has no key that sets or turns anything, and no dial.", true};
}

bool Exercise::look() {
    if (!bench_.trial || bench_.trial->task() == nullptr) return false;
    if (bench_.habits.finger.scattered) bench_.trial_ground.setting.scattered = true;
    if (bench_.mode == Mode::arrange) {
        leave();
        return true;
    }
    if (!bench_.trial->look(situation_of(bench_), bench_.now_ms)) return false;
    if (bench_.trial->task() == nullptr) finish();
    return true;
}

void Exercise::leave() {
    if (!bench_.trial || bench_.trial->task() == nullptr) return;
    bench_.trial->leave(bench_.now_ms);
    finish();
}

void Exercise::leave_or_clear() {
    if (bench_.trial && bench_.trial->task() != nullptr) return leave();
    bench_.trial.reset();
    bench_.trial_result.reset();
}

void Exercise::interrupt() {
    if (!bench_.trial || bench_.trial->task() == nullptr) return;
    leave();
    bench_.notice = Notice{"The trial is over: the layout changed.", false};
}

void Exercise::finish() {
    // One that was left before anything was done tells nothing.
    if (bench_.trial->touches().empty() && bench_.trial->done() == 0)
        bench_.trial.reset();
    else
        bench_.trial_result = result_of(*bench_.trial);
}

void Exercise::save() {
    if (!bench_.trial_result) return;
    const fs::path file = free_name_beside(bench_.trial_ground.file);
    const std::string trouble =
        write_whole(file.string(), written(*bench_.trial, bench_.trial_ground.setting));
    bench_.notice = trouble.empty()
                        ? Notice{"The trial is in " + file.filename().string() + ".", false}
                        : Notice{"Not saved: " + trouble, true};
}

}  // namespace dialplate
