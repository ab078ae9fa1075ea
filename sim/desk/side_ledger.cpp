#include "sim/desk/side_parts.hpp"
#include "sim/desk/strip.hpp"
#include "sim/desk/tints.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace dialplate {
namespace {

/// One line of the account.
struct Share {
    std::string name;
    std::int64_t bytes = 0;
    Colour colour = 0;
    std::string what;   ///< For the tip.
    std::string other;  ///< A second line: what other packings would take.
};

/// Faces get these in turn; neighbours differ in lightness.
constexpr Colour face_colours[] = {0xD9B36C, 0xB98A4E, 0xE6CC98, 0xA6784A, 0xCFA05A, 0xF0DDB4};

std::string standing_of(const CodeSize& size) {
    return std::string(name_of(size.standing)) + ": " + size.basis;
}

/// @param faces  Their names.
std::vector<Share> shares_of(const std::vector<std::string>& faces, const FlashAccount& flash) {
    std::vector<Share> shares;
    shares.push_back({"rest of the program",
                      flash.taken.value + flash.boot.value,
                      0x57514A,
                      "What the layout says is taken, " + grouped(flash.taken.value) +
                          " bytes, and the usual boot loader, " + grouped(flash.boot.value),
                      {}});
    shares.push_back({"engine", flash.engine.bytes.value, 0x7C93A3, standing_of(flash.engine), {}});
    shares.push_back({"driver", flash.driver.bytes.value, 0x5E7382, standing_of(flash.driver), {}});
    if (flash.touch.bytes.value > 0)
        shares.push_back(
            {"touch sheet", flash.touch.bytes.value, 0x8AA0AE, standing_of(flash.touch), {}});
    std::size_t number = 0;
    for (const FaceCost& face : flash.faces) {
        Share share{"face " + faces[static_cast<std::size_t>(face.face)],
                    face.bytes.value,
                    face_colours[number++ % std::size(face_colours)],
                    std::to_string(face.glyphs) + " glyphs, " + std::to_string(face.height) +
                        " rows, packed as " + face.packing,
                    {}};
        const std::pair<const char*, Bytes> packings[] = {
            {"plain", face.plain}, {"runs", face.runs}, {"context", face.context}};
        for (const auto& [name, bytes] : packings)
            if (bytes.value > 0)
                share.other += (share.other.empty() ? "" : "   ") + std::string(name) + " " +
                               grouped(bytes.value) + (face.packing == name ? " *" : "");
        shares.push_back(std::move(share));
    }
    std::int64_t pictures = 0;
    for (const PictureCost& picture : flash.pictures)
        pictures += picture.bytes.value;
    if (pictures > 0) shares.push_back({"pictures", pictures, 0x9DB08A, "Bitmaps, as stored", {}});
    shares.push_back({"pages", flash.pages.value, 0x8FA88C, "What stands where", {}});
    shares.push_back({"texts", flash.texts.value, 0x6F8A72, "Words of the items", {}});
    shares.push_back({"tables",
                      flash.rest.value + flash.contexts.value,
                      0x5B7060,
                      "Header, paints, values, and the table of the packing context",
                      {}});
    return shares;
}

void draw_bar(SideFrame& side, const std::vector<Share>& shares, const FlashAccount& flash) {
    const float u = side.unit;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x, height = 18 * u;
    std::int64_t used = 0;
    for (const Share& share : shares)
        used += share.bytes;
    const double scale = width / static_cast<double>(std::max(used, flash.capacity.value));
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    draw.AddRectFilled(at, {at.x + width, at.y + height}, ink(tint::well));
    std::int64_t behind = 0;
    const ImVec2 mouse = ImGui::GetMousePos();
    ImGui::InvisibleButton("flash bar", {width, height});
    const bool near = ImGui::IsItemHovered();
    bool told = false;
    for (const Share& share : shares) {
        const float left = at.x + static_cast<float>(static_cast<double>(behind) * scale);
        behind += share.bytes;
        const float right = at.x + static_cast<float>(static_cast<double>(behind) * scale);
        const bool pointed = near && mouse.x >= left && mouse.x < right;
        draw.AddRectFilled({left, at.y},
                           {std::max(right - u, left + 1), at.y + height},
                           ink(pointed ? tint::engraved : share.colour));
        if (pointed) {
            tip(side, share.name + ": " + grouped(share.bytes) + " bytes. " + share.what + ".");
            told = true;
        }
    }
    if (near && !told) tip(side, grouped(flash.left.value) + " bytes are left.");
    // Where the flash ends, if the program goes on.
    if (used > flash.capacity.value) {
        const float end =
            at.x + static_cast<float>(static_cast<double>(flash.capacity.value) * scale);
        draw.AddRectFilled(
            {end, at.y - 3 * u}, {end + 2 * u, at.y + height + 3 * u}, ink(tint::must));
    }
}

std::string difference(std::int64_t now, std::int64_t then) {
    if (now == then) return {};
    return (now > then ? "+" : "\xE2\x88\x92") + grouped(now > then ? now - then : then - now);
}

void begin_row(const SideFrame& side, Colour colour, const std::string& name) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float u = side.unit;
    if (colour != 0)
        ImGui::GetWindowDrawList()->AddRectFilled(
            {at.x, at.y + 2 * u}, {at.x + 8 * u, at.y + 10 * u}, ink(colour));
    ImGui::SetCursorPosX(ImGui::GetCursorPosX() + 16 * u);
    say(side, tint::engraved, name);
}

