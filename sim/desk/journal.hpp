// What the receiver heard and what the display was sent, newest last.
#pragma once

#include "sim/ledger/ledger.hpp"
#include "sim/prototype/parts_used.hpp"
#include "sim/prototype/prototype.hpp"

#include <cstdint>
#include <deque>
#include <string>
#include <vector>

namespace dialplate {

/// One update of the glass as the receiver would do it.
struct SentUpdate {
    EventTime time;
    std::vector<SentWindow> windows;
    std::uint64_t at_ms = 0;
};

/// One event of a key.
struct HeardEvent {
    KeyEvent event;
    std::string value;  ///< What changed with it, in words; empty: nothing.
    std::uint64_t at_ms = 0;
};

class Journal {
public:
    static constexpr std::size_t most = 200;

    /// Begins anew with another layout.
    void begin(const Layout& layout, const BuiltImage& built);
    /// @param cause  "tuning step". Updates that sent nothing are not written down.
    void sent(const Layout& layout,
              const std::string& cause,
              const Update& update,
              std::uint64_t now_ms);
    void heard(HeardEvent event);

    [[nodiscard]] const std::deque<SentUpdate>& updates() const { return updates_; }
    [[nodiscard]] const std::deque<HeardEvent>& events() const { return events_; }
    void clear();

private:
    PartSet parts_{};
    std::deque<SentUpdate> updates_;
    std::deque<HeardEvent> events_;
};

/// "press", "hold", ... as the list shows it.
[[nodiscard]] const char* name_of(KeyEventKind kind);

}  // namespace dialplate
