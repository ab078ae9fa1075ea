#include "sim/prove/proof.hpp"

#include "sim/emit/emission.hpp"
#include "sim/ledger/ledger.hpp"
#include "sim/prove/board.hpp"
#include "sim/prove/budget.hpp"
#include "sim/prove/play_steps.hpp"
#include "sim/prove/proof_firmware.hpp"
#include "sim/prove/weigh_display.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <future>

namespace dialplate {
namespace {

/// A directory that goes when this goes.
class OwnDirectory {
public:
    OwnDirectory() {
        std::string name =
            (std::filesystem::temp_directory_path() / "dialplate-prove-XXXXXX").string();
        if (mkdtemp(name.data()) != nullptr) path_ = name;
    }
    ~OwnDirectory() {
        std::error_code ignored;
        if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
    }
    OwnDirectory(const OwnDirectory&) = delete;
    OwnDirectory& operator=(const OwnDirectory&) = delete;
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

bool fits_nowhere(const Ledger& ledger) {
    return ledger.flash.total.value > ledger.flash.capacity.value;
}

std::string why_not_built(const std::string& complaint,
                          const Layout& layout,
                          const Ledger& ledger) {
    // GNU ld's words, "region `text' overflowed" and "will not fit in region `text'".
    const bool too_large = complaint.find("region `text'") != std::string::npos;
    if (!too_large) return "the firmware does not compile: " + complaint;
    return "the firmware, with the loop that takes the bench's orders, is larger than the part; " +
           flash_account(ledger, ledger.flash.total.value) + "; " + what_to_drop(layout, ledger);
}

std::vector<ProvenTime> against(const std::vector<MeasuredTime>& measured, const Ledger& ledger) {
    std::vector<ProvenTime> times;
    for (const MeasuredTime& time : measured) {
        const auto known =
            std::find_if(ledger.time.begin(), ledger.time.end(), [&](const EventTime& predicted) {
                return predicted.event == time.event;
            });
        times.push_back(
            {.event = time.event,
             .predicted =
                 known == ledger.time.end() ? std::nullopt : std::optional<Cycles>(known->cycles),
             .measured = Cycles{static_cast<std::int64_t>(time.cycles)},
             .bus_alone = known == ledger.time.end()
                              ? 0.0
                              : known->share_of_limit * static_cast<double>(known->cycles.value)});
    }
    return times;
}

/// What one board was found to do.
struct Run {
    Comparison compared;
    BusFaults faults;
    std::vector<MeasuredTime> times;
    std::optional<Pictures> pictures;
};

Run run_on(Board& board,
           const Layout& layout,
           const BuiltImage& built,
           const ProofOptions& options,
           Share share) {
    Run run;
    LockStep both(layout, built, board, sheet_of(layout, built));
    both.start();
    if (options.play) {
        play_steps(both, layout, *options.play);
    } else {
        run.times = play_scenario(both, layout, built, options.scenario, share);
    }
    run.compared = both.result();
    run.faults = board.faults();
    if (!both.going()) {
        run.pictures = Pictures{.width = layout.glass_width(),
                                .height = layout.glass_height(),
                                .expected = both.expected_glass(),
                                .actual = both.actual_glass()};
    }
    return run;
}

/// Of two that went wrong, the first is told of.
void add(Run& sum, Run more) {
    Comparison &to = sum.compared, &from = more.compared;
    if (!to.first && to.trouble.empty()) {
        to.first = from.first;
        to.trouble = from.trouble;
        sum.pictures = std::move(more.pictures);
    }
    to.frames += from.frames;
    to.services += from.services;
    to.bytes += from.bytes;
    to.pixels_different += from.pixels_different;
    to.bytes_different += from.bytes_different;
    to.unknown_commands += from.unknown_commands;
    to.bad_windows += from.bad_windows;
    to.stray_bytes += from.stray_bytes;
    to.short_windows += from.short_windows;
    to.stack = std::max(to.stack, from.stack);
    sum.faults.collisions += more.faults.collisions;
    sum.faults.overruns += more.faults.overruns;
    sum.faults.edges_while_shifting += more.faults.edges_while_shifting;
    sum.times.insert(sum.times.end(), more.times.begin(), more.times.end());
}

void weigh(
    Proof& proof, const FirmwareSize& size, int stack, const Layout& layout, const Ledger& ledger) {
    proof.flash_predicted = ledger.flash.total.value;
    proof.flash_linked = size.flash;
    proof.flash_room = flash_room(ledger);
    proof.ram_predicted = ledger.ram.total.value;
    proof.ram_measured = size.data + stack;
    proof.ram_room = ram_room(ledger);
    if (proof.flash_linked > proof.flash_room) {
        proof.over_budget =
            flash_account(ledger, proof.flash_linked) + "; " + what_to_drop(layout, ledger);
    }
    if (proof.ram_measured > proof.ram_room) {
        proof.over_budget +=
            (proof.over_budget.empty() ? "" : "; ") + ram_account(ledger, proof.ram_measured);
    }
}

}  // namespace

std::int64_t Proof::bus_faults() const {
    return faults.total() + compared.unknown_commands + compared.bad_windows +
           compared.stray_bytes + compared.short_windows;
}

bool Proof::ok() const {
    return refusal.empty() && compared.trouble.empty() && !compared.first &&
           compared.bytes_different == 0 && compared.pixels_different == 0 && bus_faults() == 0 &&
           over_budget.empty();
}

Proof prove(const Toolchain& toolchain,
            const Layout& layout,
            const BuiltImage& built,
            const ProofOptions& options,
            const Planted& planted) {
    Proof proof;
    proof.layout = layout.file;
    proof.toolchain = toolchain.version;
    if (!can_simulate(layout.mcu)) {
        proof.refusal =
            "proofs run on the ATmega328P and the ATmega2560, not on the " + layout.mcu.name;
        return proof;
    }
    const Ledger ledger = account(layout, built);
    if (const auto refusal = cannot_emit(layout, built, Example::driver)) {
        proof.refusal = refusal->why;
    }
    if (fits_nowhere(ledger)) {
        const std::string account = flash_account(ledger, ledger.flash.total.value);
        // A refused image has its greatest parts named already.
        proof.refusal = proof.refusal.empty() ? account + "; " + what_to_drop(layout, ledger)
                                              : proof.refusal + "; " + account;
    }
    if (!proof.refusal.empty()) return proof;
    const OwnDirectory directory;
    const BuiltImage& in_firmware = planted.image != nullptr ? *planted.image : built;
    std::vector<EmittedFile> code = emit(layout, in_firmware, Example::driver).files;
    if (planted.change) planted.change(code);
    if (directory.path().empty() || !write_code(code, directory.path())) {
        proof.refusal = "no temporary directory can be made and written";
        return proof;
    }
    // Beside the proof's own compilation and run.
    std::future<std::string> weights;
    if (options.weigh) {
        weights = std::async(std::launch::async, [&] {
            return build_weights(toolchain, layout, in_firmware, directory.path());
        });
    }
    const std::filesystem::path elf = directory.path() / "proof.elf";
    const std::string complaint = build_proof_firmware(toolchain, layout, in_firmware, elf);
    if (!complaint.empty()) {
        proof.refusal = why_not_built(complaint, layout, ledger);
        return proof;
    }
    // Loaded one after the other: only then is the simulator's library used twice at a time.
    const bool two = options.two_boards && !options.play;
    Board board(board_for(layout)), other_board(board_for(layout));
    for (Board* one : {&board, &other_board}) {
        if (one == &other_board && !two) break;
        if (const auto wrong = one->load(elf)) {
            proof.refusal = *wrong;
            return proof;
        }
    }
    const auto run = [&](Board& on, Share share) {
        return run_on(on, layout, built, options, share);
    };
    std::future<Run> other;
    if (two)
        other =
            std::async(std::launch::async, run, std::ref(other_board), Share::tuning_and_mixture);
    Run found = run(board, two ? Share::pages_keys_and_values : Share::all);
    if (two) add(found, other.get());
    proof.time = against(found.times, ledger);
    proof.compared = found.compared;
    proof.faults = found.faults;
    proof.pictures = std::move(found.pictures);
    if (options.weigh) {
        if (const std::string wrong = weights.get(); !wrong.empty()) {
            proof.refusal = why_not_built(wrong, layout, ledger);
            return proof;
        }
        weigh(proof, weight(layout, directory.path()), proof.compared.stack, layout, ledger);
    }
    return proof;
}

}  // namespace dialplate
