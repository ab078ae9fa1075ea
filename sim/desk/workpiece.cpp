#include "sim/desk/workpiece.hpp"

#include "sim/check/check.hpp"
#include "sim/layout/reader.hpp"
#include "sim/layout/source_text.hpp"

#include <algorithm>
#include <filesystem>
#include <utility>

namespace dialplate {
namespace {

/// The findings that kept a file from being shown.
std::vector<Finding> errors_of(const std::vector<Finding>& findings) {
    std::vector<Finding> errors;
    std::copy_if(
        findings.begin(), findings.end(), std::back_inserter(errors), [](const Finding& finding) {
            return finding.severity == Severity::error;
        });
    // Nothing came of it although nothing is called an error: then whatever was said must do.
    return errors.empty() ? findings : errors;
}

template <class Named>
int index_of(const std::vector<Named>& all, const std::string& name) {
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].name == name) return static_cast<int>(i);
    return -1;
}

/// Brings `young` where `old` was, as far as the two layouts have the same names.
void carry_over(Prototype& old, Prototype& young) {
    const Layout& before = old.layout();
    const Layout& after = young.layout();
    for (std::size_t i = 0; i < before.values.size(); ++i) {
        const int there = index_of(after.values, before.values[i].name);
        if (there < 0) continue;
        const Value& value = after.values[static_cast<std::size_t>(there)];
        if (value.type != before.values[i].type) continue;
        // A choice is known by its text, wherever in the list it now stands.
        std::int32_t now = old.get(static_cast<ValueId>(i));
        if (value.type == ValueType::choice) {
            const std::string& text = before.values[i].choices[static_cast<std::size_t>(now)].text;
            const auto found = std::find_if(value.choices.begin(),
                                            value.choices.end(),
                                            [&](const Choice& c) { return c.text == text; });
            if (found == value.choices.end()) continue;
            now = static_cast<std::int32_t>(found - value.choices.begin());
        }
        young.set(there, now);
    }
    const int page = index_of(after.pages, before.pages[static_cast<std::size_t>(old.page())].name);
    if (page > 0) young.show_page(page);
    const std::string& palette = before.palettes[static_cast<std::size_t>(old.palette())];
    const auto found = std::find(after.palettes.begin(), after.palettes.end(), palette);
    if (found != after.palettes.end())
        young.use_palette(static_cast<int>(found - after.palettes.begin()));
}

}  // namespace

Workpiece::Workpiece(std::string file, bool live) : file_(std::move(file)), live_(live) {}

std::optional<std::string> Workpiece::read() {
    std::vector<Finding> findings;
    Mistakes mistakes(findings);
    std::optional<std::string> text = load_text(file_, mistakes);
    if (!text) mistakes_ = std::move(findings);
    return text;
}

Workpiece::Fresh Workpiece::make(const std::string& text) const {
    const std::string folder = std::filesystem::path{file_}.parent_path().string();
    Fresh fresh;
    Reading reading = read_layout(text, file_, folder.empty() ? "." : folder);
    fresh.remarks = std::move(reading.findings);
    if (!reading.layout) {
        fresh.mistakes = errors_of(fresh.remarks);
        return fresh;
    }
    fresh.layout = std::move(reading.layout);
    Building building = build_image(*fresh.layout);
    if (!building.image) fresh.mistakes = errors_of(building.findings);
    fresh.image = std::move(building.image);
    fresh.remarks.insert(fresh.remarks.end(), building.findings.begin(), building.findings.end());
    return fresh;
}

void Workpiece::take(Fresh fresh) {
    mistakes_.clear();
    remarks_ = std::move(fresh.remarks);
    findings_.reset();
    ledger_.reset();
    built_ = std::move(fresh.image);
    auto young = std::make_unique<Prototype>(*fresh.layout, *built_);
    if (prototype_) carry_over(*prototype_, *young);
    young->live(live_);
    young->settle();
    prototype_ = std::move(young);
}

bool Workpiece::show(const std::string& text) {
    text_ = text;
    Fresh fresh = make(text);
    if (!fresh.image) {
        mistakes_ = std::move(fresh.mistakes);
        return false;
    }
    take(std::move(fresh));
    return true;
}

std::string Workpiece::try_to_show(const std::string& text) {
    Fresh fresh = make(text);
    if (!fresh.image)
        return fresh.mistakes.empty() ? "the layout cannot be shown"
                                      : fresh.mistakes.front().message;
    text_ = text;
    take(std::move(fresh));
    return {};
}

std::string Workpiece::show_if_better(const std::string& text) {
    Fresh fresh = make(text);
    if (!fresh.image && fresh.mistakes.size() >= mistakes_.size())
        return fresh.mistakes.empty() ? "the layout cannot be shown"
                                      : fresh.mistakes.front().message;
    text_ = text;
    if (fresh.image)
        take(std::move(fresh));
    else
        mistakes_ = std::move(fresh.mistakes);
    return {};
}

void Workpiece::judge() {
    if (!prototype_ || findings_) return;
    ledger_ = account(layout(), *built_);
    findings_ = check({layout(), *built_, *ledger_});
    findings_->insert(findings_->end(), remarks_.begin(), remarks_.end());
    sort_by_place(*findings_);
}

std::vector<std::string> Workpiece::sources() const {
    std::vector<std::string> files{file_};
    if (!prototype_) return files;
    const auto add = [&](const std::string& name) {
        const std::string found = find_file(layout().directory, name);
        if (!found.empty()) files.push_back(found);
    };
    for (const Face& face : layout().faces)
        if (face.kind == FaceKind::raster) add(face.file);
    for (const Page& page : layout().pages)
        for (const Item& item : page.items)
            if (item.kind == ItemKind::picture) add(item.picture.file);
    return files;
}

}  // namespace dialplate
