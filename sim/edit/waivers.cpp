#include "sim/edit/waivers.hpp"

#include "sim/edit/json_words.hpp"
#include "sim/edit/pointers.hpp"
#include "sim/edit/schema.hpp"

#include <algorithm>
#include <charconv>

namespace dialplate {
namespace {

bool within(const std::string& pointer, const std::string& place) {
    return pointer.starts_with(place) &&
           (pointer.size() == place.size() || pointer[place.size()] == '/');
}

std::optional<std::size_t> number_in(std::string_view token) {
    std::size_t number = 0;
    const auto [end, fault] = std::from_chars(token.data(), token.data() + token.size(), number);
    if (fault != std::errc{} || end != token.data() + token.size()) return std::nullopt;
    return number;
}

/// What follows `list` in a pointer: the index, and the rest with its slash.
struct InList {
    std::size_t index = 0;
    std::string rest;
};
std::optional<InList> in_list(const std::string& pointer, const std::string& list) {
    if (!within(pointer, list) || pointer.size() <= list.size() + 1) return std::nullopt;
    const std::size_t end = std::min(pointer.find('/', list.size() + 1), pointer.size());
    const std::optional<std::size_t> index =
        number_in(std::string_view(pointer).substr(list.size() + 1, end - list.size() - 1));
    if (!index) return std::nullopt;
    return InList{*index, pointer.substr(end)};
}

}  // namespace

std::vector<Change> waivers_following(const Node& document, const NewPlace& now) {
    std::vector<Change> changes, gone;
    const Node* waived = document.find("waived");
    if (waived == nullptr) return changes;
    for (std::size_t i = 0; i < waived->elements.size(); ++i) {
        const std::string item = text_in(&waived->elements[i], "item");
        if (item.empty()) continue;
        const std::string waiver = "/waived/" + std::to_string(i);
        const std::optional<std::string> place = now(item);
        if (!place)
            gone.insert(gone.begin(), {Change::Kind::remove, waiver, {}});
        else if (*place != item)
            changes.push_back({Change::Kind::replace, waiver + "/item", json_text(*place)});
    }
    changes.insert(changes.end(), gone.begin(), gone.end());
    return changes;
}

NewPlace after_rename(const std::string& from, const std::string& to) {
    return [=](const std::string& pointer) -> std::optional<std::string> {
        return within(pointer, from) ? to + pointer.substr(from.size()) : pointer;
    };
}

NewPlace after_removal(const Node& document, std::span<const std::string> pointers) {
    std::vector<std::string> gone(pointers.begin(), pointers.end());
    return [gone, &document](const std::string& pointer) -> std::optional<std::string> {
        std::string now = pointer;
        for (const std::string& place : gone) {
            if (within(pointer, place)) return std::nullopt;
            // A member's name may be a number, too.
            const Node* list = node_at(document, parent_of(place));
            if (list == nullptr || list->kind != Node::Kind::list) continue;
            const std::optional<std::size_t> index = number_in(last_of(place));
            const std::optional<InList> here = in_list(pointer, parent_of(place));
            if (!index || !here || here->index < *index) continue;
            // Counted in the old places, so that several may go at once.
            const InList so_far = *in_list(now, parent_of(place));
            now = parent_of(place) + "/" + std::to_string(so_far.index - 1) + so_far.rest;
        }
        return now;
    };
}

NewPlace after_move(const std::string& list, std::size_t from, std::size_t to) {
    return [=](const std::string& pointer) -> std::optional<std::string> {
        const std::optional<InList> here = in_list(pointer, list);
        if (!here) return pointer;
        std::size_t index = here->index;
        if (index == from)
            index = to;
        else if (index > from && index <= to)
            --index;
        else if (index < from && index >= to)
            ++index;
        return list + "/" + std::to_string(index) + here->rest;
    };
}

}  // namespace dialplate
