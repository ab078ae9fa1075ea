// The members of one JSON object, read one by one with their type and range, every mistake reported.
#pragma once

#include "sim/layout/json_tree.hpp"
#include "sim/layout/mistakes.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace dialplate {

/// A member that an object may have.
struct MemberName {
    std::string_view name;
    bool needed = false;
};
using MemberTable = std::span<const MemberName>;

/// What an object describes: its kind ("key") and, if it has one, its name.
struct Noun {
    std::string_view kind;
    std::string name{};
};
/// What an object's member "name" (or another) says, for a noun; empty if it says nothing usable.
[[nodiscard]] std::string name_in(const Node& node, std::string_view member = "name");
/// `key "VFO"`, `key`
[[nodiscard]] std::string describe(const Noun& noun);
/// `a key`, `an opening`
[[nodiscard]] std::string with_article(std::string_view noun);

/// Whole numbers that are allowed, ends included.
struct Range {
    std::int64_t least = 0;
    std::int64_t most = 0;
    std::string_view why{};  ///< Where the limit comes from, for the message; may be empty.
};

/// Numbers that are allowed, ends included.
struct Span {
    double least = 0.0;
    double most = 0.0;
};

/// Characters that a text may have, and whether it may have several lines.
struct TextShape {
    std::size_t least = 0;
    std::size_t most = 255;
    int lines = 1;
};

/// One allowed word and what it stands for.
template <class Meaning>
struct Word {
    std::string_view word;
    Meaning meaning;
};

/// An object's members. Unknown and missing ones are reported when this is made, the rest when it is
/// asked for; what is wrong or absent reads as nullopt, so that one mistake is told once.
class Members {
public:
    /// @param node    The object; anything else is a wrong type. Outlives this, as does `table`.
    /// @param noun    For messages.
    Members(
        const Node& node, std::string pointer, Noun noun, MemberTable table, Mistakes& mistakes);

    [[nodiscard]] bool has(std::string_view name) const { return node_.find(name) != nullptr; }
    [[nodiscard]] const Node* find(std::string_view name) const { return node_.find(name); }
    [[nodiscard]] const Node& node() const { return node_; }
    [[nodiscard]] const std::string& pointer() const { return pointer_; }
    [[nodiscard]] std::string pointer_of(std::string_view name) const;
    [[nodiscard]] Mistakes& mistakes() const { return mistakes_; }
    [[nodiscard]] std::string what() const { return describe(noun_); }

    std::optional<std::int64_t> whole(std::string_view name, const Range& range) const;
    /// A whole number that fits an int; `otherwise` when absent or wrong.
    int whole_or(std::string_view name, const Range& range, int otherwise) const;
    std::optional<double> number(std::string_view name, const Span& span) const;
    std::optional<bool> flag(std::string_view name) const;
    std::optional<std::string> text(std::string_view name, const TextShape& shape) const;
    /// A list of exactly two whole numbers.
    std::optional<std::array<int, 2>> pair(std::string_view name,
                                           const std::array<Range, 2>& ranges) const;
    /// A list with so many elements.
    const Node* list(std::string_view name, const Range& count) const;
    /// An object; null if absent or something else.
    const Node* object(std::string_view name) const;

    template <class Meaning>
    std::optional<Meaning> one_of(std::string_view name,
                                  std::span<const Word<Meaning>> words) const {
        const std::optional<std::string> word = text(name, {.least = 1});
        if (!word) return std::nullopt;
        std::vector<std::string_view> allowed;
        for (const Word<Meaning>& each : words) {
            if (each.word == *word) return each.meaning;
            allowed.push_back(each.word);
        }
        unknown_word(name, *word, allowed);
        return std::nullopt;
    }

    /// Reports a mistake at a member's value, or at the object if it is absent.
    /// @param message  What follows `"member" of thing `.
    void fail(std::string_view name, const char* rule, const std::string& message) const;
    /// Reports a mistake at the object itself.
    void fail_whole(const char* rule, const std::string& message) const;

private:
    void check_names(MemberTable table) const;
    void unknown_word(std::string_view name,
                      const std::string& word,
                      const std::vector<std::string_view>& allowed) const;

    const Node& node_;
    std::string pointer_;
    Noun noun_;
    Mistakes& mistakes_;
};

/// Whole number in a node; reports a wrong type or range. `what` begins the message.
std::optional<std::int64_t> whole_in(const Node& node,
                                     const std::string& pointer,
                                     const std::string& what,
                                     const Range& range,
                                     Mistakes& mistakes);

/// Text in a node: no control characters but line feeds between lines, length counted in characters.
std::optional<std::string> text_in(const Node& node,
                                   const std::string& pointer,
                                   const std::string& what,
                                   const TextShape& shape,
                                   Mistakes& mistakes);

/// A name that the author gives: 1 to 40 characters, no quotes, backslashes, equals signs, slashes or
/// control characters, no blank at either end. Reports what is wrong.
bool check_name(std::string_view name,
                std::string_view kind,
                const std::string& pointer,
                Place place,
                Mistakes& mistakes);

/// `; did you mean "x"?` or nothing.
std::string did_you_mean(std::string_view wrong,
                         const std::vector<std::string_view>& candidates,
                         Mistakes& mistakes);

/// `a, b, c`; a long list is cut off.
std::string listed(const std::vector<std::string_view>& words);

}  // namespace dialplate
