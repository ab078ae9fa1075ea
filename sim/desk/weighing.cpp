#include "sim/desk/weighing.hpp"

#include "sim/image/build.hpp"
#include "sim/layout/amend.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/ledger.hpp"

#include <filesystem>

namespace dialplate {
namespace {

std::string name_of_all(const std::vector<Change>& changes) {
    std::string name;
    for (const Change& change : changes)
        name += change.pointer + "=" + change.value + "\n";
    return name;
}

}  // namespace

void FlashWeighing::begin(std::size_t revision, const std::string& text, const std::string& file) {
    if (revision_ == revision) return;
    revision_ = revision;
    text_ = text;
    file_ = file;
    base_.reset();
    known_.clear();
    wanted_.clear();
}

const Weighed* FlashWeighing::weight(const std::vector<Change>& changes) {
    const std::string name = name_of_all(changes);
    const auto found = known_.find(name);
    if (found != known_.end()) return &found->second;
    wanted_.emplace(name, changes);
    return nullptr;
}

Weighed FlashWeighing::weigh(const std::string& text) const {
    const std::string folder = std::filesystem::path{file_}.parent_path().string();
    Reading reading = read_layout(text, file_, folder.empty() ? "." : folder);
    const auto complaint = [](const std::vector<Finding>& findings) {
        for (const Finding& finding : findings)
            if (finding.severity == Severity::error) return finding.message;
        return std::string("it cannot be made");
    };
    if (!reading.layout) return {std::nullopt, complaint(reading.findings)};
    const Building building = build_image(*reading.layout);
    if (!building.image) return {std::nullopt, complaint(building.findings)};
    return {flash_account(*reading.layout, *building.image).total.value, {}};
}

bool FlashWeighing::weigh_one() {
    if (wanted_.empty()) return false;
    if (!base_) base_ = weigh(text_).more.value_or(0);
    const auto next = wanted_.begin();
    const Amended amended = amend(text_, next->second);
    Weighed weighed = amended.text ? weigh(*amended.text) : Weighed{std::nullopt, amended.mistake};
    if (weighed.more) *weighed.more -= *base_;
    known_[next->first] = std::move(weighed);
    wanted_.erase(next);
    return true;
}

}  // namespace dialplate
