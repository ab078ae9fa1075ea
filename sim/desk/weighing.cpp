#include "sim/desk/weighing.hpp"

#include "sim/image/build.hpp"
#include "sim/layout/amend.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/ledger.hpp"

#include <algorithm>
#include <filesystem>
#include <utility>

namespace dialplate {
namespace {

std::string name_of_all(const std::vector<Change>& changes) {
    std::string name;
    for (const Change& change : changes)
        name += std::string(name_of(change.kind)) + change.pointer + "=" + change.value + "\n";
    return name;
}

/// `more` is all the flash that the layout takes.
Weighed weigh(const std::string& text, const std::string& file) {
    const std::string folder = std::filesystem::path{file}.parent_path().string();
    Reading reading = read_layout(text, file, folder.empty() ? "." : folder);
    const auto complaint = [](const std::vector<Finding>& findings) {
        for (const Finding& finding : findings)
            if (finding.severity == Severity::error) return finding.message;
        return std::string("it cannot be made");
    };
    if (!reading.layout) return {std::nullopt, complaint(reading.findings), {}};
    const Building building = build_image(*reading.layout);
    if (!building.image) return {std::nullopt, complaint(building.findings), {}};
    const FlashAccount account = flash_account(*reading.layout, *building.image);
    Weighed weighed{account.total.value, {}, {}};
    for (const FaceCost& face : account.faces)
        weighed.faces.push_back({reading.layout->faces[static_cast<std::size_t>(face.face)].name,
                                 face.packing,
                                 face.bytes.value,
                                 face.plain.value,
                                 face.runs.value,
                                 face.context.value});
    return weighed;
}

}  // namespace

const WeighedPackings* Weighed::face(const std::string& name) const {
    const auto found =
        std::find_if(faces.begin(), faces.end(), [&](auto& one) { return one.name == name; });
    return found == faces.end() ? nullptr : &*found;
}

FlashWeighing::~FlashWeighing() {
    {
        const std::lock_guard lock(mutex_);
        ending_ = true;
        wanted_.clear();
    }
    wanted_some_.notify_all();
    if (worker_.joinable()) worker_.join();
}

void FlashWeighing::begin(std::size_t revision, const std::string& text, const std::string& file) {
    const std::lock_guard lock(mutex_);
    if (revision_ == revision) return;
    revision_ = revision;
    text_ = text;
    file_ = file;
    clear();
}

void FlashWeighing::forget() {
    const std::lock_guard lock(mutex_);
    clear();
}

void FlashWeighing::clear() {
    ++ground_;
    base_.reset();
    known_.clear();
    wanted_.clear();
}

std::optional<Weighed> FlashWeighing::weight(const std::vector<Change>& changes) {
    const std::string name = name_of_all(changes);
    const std::lock_guard lock(mutex_);
    const auto found = known_.find(name);
    if (found != known_.end()) return found->second;
    wanted_.emplace(name, changes);
    if (!worker_.joinable()) worker_ = std::thread(&FlashWeighing::work, this);
    wanted_some_.notify_one();
    return std::nullopt;
}

bool FlashWeighing::has_news() {
    const std::lock_guard lock(mutex_);
    return std::exchange(news_, false);
}

void FlashWeighing::wait() {
    std::unique_lock lock(mutex_);
    weighed_all_.wait(lock, [&] { return wanted_.empty() && !busy_; });
}

void FlashWeighing::work() {
    std::unique_lock lock(mutex_);
    while (true) {
        wanted_some_.wait(lock, [&] { return ending_ || !wanted_.empty(); });
        if (ending_) return;
        const auto [name, changes] = *wanted_.begin();
        const std::string text = text_, file = file_;
        const std::size_t ground = ground_;
        std::optional<Weighed> base = base_;
        busy_ = true;
        lock.unlock();
        if (!base) base = weigh(text, file);
        const Amended amended = amend(text, changes);
        Weighed weighed =
            amended.text ? weigh(*amended.text, file) : Weighed{std::nullopt, amended.mistake, {}};
        if (weighed.more && base->more)
            *weighed.more -= *base->more;
        else if (weighed.more)
            weighed = {std::nullopt, "there is nothing to compare with: " + base->obstacle, {}};
        lock.lock();
        busy_ = false;
        // Another document lies on the bench by now: what was weighed says nothing of it.
        if (ground == ground_) {
            base_ = std::move(base);
            known_[name] = std::move(weighed);
            wanted_.erase(name);
            news_ = true;
        }
        if (wanted_.empty()) weighed_all_.notify_all();
    }
}

}  // namespace dialplate
