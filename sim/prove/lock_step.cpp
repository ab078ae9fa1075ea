#include "sim/prove/lock_step.hpp"

#include "sim/display/controller.hpp"
#include "sim/display/dcs.hpp"
#include "sim/display/wire.hpp"
#include "sim/emit/text.hpp"
#include "sim/prototype/parts_used.hpp"
#include "sim/prove/proof_firmware.hpp"
#include "sim/receiver/receiver.hpp"
#include "ui/screen.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <deque>

namespace dialplate {
namespace {

constexpr int tick_ms = 10;  // time passes in steps of this
// Ten seconds at 16 MHz: far longer than the start of a display or any one piece.
constexpr CycleCount patience = 160'000'000;
// Of bytes that a driver may leave to the hardware when it returns: one in the shift register, one before it.
constexpr std::size_t bytes_on_their_way = 2;
constexpr double first_count = 200, last_count = 3900;  // of the emitted calibration

class WireBus {
public:
    explicit WireBus(Wire& wire) : wire_(&wire) {}
    void window(std::uint16_t x, std::uint16_t y, std::uint16_t w, std::uint16_t h) {
        wire_->window(x, y, w, h);
    }
    void push(std::uint16_t colour, std::uint16_t count) { wire_->push(colour, count); }

private:
    Wire* wire_;
};

struct BusByte {
    bool command = false;
    std::uint8_t byte = 0;
    friend bool operator==(const BusByte&, const BusByte&) = default;
};

/// Follows the bytes that were found equal, to say where in the traffic a byte stands.
class Whereabouts {
public:
    void follow(const BusByte& byte) {
        if (byte.command) {
            code_ = byte.byte;
            at_ = 0;
            return;
        }
        if (at_ < 4 && code_ == dcs::set_column_address)
            columns_[static_cast<std::size_t>(at_)] = byte.byte;
        if (at_ < 4 && code_ == dcs::set_page_address)
            rows_[static_cast<std::size_t>(at_)] = byte.byte;
        ++at_;
    }
    /// Of the next byte.
    [[nodiscard]] std::string words(bool next_is_command, int bytes_per_pixel) const {
        if (next_is_command) return "command after " + hexadecimal(code_);
        if (code_ != dcs::write_memory_start) {
            return "parameter " + std::to_string(at_ + 1) + " of " + hexadecimal(code_);
        }
        return "byte " + std::to_string(at_ % bytes_per_pixel + 1) + " of pixel " +
               std::to_string(at_ / bytes_per_pixel) + " in the window of columns " +
               range(columns_) + ", rows " + range(rows_);
    }

private:
    static std::string range(const std::array<int, 4>& ends) {
        return std::to_string(ends[0] * 256 + ends[1]) + " to " +
               std::to_string(ends[2] * 256 + ends[3]);
    }
    std::uint8_t code_ = 0;
    std::int64_t at_ = 0;
    std::array<int, 4> columns_{}, rows_{};
};

}  // namespace

struct LockStep::Inside {
    Inside(const Layout& l,
           const BuiltImage& b,
           Board& its_board,
           const std::optional<TouchWiring>& its_sheet)
        : layout(l),
          built(b),
          board(its_board),
          controller(layout.display, layout.bus.kind),
          far_controller(layout.display, layout.bus.kind),
          wire(controller, layout.display, layout.turn, layout.bus.kind),
          receiver(layout),
          memory(static_cast<std::size_t>(built.arena_values + built.arena_shown_by_all_parts) + 1),
          screen(WireBus(wire),
                 Rom<MemoryBytes>(MemoryBytes(built.bytes.data(),
                                              static_cast<std::uint16_t>(built.bytes.size()))),
                 memory.data()) {
        for (const Page& page : layout.pages) {
            for (const Item& item : page.items) {
                // Keys off the glass have no number; names are unique in a page only: follow the order.
                if (item.kind == ItemKind::key && keys.size() < built.keys.size() &&
                    built.keys[keys.size()] == item.name) {
                    keys.push_back(&item);
                }
            }
        }
        if (its_sheet) sheet = std::make_unique<TouchChip>(board, *its_sheet, TouchSheet{});
        wire.observe([this](bool command, std::uint8_t byte) { due.push_back({command, byte}); });
        board.observe_bus([this](bool command, std::uint8_t byte) { arrived({command, byte}); });
    }

