#include "sim/layout/suggestion.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace dialplate {
namespace {

// Longer words are no slips of the pen, and the cost is the product of both lengths.
constexpr std::size_t longest_word = 64;
constexpr std::size_t shortest_beginning = 3;

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool begins_with(std::string_view word, std::string_view beginning) {
    return beginning.size() >= shortest_beginning && beginning.size() <= word.size() &&
           std::equal(beginning.begin(), beginning.end(), word.begin(), [](char a, char b) {
               return small(a) == small(b);
           });
}

}  // namespace

int edit_distance(std::string_view a, std::string_view b, int limit) {
    if (a.size() > longest_word || b.size() > longest_word) return limit + 1;
    const int rows = static_cast<int>(a.size());
    const int columns = static_cast<int>(b.size());
    if (std::abs(rows - columns) > limit) return limit + 1;

    using Row = std::array<int, longest_word + 1>;
    Row before_last{}, last{}, present{};
    for (int j = 0; j <= columns; ++j)
        present[static_cast<std::size_t>(j)] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        before_last = last;
        last = present;
        present[0] = static_cast<int>(i);
        int least = present[0];
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const bool same = small(a[i - 1]) == small(b[j - 1]);
            int cost = std::min({last[j] + 1, present[j - 1] + 1, last[j - 1] + (same ? 0 : 1)});
            const bool swapped = i > 1 && j > 1 && small(a[i - 1]) == small(b[j - 2]) &&
                                 small(a[i - 2]) == small(b[j - 1]);
            if (swapped) cost = std::min(cost, before_last[j - 2] + 1);
            present[j] = cost;
            least = std::min(least, cost);
        }
        if (least > limit) return limit + 1;
    }
    return present[b.size()];
}

std::string_view nearest(std::string_view wrong, const std::vector<std::string_view>& candidates) {
    const int limit = std::max(1, (static_cast<int>(std::min(wrong.size(), longest_word)) + 1) / 3);
    std::string_view best;
    int best_distance = limit + 1;
    for (const std::string_view candidate : candidates) {
        // A one-letter name is one change away from every other one-letter name.
        const bool single = candidate.size() == 1 && wrong.size() == 1;
        if (candidate.empty() || (single && candidate != wrong)) continue;
        int distance = edit_distance(wrong, candidate, limit);
        if (begins_with(candidate, wrong) || begins_with(wrong, candidate)) {
            distance = std::min(distance, limit);
        }
        if (distance < best_distance) {
            best = candidate;
            best_distance = distance;
        }
    }
    return best;
}

}  // namespace dialplate
