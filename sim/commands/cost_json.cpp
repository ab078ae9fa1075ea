#include "sim/commands/cost_json.hpp"

#include <string>
#include <utility>

namespace dialplate {
namespace {

using Json = nlohmann::ordered_json;

std::string face_name(const Layout& layout, const FaceCost& face) {
    return layout.faces.at(static_cast<std::size_t>(face.face)).name;
}

Json code_json(const CodeSize& size) {
    return {{"standing", name_of(size.standing)}, {"basis", size.basis}};
}

}  // namespace

nlohmann::ordered_json cost_json(const Layout& layout, const Ledger& ledger) {
    Json faces = Json::array();
    for (const FaceCost& face : ledger.flash.faces) {
        Json entry = {{"name", face_name(layout, face)},
                      {"glyphs", face.glyphs},
                      {"packing", face.packing},
                      {"bytes", face.bytes.value}};
        if (face.packing != "segment") {
            entry["smooth"] = layout.faces.at(static_cast<std::size_t>(face.face)).smooth;
            entry["plain"] = face.plain.value;
            entry["runs"] = face.runs.value;
            entry["context"] = face.context.value;
        }
        faces.push_back(std::move(entry));
    }
    Json pictures = Json::array();
    for (const PictureCost& picture : ledger.flash.pictures) {
        pictures.push_back({{"name", picture.file},
                            {"width", picture.width},
                            {"height", picture.height},
                            {"tones", picture.tones ? 4 : 2},
                            {"packing", picture.packing},
                            {"bytes", picture.bytes.value},
                            {"plain", picture.plain.value},
                            {"runs", picture.runs.value},
                            {"context", picture.context.value}});
    }
    Json time = Json::array();
    for (const EventTime& event : ledger.time) {
        time.push_back({{"event", event.event},
                        {"kind", name_of(event.kind)},
                        {"page", layout.pages.at(static_cast<std::size_t>(event.page)).name},
                        {"what", event.what},
                        {"bus_bytes", event.bus_bytes.value},
                        {"pixels", event.pixels},
                        {"windows", event.windows},
                        {"cycles", event.cycles.value},
                        {"ms", event.time.value},
                        {"share_of_limit", event.share_of_limit},
                        {"longest_slice_ms", event.longest_slice.value},
                        {"standing", name_of(event.standing)},
                        {"basis", event.basis}});
    }
    const FlashAccount& flash = ledger.flash;
    const RamAccount& ram = ledger.ram;
    return {{"file", layout.file},
            {"title", layout.title},
            {"mcu", ledger.mcu},
            {"clock_hz", ledger.clock.value},
            {"flash",
             {{"capacity", flash.capacity.value},
              {"boot", flash.boot.value},
              {"taken", flash.taken.value},
              {"engine", flash.engine.bytes.value},
              {"driver", flash.driver.bytes.value},
              {"touch", flash.touch.bytes.value},
              {"faces", std::move(faces)},
              {"pictures", std::move(pictures)},
              {"pages", flash.pages.value},
              {"texts", flash.texts.value},
              {"rest", flash.rest.value},
              {"image", flash.image.value},
              {"total", flash.total.value},
              {"left", flash.left.value},
              {"standing",
               {{"engine", code_json(flash.engine)},
                {"driver", code_json(flash.driver)},
                {"touch", code_json(flash.touch)}}}}},
            {"ram",
             {{"capacity", ram.capacity.value},
              {"taken", ram.taken.value},
              {"engine", ram.engine.value},
              {"stack", ram.stack.bytes.value},
              {"total", ram.total.value},
              {"margin", ram.margin.value},
              {"left", ram.left.value},
              {"standing", {{"stack", code_json(ram.stack)}}}}},
            {"time", std::move(time)}};
}

nlohmann::ordered_json packings_json(const Layout& layout, const std::vector<FaceTrade>& trades) {
    Json faces = Json::array();
    for (const FaceTrade& trade : trades) {
        const Face& face = layout.faces.at(static_cast<std::size_t>(trade.face));
        Json ways = Json::array();
        for (const PackingTrade& way : trade.ways) {
            Json entry = {{"packing", way.packing},
                          {"by_what_differs", way.by_what_differs},
                          {"chosen", way.chosen},
                          {"flash", way.flash.value}};
            if (way.digit) {
                entry["digit_ms"] = way.digit->median.value;
                entry["worst_digit_ms"] = way.digit->worst.value;
                entry["digit_bus_bytes"] = way.digit->bus_bytes.value;
                entry["digit_share_of_limit"] = way.digit->share_of_limit;
            }
            ways.push_back(std::move(entry));
        }
        Json entry = {{"face", face.name}, {"smooth", face.smooth}, {"ways", std::move(ways)}};
        if (!trade.item.empty()) entry["readout"] = trade.item;
        faces.push_back(std::move(entry));
    }
    return faces;
}

}  // namespace dialplate