    void arrived(const BusByte& byte) {
        if (byte.command) {
            far_controller.command(byte.byte);
        } else {
            far_controller.data(byte.byte);
        }
        const std::int64_t number = result.bytes++;
        if (due.empty()) {
            differ(number, std::nullopt, byte);
            return;
        }
        const BusByte expected = due.front();
        due.pop_front();
        if (!(expected == byte)) differ(number, expected, byte);
        if (!result.first) whereabouts.follow(byte);
    }

    void differ(std::int64_t number,
                const std::optional<BusByte>& expected,
                const std::optional<BusByte>& actual) {
        ++result.bytes_different;
        if (result.first) return;
        FirstDifference first;
        first.byte = number;
        if (expected) {
            first.expected = expected->byte;
            first.expected_command = expected->command;
        }
        if (actual) {
            first.actual = actual->byte;
            first.actual_command = actual->command;
        }
        first.place = whereabouts.words(expected ? expected->command : actual->command,
                                        controller.bytes_per_pixel());
        first.during = doing;
        result.first = first;
    }

    void fail(const std::string& why) {
        if (result.trouble.empty()) result.trouble = why + ", while " + doing;
    }
    [[nodiscard]] bool going() const { return !result.first && result.trouble.empty(); }

    /// @return Whether the firmware made this mark next.
    bool run_to(std::uint8_t wanted) {
        const Stop stop = board.run_until_mark(patience);
        if (stop != Stop::mark) {
            fail(stop == Stop::crashed ? "the firmware crashed"
                 : stop == Stop::ended ? "the firmware fell asleep for good"
                                       : "the firmware came to no end");
            return false;
        }
        if (board.marks().back().value != wanted) {
            fail("the firmware made mark " + std::to_string(int{board.marks().back().value}) +
                 " in place of " + std::to_string(int{wanted}));
            return false;
        }
        return true;
    }

    /// Gives an order and runs until it is done.
    void give(const std::vector<std::uint8_t>& bytes) {
        board.feed(bytes);
        run_to(proof_mark::ready);
    }
    static void add_word(std::vector<std::uint8_t>& bytes, unsigned word) {
        bytes.push_back(static_cast<std::uint8_t>(word & 0xFF));
        bytes.push_back(static_cast<std::uint8_t>(word >> 8 & 0xFF));
    }

    void tell(ValueId value) {
        if (!going()) return;
        const std::int32_t to = receiver.get(value);
        std::vector<std::uint8_t> bytes{order::set, static_cast<std::uint8_t>(value)};
        add_word(bytes, static_cast<std::uint32_t>(to));
        add_word(bytes, static_cast<std::uint32_t>(to) >> 16);
        give(bytes);
        screen.set(static_cast<std::uint8_t>(value), to);
    }
    void tell_changes() {
        for (const ValueId value : receiver.changed()) {
            tell(value);
        }
    }

    /// All that was due has come by now.
    void nothing_due() {
        static_cast<void>(board.faults());  // hands on a byte that is due
        if (!due.empty()) {
            differ(result.bytes, due.front(), std::nullopt);
            result.bytes_different += static_cast<std::int64_t>(due.size()) - 1;
            due.clear();
        }
    }

    /// @param at_most  Services; 0: until nothing is left.
    Served serve(int at_most) {
        if (!going()) return {};
        const std::int64_t before = result.bytes;
        std::vector<std::uint8_t> bytes{order::serve};
        add_word(bytes, static_cast<unsigned>(at_most));
        board.feed(bytes);
        if (!run_to(proof_mark::begun)) return {};
        const CycleCount begun = board.marks().back().at;
        const int stack_before = board.stack_now();
        board.paint_stack();
        CycleCount ended = begun;
        for (int n = 1;; ++n) {
            const bool more = screen.service(static_cast<std::uint16_t>(now_ms));
            ++result.services;
            if (!run_to(more ? proof_mark::served : proof_mark::idle)) break;
            ended = board.marks().back().at;
            if (due.size() > bytes_on_their_way) nothing_due();
            if (!more || n == at_most) break;
        }
        result.stack = std::max(result.stack, board.stack_mark() - stack_before);
        if (result.trouble.empty()) run_to(proof_mark::ready);
        nothing_due();
        if (result.bytes != before || result.first) compare_glasses();
        return {.bytes = result.bytes - before, .cycles = ended - begun};
    }

