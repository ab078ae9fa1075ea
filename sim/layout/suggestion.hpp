// The name that was probably meant.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

/// Least number of changes that turn one word into the other: a byte put in, taken out or exchanged, or
/// two neighbours swapped. ASCII capitals and small letters count as the same.
/// @param limit  Greater distances may be returned as `limit + 1`; keeps long words cheap.
/// Source: restricted Damerau-Levenshtein distance (optimal string alignment).
[[nodiscard]] int edit_distance(std::string_view a, std::string_view b, int limit);

/// The candidate nearest to `wrong`, or an empty view if none is near: at most one change in three
/// letters (two in five), or one is the beginning of the other. The first of equally near ones.
[[nodiscard]] std::string_view nearest(std::string_view wrong,
                                       const std::vector<std::string_view>& candidates);

/// Which of our names an unknown word was meant to be: the nearest one, else the one that stands here for
/// what the word, or one near to it, means elsewhere ("lable": label: "text"). Empty: none is near.
[[nodiscard]] std::string_view meant_word(std::string_view wrong,
                                          const std::vector<std::string_view>& names);

}  // namespace dialplate
