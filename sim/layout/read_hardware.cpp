// Display, microcontroller, bus and wiring: what the layout runs on.
#include "sim/layout/draft.hpp"
#include "sim/layout/members.hpp"
#include "sim/layout/parts.hpp"

namespace dialplate {
namespace {

constexpr MemberName named_mcu_members[] = {{"part", true}, {"clock_mhz", true}};
constexpr MemberName bus_members[] = {{"kind", true}, {"clock_mhz", true}};
constexpr MemberName taken_members[] = {{"flash"}, {"ram"}};
constexpr MemberName wiring_members[] = {{"supply_v"}, {"level_shifted"}, {"backlight"}};

constexpr std::int64_t most_taken = std::int64_t{1} << 30;

// The part of that name on the shelf, or a mistake at the member.
template <class Part>
std::optional<Part> part_named(const Members& members,
                               std::string_view member,
                               Shelf<Part> (*load)(const std::string&, std::vector<Finding>&),
                               const Draft& draft) {
    const std::optional<std::string> name = members.text(member, {.least = 1});
    if (!name) return std::nullopt;
    const Shelf<Part> shelf = load(draft.layout.directory, draft.mistakes.findings());
    std::vector<std::string_view> known;
    for (const Part& part : shelf.parts) {
        if (part.name == *name) return part;
        known.push_back(part.name);
    }
    // A broken part file may have held it: that is the mistake, not this name.
    if (!shelf.readable) return std::nullopt;
    const std::string suggestion = did_you_mean(*name, known, draft.mistakes);
    members.fail(member,
                 "unknown-part",
                 "is " + quote(*name) + ", which the parts files do not have" +
                     (suggestion.empty() ? ";" : suggestion) + " there are " + listed(known));
    return std::nullopt;
}

bool written_out(const Node* node) {
    return node != nullptr && node->kind == Node::Kind::object;
}

}  // namespace

void read_display(const Members& document, Draft& draft) {
    const Node* const node = document.find("display");
    if (node == nullptr) return;
    if (written_out(node)) {
        draft.layout.display = display_from(*node, document.pointer_of("display"), draft.mistakes);
    } else if (const auto found = part_named<Display>(document, "display", load_displays, draft)) {
        draft.layout.display = *found;
    }
}

void read_mcu(const Members& document, Draft& draft) {
    const Node* const node = document.find("mcu");
    if (node == nullptr) return;
    const Members mcu(
        *node, document.pointer_of("mcu"), {"mcu"}, named_mcu_members, draft.mistakes);
    const Node* const part = mcu.find("part");
    if (written_out(part)) {
        draft.layout.mcu = mcu_from(*part, mcu.pointer_of("part"), draft.mistakes);
    } else if (const auto found = part_named<Mcu>(mcu, "part", load_mcus, draft)) {
        draft.layout.mcu = *found;
    }
    draft.layout.clock = Hertz{mcu.number("clock_mhz", {0.1, 1000.0}).value_or(0.0) * 1e6};
}

void read_bus(const Members& document, Draft& draft) {
    const Node* const node = document.find("bus");
    if (node == nullptr) return;
    static constexpr Word<BusKind> kinds[] = {{"spi", BusKind::spi},
                                              {"spi_timed", BusKind::spi_timed},
                                              {"usart_spi", BusKind::usart_spi},
                                              {"parallel8", BusKind::parallel8}};
    const Members bus(*node, document.pointer_of("bus"), {"bus"}, bus_members, draft.mistakes);
    draft.layout.bus.kind =
        bus.one_of("kind", std::span<const Word<BusKind>>(kinds)).value_or(BusKind::spi);
    draft.layout.bus.clock = Hertz{bus.number("clock_mhz", {0.01, 200.0}).value_or(0.0) * 1e6};
}

void read_taken(const Members& document, Draft& draft) {
    const Node* const node = document.find("taken");
    if (node == nullptr) return;
    const Members taken(
        *node, document.pointer_of("taken"), {"taken"}, taken_members, draft.mistakes);
    draft.layout.taken.flash = Bytes{taken.whole("flash", {0, most_taken}).value_or(0)};
    draft.layout.taken.ram = Bytes{taken.whole("ram", {0, most_taken}).value_or(0)};
}

void read_wiring(const Members& document, Draft& draft) {
    const Node* const node = document.find("wiring");
    if (node == nullptr) return;
    static constexpr Word<Wiring::Backlight> feeds[] = {{"logic_pin", Wiring::Backlight::logic_pin},
                                                        {"switched", Wiring::Backlight::switched},
                                                        {"supply", Wiring::Backlight::supply}};
    const Members members(
        *node, document.pointer_of("wiring"), {"wiring"}, wiring_members, draft.mistakes);
    Wiring& wiring = draft.layout.wiring;
    wiring.supply_v = members.number("supply_v", {1.0, 6.0});
    wiring.level_shifted = members.flag("level_shifted");
    wiring.backlight = members.one_of("backlight", std::span<const Word<Wiring::Backlight>>(feeds))
                           .value_or(Wiring::Backlight::unstated);
}

}  // namespace dialplate