    void compare_glasses() {
        ++result.frames;
        const auto expected = controller.glass(layout.turn),
                   actual = far_controller.glass(layout.turn);
        for (std::size_t i = 0; i < expected.size(); ++i) {
            result.pixels_different += expected[i] != actual[i] ? 1 : 0;
        }
    }

    /// Compares what the keys reported, and lets the receiver act on it. False: they reported nothing.
    bool hear() {
        if (!going() || !sheet) return false;
        board.told();
        give({order::listen});
        const std::vector<std::uint8_t> told = board.told();
        std::size_t at = 0;
        for (Event event{}; screen.next_event(event);) {
            // The firmware of a layout that holds no key has no clock on them.
            if (!holds && event.what == KeyMotion::hold) continue;
            event.held = event.held && holds;
            const bool same = at + 4 <= told.size() &&
                              told[at] == static_cast<std::uint8_t>(event.what) &&
                              told[at + 1] == static_cast<std::uint8_t>(event.held) &&
                              told[at + 2] + 256 * told[at + 3] == event.key;
            if (!same) {
                fail("the firmware did not report the same event of key " +
                     std::to_string(event.key));
                return false;
            }
            act_on(event);
            at += 4;
        }
        if (at != told.size()) fail("the firmware reported an event too many");
        tell_changes();
        return at != 0;
    }

    void act_on(const Event& event) {
        const Key& key = keys[event.key]->key;
        const auto act = [this](const Action& action) {
            if (action.kind != ActionKind::none && action.kind != ActionKind::page) {
                receiver.act(action);
            }
        };
        const bool tapped = event.what == KeyMotion::release &&
                            !(event.held && (key.repeat || key.hold.kind != ActionKind::none));
        if (tapped || event.what == KeyMotion::repeat) act(key.tap);
        if (event.what == KeyMotion::hold) act(key.hold);
    }

    Served settle() {
        Served all;
        do {
            hear();
            const Served part = serve(0);
            all.bytes += part.bytes;
            all.cycles += part.cycles;
        } while (hear());
        return all;
    }

    /// Reads the sheet on the board.
    /// @return What was told.
    std::vector<std::uint8_t> feel() {
        board.told();
        give({order::feel});
        return board.told();
    }

