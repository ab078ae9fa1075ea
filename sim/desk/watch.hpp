// Notices that files were saved. Looks at their stamps when asked: one call to the system a file, cheap
// enough for twenty times a second, and indifferent to how an editor saves (in place, or by renaming a
// new file over the old one).
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace dialplate {

class Watch {
public:
    /// Begins anew with these files; what is not there counts as absent, and appears when it does.
    void look_after(std::vector<std::string> files);
    /// Whether one was saved, appeared or vanished since the last call.
    bool changed();

private:
    struct Stamp {
        std::int64_t seconds = 0, nanoseconds = 0, size = -1;
        std::uint64_t node = 0;  ///< Another file under the old name.
        friend bool operator==(const Stamp&, const Stamp&) = default;
    };
    static Stamp stamp_of(const std::string& file);

    std::vector<std::string> files_;
    std::vector<Stamp> stamps_;
};

}  // namespace dialplate
