#include "sim/layout/reader.hpp"

#include "sim/layout/draft.hpp"
#include "sim/layout/json_tree.hpp"
#include "sim/layout/members.hpp"
#include "sim/layout/source_text.hpp"

#include <filesystem>

namespace dialplate {
namespace {

constexpr MemberName document_members[] = {
    {"$schema"}, {"title", true}, {"display", true}, {"turn"},     {"mcu", true}, {"bus", true},
    {"taken"},   {"viewing"},     {"opening"},       {"touch"},    {"wiring"},    {"region"},
    {"profile"}, {"thresholds"},  {"paints", true},  {"palettes"}, {"looks"},     {"faces"},
    {"values"},  {"pages", true}, {"waived"},
};
constexpr MemberName waiver_members[] = {{"rule", true}, {"item"}, {"reason", true}};

void read_turn(const Members& document, Draft& draft) {
    const auto turn = document.whole("turn", {0, 270, "0, 90, 180 and 270"});
    if (!turn) return;
    draft.layout.turn = static_cast<int>(*turn);
    if (*turn % 90 != 0) {
        document.fail("turn",
                      "out-of-range",
                      "is " + std::to_string(*turn) + "; allowed are 0, 90, 180 and 270");
    }
}

void read_document(const Node& root, Draft& draft) {
    const Members document(root, "", {"layout"}, document_members, draft.mistakes);
    if (root.kind != Node::Kind::object) return;
    document.text("$schema", {.least = 0, .most = 1000});
    draft.layout.title = document.text("title", {.least = 1}).value_or("");
    read_turn(document, draft);
    read_display(document, draft);
    read_mcu(document, draft);
    read_bus(document, draft);
    read_taken(document, draft);
    read_viewing(document, draft);
    read_opening(document, draft);
    read_touch(document, draft);
    read_wiring(document, draft);
    read_region(document, draft);
    read_thresholds(document, draft);
    read_paints(document, draft);
    read_looks(document, draft);
    read_faces(document, draft);
    read_values(document, draft);
    read_pages(document, draft);
    draft.layout.places = places_of(root);
    read_waivers(document, draft);
}

Reading finish(std::vector<Finding> findings, std::optional<Layout> layout) {
    sort_by_place(findings);
    if (!findings.empty()) layout.reset();
    return {.layout = std::move(layout), .findings = std::move(findings)};
}

}  // namespace

void read_waivers(const Members& document, Draft& draft) {
    const Node* const list = document.list("waived", {0, 10000});
    if (list == nullptr) return;
    for (std::size_t i = 0; i < list->elements.size(); ++i) {
        Waiver waiver;
        waiver.pointer = document.pointer_of("waived") + pointer_part(i);
        const Members members(
            list->elements[i], waiver.pointer, {"waiver"}, waiver_members, draft.mistakes);
        waiver.rule = members.text("rule", {.least = 1, .most = 80}).value_or("");
        waiver.reason = members.text("reason", {.least = 1, .most = 1000}).value_or("");
        waiver.item = members.text("item", {.least = 0, .most = 1000}).value_or("");
        if (!draft.layout.places.contains(waiver.item)) {
            std::string known = waiver.item;
            while (!known.empty() && !draft.layout.places.contains(known)) {
                known.resize(known.rfind('/') == std::string::npos ? 0 : known.rfind('/'));
            }
            members.fail("item",
                         "unknown-item",
                         "is " + quote(waiver.item) + ", which points to nothing; " +
                             (known.empty() ? "a JSON Pointer begins like \"/pages/0/items/0\""
                                            : "the last part that exists is " + quote(known)));
        }
        draft.layout.waived.push_back(std::move(waiver));
    }
}

Reading read_layout(std::string_view text, const std::string& file, const std::string& directory) {
    std::vector<Finding> findings;
    Mistakes mistakes(findings);
    const std::optional<std::string_view> checked = check_text(text, mistakes);
    if (!checked) return finish(std::move(findings), std::nullopt);
    const int skipped = static_cast<int>(text.size() - checked->size());
    const std::optional<Node> root = parse_json(*checked, mistakes, {1, 1 + skipped});
    if (!root) return finish(std::move(findings), std::nullopt);
    Draft draft(mistakes);
    draft.layout.file = file;
    draft.layout.directory = directory;
    read_document(*root, draft);
    return finish(std::move(findings), std::move(draft.layout));
}

Reading load_layout(const std::string& file) {
    std::vector<Finding> findings;
    Mistakes mistakes(findings);
    const std::optional<std::string> text = load_text(file, mistakes);
    if (!text) return finish(std::move(findings), std::nullopt);
    const std::string directory =
        file == "-" ? "." : std::filesystem::path(file).parent_path().string();
    return read_layout(*text, file, directory.empty() ? "." : directory);
}

}  // namespace dialplate