    const Layout layout;
    const BuiltImage built;
    const bool holds = parts_used(layout, built).has(Part::hold);
    std::vector<const Item*> keys;
    Board& board;
    std::unique_ptr<TouchChip> sheet;
    Controller controller, far_controller;
    Wire wire;
    Receiver receiver;
    std::vector<std::uint8_t> memory;
    Screen<WireBus> screen;
    std::deque<BusByte> due;  // Sent on the PC, not yet by the firmware.
    Whereabouts whereabouts;
    std::string doing = "starting";
    mutable Comparison result;
    std::int64_t now_ms = 0;
};

LockStep::LockStep(const Layout& layout,
                   const BuiltImage& built,
                   Board& board,
                   const std::optional<TouchWiring>& sheet)
    : in_(std::make_unique<Inside>(layout, built, board, sheet)) {}
LockStep::~LockStep() = default;

void LockStep::start() {
    in_->wire.start();
    if (!in_->run_to(proof_mark::ready)) return;
    in_->nothing_due();
    for (std::size_t v = 0; v < in_->layout.values.size(); ++v) {
        in_->tell(static_cast<ValueId>(v));
    }
}

bool LockStep::going() const {
    return in_->going();
}
void LockStep::doing(std::string what) {
    if (in_->going()) in_->doing = std::move(what);
}

void LockStep::set(ValueId value, std::int32_t to) {
    in_->receiver.set(value, to);
    in_->tell_changes();
}
std::int32_t LockStep::get(ValueId value) const {
    return in_->receiver.get(value);
}
void LockStep::turn(int detents) {
    in_->receiver.turn(detents);
    in_->tell_changes();
}

void LockStep::show_page(int page) {
    if (!going()) return;
    in_->give({order::page, static_cast<std::uint8_t>(page)});
    in_->screen.show_page(static_cast<std::uint8_t>(page));
}
int LockStep::page() const {
    return in_->screen.page();
}
void LockStep::use_palette(int palette) {
    if (!going()) return;
    in_->give({order::palette, static_cast<std::uint8_t>(palette)});
    in_->screen.use_palette(static_cast<std::uint8_t>(palette));
}

void LockStep::touch(int x, int y) {
    if (!going() || !in_->sheet) return;
    std::vector<std::uint8_t> bytes{order::touch};
    Inside::add_word(bytes, static_cast<unsigned>(x));
    Inside::add_word(bytes, static_cast<unsigned>(y));
    in_->give(bytes);
    in_->screen.touch(Point{static_cast<std::uint16_t>(x), static_cast<std::uint16_t>(y)});
}
void LockStep::lift() {
    if (!going() || !in_->sheet) return;
    in_->give({order::lift});
    in_->screen.lift();
}

bool LockStep::has_sheet() const {
    return in_->sheet != nullptr;
}

void LockStep::press_sheet(int x, int y) {
    if (!going() || !in_->sheet) return;
    const auto count = [](int pixel, int pixels) {
        return first_count + (pixel + 0.5) * (last_count - first_count) / pixels;
    };
    const double along_x = count(x, in_->layout.glass_width());
    const double along_y = count(y, in_->layout.glass_height());
    const bool exchanged = in_->layout.turn % 180 != 0;
    in_->sheet->press(exchanged ? along_y : along_x, exchanged ? along_x : along_y);
    const std::vector<std::uint8_t> told = in_->feel();
    if (told.size() != 5 || told[0] != 1) {
        in_->fail("the firmware felt no finger");
        return;
    }
    const int felt_x = told[1] + 256 * told[2], felt_y = told[3] + 256 * told[4];
    if (std::abs(felt_x - x) > 1 || std::abs(felt_y - y) > 1) {
        in_->fail("the firmware felt the finger at " + std::to_string(felt_x) + ", " +
                  std::to_string(felt_y) + " in place of " + std::to_string(x) + ", " +
                  std::to_string(y));
        return;
    }
    in_->screen.touch(
        Point{static_cast<std::uint16_t>(felt_x), static_cast<std::uint16_t>(felt_y)});
}
void LockStep::lift_sheet() {
    if (!going() || !in_->sheet) return;
    in_->sheet->lift();
    const std::vector<std::uint8_t> told = in_->feel();
    if (told.size() != 1 || told[0] != 0) {
        in_->fail("the firmware felt a finger that is gone");
        return;
    }
    in_->screen.lift();
}

void LockStep::pass(int milliseconds) {
    settle();
    for (; milliseconds > 0 && going(); milliseconds -= tick_ms) {
        in_->now_ms += std::min(milliseconds, tick_ms);
        in_->receiver.pass(std::min(milliseconds, tick_ms), false);
        in_->tell_changes();
        std::vector<std::uint8_t> bytes{order::time};
        Inside::add_word(bytes, static_cast<unsigned>(in_->now_ms & 0xFFFF));
        in_->give(bytes);
        settle();
    }
}
Served LockStep::settle() {
    return in_->settle();
}
void LockStep::serve(int at_most) {
    in_->serve(at_most);
    in_->hear();
}

const Comparison& LockStep::result() const {
    const BusCounters& seen = in_->far_controller.counters();
    in_->result.unknown_commands = seen.unknown_commands;
    in_->result.bad_windows = seen.bad_windows;
    in_->result.stray_bytes = seen.stray_parameters;
    in_->result.short_windows = seen.short_windows;
    return in_->result;
}
std::vector<std::uint16_t> LockStep::expected_glass() const {
    return in_->controller.glass(in_->layout.turn);
}
std::vector<std::uint16_t> LockStep::actual_glass() const {
    return in_->far_controller.glass(in_->layout.turn);
}

}  // namespace dialplate
