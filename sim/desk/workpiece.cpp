#include "sim/desk/workpiece.hpp"

#include "sim/check/check.hpp"
#include "sim/layout/reader.hpp"

#include <algorithm>
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

bool Workpiece::load() {
    Reading reading = load_layout(file_);
    if (!reading.layout) {
        mistakes_ = errors_of(reading.findings);
        return false;
    }
    Building building = build_image(*reading.layout);
    if (!building.image) {
        mistakes_ = errors_of(building.findings);
        return false;
    }
    mistakes_.clear();
    remarks_ = std::move(reading.findings);
    remarks_.insert(remarks_.end(), building.findings.begin(), building.findings.end());
    findings_.reset();
    ledger_.reset();

    built_ = std::move(building.image);
    auto young = std::make_unique<Prototype>(*reading.layout, *built_);
    if (prototype_) carry_over(*prototype_, *young);
    young->live(live_);
    young->settle();
    prototype_ = std::move(young);
    return true;
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
