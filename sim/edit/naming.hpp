// The names that an author gives within a document (paints, looks, faces, values, pages, the states of a choice),
// who uses them, and how they get others. Works on the text and its tree; knows no window.
#pragma once

#include "sim/edit/schema.hpp"
#include "sim/layout/amend.hpp"

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace dialplate {

/// What has a name: one of Shape::Kind's paint, look, face, value, page.
[[nodiscard]] bool has_names(Shape::Kind kind);
/// "paint"
[[nodiscard]] const char* noun_of(Shape::Kind kind);
/// Where those of a kind stand: "/paints".
[[nodiscard]] std::string section_of(Shape::Kind kind);

/// The names of a kind, in the order of the document.
[[nodiscard]] std::vector<std::string> names_of(const Node& document, Shape::Kind kind);
/// Where the thing of that name is; empty if there is none.
[[nodiscard]] std::string place_of(const Node& document, Shape::Kind kind, std::string_view name);
/// The name that is written at a place, if something with a name is there: of "/paints/ink" the paint "ink".
struct Named {
    Shape::Kind kind = Shape::Kind::other;
    std::string name;
};
[[nodiscard]] Named named_at(const Node& document, const std::string& pointer);

/// "amber" becomes "amber 2", or the first number that is free.
[[nodiscard]] std::string free_name(const Node& document, Shape::Kind kind, std::string like);

/// "key 3" becomes "key 4", or the first number that is free; shortened so that a name of 40 bytes comes out.
[[nodiscard]] std::string next_free(std::string like,
                                    const std::function<bool(const std::string&)>& taken);
/// As many characters as go into so many bytes.
[[nodiscard]] std::string shortened(std::string words, std::size_t bytes);
/// What a state of a choice is called: the text itself, or its "text".
[[nodiscard]] std::string state_words(const Node& state);

/// Where each name of a document is used.
class NameUses {
public:
    NameUses() = default;
    NameUses(const Schema& schema, const Node& document);
    /// Pointers of the texts that say the name, in the order of the document.
    [[nodiscard]] const std::vector<std::string>& of(Shape::Kind kind,
                                                     const std::string& name) const;

private:
    std::map<std::pair<Shape::Kind, std::string>, std::vector<std::string>> uses_;
};

/// A place in words: `ink of "dial" on page "main"`.
[[nodiscard]] std::string in_words(const Node& document, const std::string& pointer);
/// Who uses a name, in words: at most `most` of them; empty if nobody does.
[[nodiscard]] std::string users_in_words(const Node& document,
                                         const std::vector<std::string>& uses,
                                         std::size_t most);

/// Gives a thing another name, and all that use it say the new one.
/// @return The new document, or why not: one sentence.
Amended renamed(const Schema& schema,
                std::string_view text,
                const Node& document,
                const Named& named,
                const std::string& name);

/// Gives a state of a choice other words, and all that speak of that state say the new ones.
/// @param pointer  Of the words: "/values/mode/choices/1" or ".../1/text".
Amended renamed_state(const Schema& schema,
                      std::string_view text,
                      const Node& document,
                      const std::string& pointer,
                      const std::string& words);
/// Whether the text at a place is the words of a choice's state.
[[nodiscard]] bool is_state_words(const Node& document, const std::string& pointer);

/// The states, as JSON, that may stand at a place: of a choice its words, of a flag true and false; empty where
/// any number may stand, or no state does.
[[nodiscard]] std::vector<std::string> states_at(const Node& document, const std::string& pointer);

/// Takes away what has a name, with the entries of the palettes for a paint.
/// @return The new document, or who uses it.
Amended without(const Schema& schema,
                std::string_view text,
                const Node& document,
                const Named& named);

}  // namespace dialplate