void draw_flash(SideFrame& side, const Ledger& ledger, const std::vector<Share>& shares) {
    const std::optional<SavedAccount>& saved = side.bench.saved;
    std::vector<Share> before;
    if (saved) before = shares_of(saved->faces, saved->flash);
    const auto then = [&](const std::string& name) -> std::optional<std::int64_t> {
        if (!saved) return std::nullopt;
        for (const Share& share : before)
            if (share.name == name) return share.bytes;
        return 0;
    };
    if (!ImGui::BeginTable("flash", 3, ImGuiTableFlags_SizingStretchProp)) return;
    ImGui::TableSetupColumn("name", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("bytes", ImGuiTableColumnFlags_WidthFixed, 64 * side.unit);
    ImGui::TableSetupColumn("change", ImGuiTableColumnFlags_WidthFixed, 58 * side.unit);
    for (const Share& share : shares) {
        begin_row(side, share.colour, share.name);
        tip(side, share.what + ".");
        ImGui::TableNextColumn();
        say_right(side, tint::engraved, grouped(share.bytes));
        ImGui::TableNextColumn();
        if (const auto was = then(share.name))
            say_right(side,
                      share.bytes > *was ? tint::should : tint::fine,
                      difference(share.bytes, *was));
        if (share.other.empty()) continue;
        ImGui::TableNextRow();
        ImGui::TableNextColumn();
        ImGui::SetCursorPosX(ImGui::GetCursorPosX() + 16 * side.unit);
        say_small(side, tint::quiet, share.other);
        tip(side, "Bytes that each packing would take; * is the one that is used.");
    }
    // What was given up has no line of its own any more.
    for (const Share& share : before)
        if (std::none_of(shares.begin(), shares.end(), [&](const Share& now) {
                return now.name == share.name;
            })) {
            begin_row(side, 0, share.name);
            tip(side, "In the file as it was saved last.");
            ImGui::TableNextColumn();
            say_right(side, tint::quiet, "0");
            ImGui::TableNextColumn();
            say_right(side, tint::fine, difference(0, share.bytes));
        }
    begin_row(side, 0, ledger.flash_fits() ? "free" : "too much");
    ImGui::TableNextColumn();
    say_right(
        side, ledger.flash_fits() ? tint::fine : tint::must, grouped(ledger.flash.left.value));
    ImGui::TableNextColumn();
    if (saved)
        say_right(side,
                  ledger.flash.left < saved->flash.left ? tint::should : tint::fine,
                  difference(ledger.flash.left.value, saved->flash.left.value));
    ImGui::EndTable();
}

void draw_ram(SideFrame& side, const RamAccount& ram) {
    if (!ImGui::BeginTable("ram", 3, ImGuiTableFlags_SizingStretchProp)) return;
    ImGui::TableSetupColumn("name", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("bytes", ImGuiTableColumnFlags_WidthFixed, 64 * side.unit);
    ImGui::TableSetupColumn("change", ImGuiTableColumnFlags_WidthFixed, 58 * side.unit);
    // Against the same row as it was saved, where more is worse.
    const std::optional<SavedAccount>& saved = side.bench.saved;
    const auto change = [&](std::int64_t bytes, std::int64_t was) {
        ImGui::TableNextColumn();
        if (saved) say_right(side, bytes > was ? tint::should : tint::fine, difference(bytes, was));
    };
    const RamAccount before = saved ? saved->ram : ram;
    const auto row =
        [&](const char* name, std::int64_t bytes, Colour colour, const std::string& what) {
            begin_row(side, 0, name);
            tip(side, what);
            ImGui::TableNextColumn();
            say_right(side, colour, grouped(bytes));
        };
    row("rest of the program", ram.taken.value, tint::engraved, "As the layout says.");
    change(ram.taken.value, before.taken.value);
    row("values and what is shown", ram.engine.value, tint::engraved, "The engine's state.");
    change(ram.engine.value, before.engine.value);
    row("stack below a call", ram.stack.bytes.value, tint::engraved, standing_of(ram.stack));
    change(ram.stack.bytes.value, before.stack.bytes.value);
    row("kept free for a deeper one",
        ram.margin.value,
        tint::engraved,
        "By so much the stack may be deeper than expected.");
    change(ram.margin.value, before.margin.value);
    row("free", ram.left.value, ram.left.value >= 0 ? tint::fine : tint::must, "");
    ImGui::TableNextColumn();
    if (saved)
        say_right(side,
                  ram.left < before.left ? tint::should : tint::fine,
                  difference(ram.left.value, before.left.value));
    ImGui::EndTable();
}

/// A row below an event that takes longer or less than in the file as it was saved.
void draw_change(const SideFrame& side, const EventTime& now) {
    if (!side.bench.saved) return;
    for (const EventTime& then : side.bench.saved->time) {
        const double more = now.time.value - then.time.value;
        constexpr double seen = 0.05;  // ms: the figure above has one decimal
        if (then.event != now.event || std::abs(more) < seen) continue;
        const std::int64_t bytes = now.bus_bytes.value, before = then.bus_bytes.value;
        ImGui::TableNextRow();
        ImGui::TableSetColumnIndex(1);
        say_right(side, bytes > before ? tint::should : tint::fine, difference(bytes, before));
        ImGui::TableSetColumnIndex(2);
        say_right(side,
                  more > 0 ? tint::should : tint::fine,
                  (more > 0 ? "+" : "\xE2\x88\x92") + in_words("%.1f", std::abs(more)));
        return;
    }
}

void draw_time(SideFrame& side, const Ledger& ledger) {
    if (ledger.time.empty()) {
        say(side, tint::quiet, "Nothing ever changes on these pages.");
        return;
    }
    if (!ImGui::BeginTable("time", 4, ImGuiTableFlags_SizingStretchProp)) return;
    ImGui::TableSetupColumn("event", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("bytes", ImGuiTableColumnFlags_WidthFixed, 58 * side.unit);
    ImGui::TableSetupColumn("ms", ImGuiTableColumnFlags_WidthFixed, 48 * side.unit);
    ImGui::TableSetupColumn("bus", ImGuiTableColumnFlags_WidthFixed, 40 * side.unit);
    ImGui::TableNextRow();
    for (const char* title : {"EVENT", "BYTES", "MS", "BUS %"}) {
        ImGui::TableNextColumn();
        ImGui::PushFont(side.type.small);
        if (ImGui::TableGetColumnIndex() == 0)
            ImGui::SetCursorPosX(ImGui::GetCursorPosX() + 16 * side.unit),
                say(side, tint::quiet, title);
        else
            say_right(side, tint::quiet, title);
        ImGui::PopFont();
    }
    for (const EventTime& event : ledger.time) {
        begin_row(side, 0, event.event);
        tip(side, event.what + ". " + event.basis + ".");
        ImGui::TableNextColumn();
        say_right(side, tint::engraved, grouped(event.bus_bytes.value));
        ImGui::TableNextColumn();
        say_right(side,
                  tint::engraved,
                  in_words(event.time.value < 100 ? "%.1f" : "%.0f", event.time.value));
        ImGui::TableNextColumn();
        say_right(side, tint::quiet, in_words("%.0f", 100 * event.share_of_limit));
        draw_change(side, event);
    }
    ImGui::EndTable();
}

}  // namespace

void draw_ledger(SideFrame& side) {
    const std::optional<Ledger>& ledger = side.bench.piece.ledger();
    if (!ledger) {
        section(side, "FLASH", "", tint::quiet);
        return;
    }
    std::vector<std::string> faces;
    for (const Face& face : side.bench.piece.layout().faces)
        faces.push_back(face.name);
    const std::vector<Share> shares = shares_of(faces, ledger->flash);
    const std::int64_t left = ledger->flash.left.value;
    const bool open =
        section(side,
                "FLASH",
                left >= 0 ? grouped(left) + " bytes free" : grouped(-left) + " bytes too much",
                left >= 0 ? tint::engraved : tint::must);
    draw_bar(side, shares, ledger->flash);
    if (open) draw_flash(side, *ledger, shares);

    const std::int64_t ram = ledger->ram.left.value;
    if (section(side,
                "RAM",
                ram >= 0 ? grouped(ram) + " bytes free" : grouped(-ram) + " bytes too much",
                ram >= 0 ? tint::engraved : tint::must))
        draw_ram(side, ledger->ram);

    const EventTime* slowest = ledger->slowest_tuning();
    if (section(side,
                "TIME",
                slowest == nullptr ? "" : in_words("%.1f ms to tune", slowest->time.value),
                tint::engraved))
        draw_time(side, *ledger);
}

}  // namespace dialplate
