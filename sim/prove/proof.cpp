#include "sim/prove/proof.hpp"

#include "sim/emit/emission.hpp"
#include "sim/ledger/ledger.hpp"
#include "sim/prove/board.hpp"
#include "sim/prove/proof_firmware.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>

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

int flash_of(const std::filesystem::path& elf, const BoardOptions& options) {
    Board board(options);
    if (board.load(elf)) return 0;
    return board.size().flash;
}

}  // namespace

std::int64_t Proof::bus_faults() const {
    return faults.total() + compared.unknown_commands + compared.bad_windows +
           compared.stray_bytes + compared.short_windows;
}

bool Proof::ok() const {
    return refusal.empty() && compared.trouble.empty() && !compared.first &&
           compared.bytes_different == 0 && compared.pixels_different == 0 && bus_faults() == 0 &&
           flash_left >= 0 && ram_left >= 0;
}

Proof prove(const Toolchain& toolchain,
            const Layout& layout,
            const BuiltImage& on_pc,
            const BuiltImage& in_firmware,
            const ScenarioOptions& options) {
    Proof proof;
    proof.layout = layout.file;
    proof.toolchain = toolchain.version;
    if (!can_simulate(layout.mcu)) {
        proof.refusal =
            "proofs run on the ATmega328P and the ATmega2560, not on the " + layout.mcu.name;
        return proof;
    }
    if (const auto refusal = cannot_emit(layout, in_firmware, Example::driver)) {
        proof.refusal = refusal->why;
        return proof;
    }
    const OwnDirectory directory;
    if (directory.path().empty()) {
        proof.refusal = "no temporary directory can be made";
        return proof;
    }
    const BuiltFirmware firmware =
        build_proof_firmware(toolchain, layout, in_firmware, directory.path());
    if (!firmware.complaint.empty()) {
        proof.refusal = "the firmware does not compile: " + firmware.complaint;
        return proof;
    }
    const BoardOptions board_options = board_for(layout);
    Board board(board_options);
    if (const auto wrong = board.load(firmware.elf)) {
        proof.refusal = *wrong;
        return proof;
    }

    LockStep both(layout, on_pc, board, sheet_of(layout, on_pc));
    both.start();
    const std::vector<MeasuredTime> times = play_scenario(both, layout, on_pc, options);

    const Ledger ledger = account(layout, on_pc);
    proof.compared = both.result();
    proof.faults = board.faults();
    proof.flash_predicted = ledger.flash.total.value;
    proof.flash_linked = board.size().flash - flash_of(firmware.around, board_options);
    proof.flash_left = ledger.flash.capacity.value - ledger.flash.boot.value -
                       ledger.flash.taken.value - proof.flash_linked;
    proof.ram_predicted = ledger.ram.total.value;
    proof.ram_measured = board.size().data + board.stack_mark();
    proof.ram_left = ledger.ram.capacity.value - ledger.ram.taken.value - proof.ram_measured;
    for (const MeasuredTime& time : times) {
        const auto known =
            std::find_if(ledger.time.begin(), ledger.time.end(), [&](const EventTime& predicted) {
                return predicted.event == time.event;
            });
        proof.time.push_back({.event = time.event,
                              .predicted = known == ledger.time.end()
                                               ? std::nullopt
                                               : std::optional<Cycles>(known->cycles),
                              .measured = Cycles{static_cast<std::int64_t>(time.cycles)}});
    }
    if (!both.going()) {
        proof.pictures = Pictures{.width = layout.glass_width(),
                                  .height = layout.glass_height(),
                                  .expected = both.expected_glass(),
                                  .actual = both.actual_glass()};
    }
    return proof;
}

}  // namespace dialplate
