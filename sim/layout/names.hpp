// The names that an author gives to paints, faces, values, looks and pages, and what refers to them.
#pragma once

#include "sim/layout/members.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace dialplate {

/// Names of one kind with their indices.
class Names {
public:
    /// @param kind     "paint"; also the end of the rule "unknown-paint".
    /// @param section  Where they are defined, for messages: "paints".
    Names(std::string_view kind, std::string_view section) : kind_(kind), section_(section) {}

    /// Adds a name; its index is the count before. False if it is there already.
    bool add(const std::string& name, Place place);
    /// Takes the next index without a name: it was missing or is another's already.
    void add_nameless(Place place);
    /// The section itself is missing or unusable: nothing is known, and nothing is reported as unknown.
    void unreadable() { readable_ = false; }

    [[nodiscard]] std::optional<int> index(const std::string& name) const;
    [[nodiscard]] std::size_t count() const { return order_.size(); }
    [[nodiscard]] Place place(int index) const { return places_[static_cast<std::size_t>(index)]; }

    /// The index of the name in a member; absent, wrong or unknown gives nullopt, and is reported unless
    /// absent.
    std::optional<int> find(const Members& members, std::string_view member) const;
    /// The same, with `otherwise` for an absent member (and for a wrong one).
    int find_or(const Members& members, std::string_view member, int otherwise) const;
    /// The same for a name that stands in a list. `what` begins the message.
    std::optional<int> find_in(const Node& node,
                               const std::string& pointer,
                               const std::string& what,
                               Mistakes& mistakes) const;

private:
    std::string_view kind_;
    std::string_view section_;
    bool readable_ = true;
    std::unordered_map<std::string, int> indices_;
    std::vector<std::string> order_;
    std::vector<Place> places_;
};

}  // namespace dialplate
