// What other choices would cost in flash, weighed one by one while a list of them is open.
#pragma once

#include "sim/layout/finding.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// What a change of the document would do to the flash account.
struct Weighed {
    std::optional<std::int64_t> more;  ///< Bytes; negative: less. Absent: it cannot be made.
    std::string obstacle;              ///< Then why, one sentence.
};

class FlashWeighing {
public:
    /// The document that changes are weighed against; another one forgets all that was weighed.
    /// @param file  Of the layout, for its directory.
    void begin(std::size_t revision, const std::string& text, const std::string& file);

    /// The weight of a change, if it is known; else it is remembered as wanted.
    const Weighed* weight(const std::vector<Change>& changes);
    /// Weighs one of those that are wanted. @return Whether there was one, so that there is news to show.
    bool weigh_one();

private:
    [[nodiscard]] Weighed weigh(const std::string& text) const;

    std::optional<std::size_t> revision_;
    std::string text_, file_;
    std::optional<std::int64_t> base_;  ///< Bytes that the document takes itself.
    std::map<std::string, Weighed> known_;
    std::map<std::string, std::vector<Change>> wanted_;
};

}  // namespace dialplate
