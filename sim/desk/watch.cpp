#include "sim/desk/watch.hpp"

#include <algorithm>
#include <sys/stat.h>
#include <utility>

namespace dialplate {

Watch::Stamp Watch::stamp_of(const std::string& file) {
    struct stat state {};
    if (stat(file.c_str(), &state) != 0) return {};
    return {static_cast<std::int64_t>(state.st_mtim.tv_sec),
            static_cast<std::int64_t>(state.st_mtim.tv_nsec),
            static_cast<std::int64_t>(state.st_size),
            static_cast<std::uint64_t>(state.st_ino)};
}

void Watch::look_after(std::vector<std::string> files) {
    std::sort(files.begin(), files.end());
    files.erase(std::unique(files.begin(), files.end()), files.end());
    if (files == files_)
        return;  // keeps stamps that may have changed since they were last compared
    // Files that were already looked after keep their stamp for the same reason.
    std::vector<Stamp> stamps;
    for (const std::string& file : files) {
        const auto known = std::lower_bound(files_.begin(), files_.end(), file);
        const bool old = known != files_.end() && *known == file;
        stamps.push_back(old ? stamps_[static_cast<std::size_t>(known - files_.begin())]
                             : stamp_of(file));
    }
    files_ = std::move(files);
    stamps_ = std::move(stamps);
}

bool Watch::changed() {
    bool any = false;
    for (std::size_t i = 0; i < files_.size(); ++i) {
        const Stamp now = stamp_of(files_[i]);
        any = any || !(now == stamps_[i]);
        stamps_[i] = now;
    }
    return any;
}

}  // namespace dialplate
