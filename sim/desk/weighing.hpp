// What other choices would cost in flash, weighed in the background, one after the other, from when a list of them is
// opened.
#pragma once

#include "sim/layout/finding.hpp"

#include <condition_variable>
#include <cstddef>
#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

namespace dialplate {

/// A face as it would then be stored, and in its other packings; 0: not in this one.
struct WeighedPackings {
    std::string name, packing;
    std::int64_t bytes = 0, plain = 0, runs = 0, context = 0;
};

/// What a change of the document would do to the flash account.
struct Weighed {
    std::optional<std::int64_t> more;  ///< Bytes; negative: less. Absent: it cannot be made.
    std::string obstacle;              ///< Then why, one sentence.
    std::vector<WeighedPackings> faces;

    /// Null if the layout then has none of that name.
    [[nodiscard]] const WeighedPackings* face(const std::string& name) const;
};

class FlashWeighing {
public:
    FlashWeighing() = default;
    /// Waits for the one that is being weighed.
    ~FlashWeighing();
    FlashWeighing(const FlashWeighing&) = delete;
    FlashWeighing& operator=(const FlashWeighing&) = delete;

    /// The document that changes are weighed against; another one forgets all that was weighed.
    /// @param file  Of the layout, for its directory.
    void begin(std::size_t revision, const std::string& text, const std::string& file);
    /// A font or a picture may be another: nothing that was weighed holds.
    void forget();

    /// The weight of a change, if it is known; else it is weighed from now on.
    std::optional<Weighed> weight(const std::vector<Change>& changes);
    /// Whether something was weighed since this was asked last.
    bool has_news();
    /// Until all that was asked for is weighed.
    void wait();

private:
    void work();
    void clear();  ///< @pre The mutex is held.

    std::mutex mutex_;
    std::condition_variable wanted_some_, weighed_all_;
    std::thread worker_;
    bool ending_ = false, busy_ = false, news_ = false;
    std::optional<std::size_t> revision_;
    std::size_t ground_ = 0;  ///< Counts what changes were weighed against.
    std::string text_, file_;
    std::optional<Weighed> base_;  ///< What the document takes itself.
    std::map<std::string, Weighed> known_;
    std::map<std::string, std::vector<Change>> wanted_;
};

}  // namespace dialplate
