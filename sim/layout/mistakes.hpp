// Where the mistakes of one document are collected while it is read.
#pragma once

#include "sim/layout/finding.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace dialplate {

/// One mistake, before it becomes a Finding.
struct Mistake {
    std::string rule;
    std::string pointer{};
    Place place{};
    std::string message;
};

class Mistakes {
public:
    /// @param findings  Where they go; outlives this.
    /// @param file      Name of a part file, empty for the layout itself.
    explicit Mistakes(std::vector<Finding>& findings, std::string file = {})
        : findings_(findings), file_(std::move(file)) {}

    void add(Mistake mistake);
    /// Mistakes so far, those of other documents in the same list included.
    [[nodiscard]] std::size_t count() const { return findings_.size(); }
    [[nodiscard]] std::vector<Finding>& findings() { return findings_; }
    /// Whether a suggestion may still be looked for. Comparing words is the only costly thing here; a
    /// file with thousands of wrong names gets its first ones explained.
    [[nodiscard]] bool may_suggest() { return suggestions_++ < most_suggestions; }

private:
    static constexpr int most_suggestions = 500;
    std::vector<Finding>& findings_;
    std::string file_;
    int suggestions_ = 0;
};

/// Text in quotes for a message: control characters escaped, the tail of a long text cut off.
[[nodiscard]] std::string quote(std::string_view text);

}  // namespace dialplate
