#include "sim/layout/names.hpp"

namespace dialplate {

bool Names::add(const std::string& name, Place place) {
    if (!indices_.emplace(name, static_cast<int>(order_.size())).second) return false;
    order_.push_back(name);
    places_.push_back(place);
    return true;
}

void Names::add_nameless(Place place) {
    order_.emplace_back();
    places_.push_back(place);
}

std::optional<int> Names::index(const std::string& name) const {
    const auto found = indices_.find(name);
    return found == indices_.end() ? std::nullopt : std::optional(found->second);
}

std::optional<int> Names::find(const Members& members, std::string_view member) const {
    const Node* const node = members.find(member);
    if (node == nullptr) return std::nullopt;
    return find_in(*node,
                   members.pointer_of(member),
                   quote(member) + " of " + members.what(),
                   members.mistakes());
}

std::optional<int> Names::find_in(const Node& node,
                                  const std::string& pointer,
                                  const std::string& what,
                                  Mistakes& mistakes) const {
    const std::optional<std::string> name = text_in(node, pointer, what, {.least = 0}, mistakes);
    if (!name) return std::nullopt;
    if (const std::optional<int> found = index(*name)) return found;
    if (!readable_) return std::nullopt;
    std::vector<std::string_view> known;
    for (const std::string& each : order_) {
        if (!each.empty()) known.push_back(each);
    }
    const std::string suggestion = did_you_mean(*name, known, mistakes);
    mistakes.add({"unknown-" + std::string(kind_),
                  pointer,
                  node.place,
                  what + " names the " + std::string(kind_) + ' ' + quote(*name) +
                      (known.empty() ? ", but " + quote(section_) + " is empty"
                                     : ", which " + quote(section_) + " does not have" +
                                           (suggestion.empty() ? ";" : suggestion) + " there are " +
                                           listed(known))});
    return std::nullopt;
}

int Names::find_or(const Members& members, std::string_view member, int otherwise) const {
    return find(members, member).value_or(otherwise);
}

}  // namespace dialplate
