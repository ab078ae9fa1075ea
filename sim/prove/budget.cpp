#include "sim/prove/budget.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace dialplate {
namespace {

constexpr std::size_t most_named = 3;

std::string number(std::int64_t bytes) {
    return std::to_string(bytes);
}

std::string balance(std::int64_t needed, std::int64_t room) {
    if (needed <= room) return number(room - needed) + " left";
    return number(needed - room) + " too many";
}

/// "32768 less 512 for the boot loader and 15800 taken leave 16456"
std::string room_text(Bytes capacity, Bytes boot, Bytes taken, std::int64_t room) {
    std::string text = number(capacity.value);
    if (boot.value != 0) text += " less " + number(boot.value) + " for the boot loader";
    if (taken.value != 0) {
        text += std::string(boot.value != 0 ? " and " : " less ") + number(taken.value) + " taken";
    }
    return text == number(capacity.value) ? "of " + text : text + " leave " + number(room);
}

}  // namespace

std::int64_t flash_room(const Ledger& ledger) {
    return ledger.flash.capacity.value - ledger.flash.boot.value - ledger.flash.taken.value;
}
std::int64_t ram_room(const Ledger& ledger) {
    return ledger.ram.capacity.value - ledger.ram.taken.value;
}

std::string flash_account(const Ledger& ledger, std::int64_t needed) {
    const FlashAccount& flash = ledger.flash;
    return "flash: engine " + number(flash.engine.bytes.value) + ", driver " +
           number(flash.driver.bytes.value) + ", touch " + number(flash.touch.bytes.value) +
           " and image " + number(flash.image.value) + " bytes by the ledger, " + number(needed) +
           " needed; " + room_text(flash.capacity, flash.boot, flash.taken, flash_room(ledger)) +
           ", " + balance(needed, flash_room(ledger));
}

std::string what_to_drop(const Layout& layout, const Ledger& ledger) {
    std::vector<std::pair<std::int64_t, std::string>> parts;
    for (const FaceCost& face : ledger.flash.faces) {
        parts.emplace_back(
            face.bytes.value,
            "face \"" + layout.faces[static_cast<std::size_t>(face.face)].name + '"');
    }
    for (const PictureCost& picture : ledger.flash.pictures) {
        parts.emplace_back(picture.bytes.value, "picture \"" + picture.file + '"');
    }
    std::stable_sort(
        parts.begin(), parts.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    std::string text;
    for (std::size_t i = 0; i < parts.size() && i < most_named; ++i) {
        text += (i == 0 ? "to drop or to make smaller: " : ", ") + parts[i].second + ' ' +
                number(parts[i].first);
    }
    return text;
}

std::string ram_account(const Ledger& ledger, std::int64_t needed) {
    const RamAccount& ram = ledger.ram;
    return "RAM: engine " + number(ram.engine.value) + " and stack " +
           number(ram.stack.bytes.value) + " bytes by the ledger, " + number(needed) + " needed; " +
           room_text(ram.capacity, Bytes{0}, ram.taken, ram_room(ledger)) + ", " +
           balance(needed, ram_room(ledger)) +
           "; fewer values and items on the fullest page need less";
}

}  // namespace dialplate
