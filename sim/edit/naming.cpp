#include "sim/edit/naming.hpp"

#include "sim/edit/json_words.hpp"
#include "sim/edit/pointers.hpp"
#include "sim/edit/waivers.hpp"

#include <algorithm>
#include <iterator>
#include <optional>

namespace dialplate {
namespace {

using Kind = Shape::Kind;

struct Section {
    Kind kind;
    const char *noun, *pointer;
};
constexpr Section sections[] = {{Kind::paint, "paint", "/paints"},
                                {Kind::look, "look", "/looks"},
                                {Kind::face, "face", "/faces"},
                                {Kind::value, "value", "/values"},
                                {Kind::page, "page", "/pages"}};

const Section* section_with(Kind kind) {
    const auto* found = std::find_if(
        std::begin(sections), std::end(sections), [&](auto& one) { return one.kind == kind; });
    return found == std::end(sections) ? nullptr : found;
}

/// The value of that name.
const Node* value_of(const Node& document, const std::string& name) {
    const Node* values = document.find("values");
    return values == nullptr ? nullptr : values->find(name);
}

std::string name_of_choice_with(const Node& document, const char* role) {
    if (const Node* values = document.find("values"); values != nullptr)
        for (const Member& member : values->members)
            if (text_in(&member.value, "role") == role) return member.name;
    return {};
}

/// Name of the value whose state is, or would be, at a place.
std::string value_behind(const Node& document, const std::string& pointer) {
    const std::string last = last_of(pointer), parent = parent_of(pointer);
    const Node* object = node_at(document, parent);
    if (last == "when" || (last == "at" && last_of(parent) == "active"))
        return text_in(object, "value");
    if (last == "to") return text_in(object, "set");
    if (last == "start" && parent_of(parent) == "/values") {
        for (const Member& member : document.find("values")->members)
            if (pointer_part(member.name) == "/" + last_of(parent)) return member.name;
    }
    if (last == "mode" && last_of(parent_of(parent)) == "choices")
        return name_of_choice_with(document, "mode");
    return {};
}

/// Where the thing whose words stand at a place belongs: the pointers of its value and of its entry.
struct StatePlace {
    std::string value, choice;
};
std::optional<StatePlace> state_place(const Node& document, const std::string& pointer) {
    std::string choice = pointer;
    if (last_of(choice) == "text") choice = parent_of(choice);
    const std::string list = parent_of(choice), value = parent_of(list);
    if (last_of(list) != "choices" || parent_of(value) != "/values") return std::nullopt;
    const Node* node = node_at(document, choice);
    if (node == nullptr) return std::nullopt;
    const bool whole = choice == pointer;
    if (whole != (node->kind == Node::Kind::text)) return std::nullopt;
    return StatePlace{value, choice};
}

}  // namespace

bool has_names(Kind kind) {
    return section_with(kind) != nullptr;
}

const char* noun_of(Kind kind) {
    const Section* section = section_with(kind);
    return section == nullptr ? "thing" : section->noun;
}

std::string section_of(Kind kind) {
    const Section* section = section_with(kind);
    return section == nullptr ? "" : section->pointer;
}

std::vector<std::string> names_of(const Node& document, Kind kind) {
    std::vector<std::string> names;
    const Node* all = node_at(document, section_of(kind));
    if (!has_names(kind) || all == nullptr) return names;
    for (const Member& member : all->members)
        names.push_back(member.name);
    for (const Node& element : all->elements)
        if (std::string name = text_in(&element, "name"); !name.empty())
            names.push_back(std::move(name));
    return names;
}

std::string place_of(const Node& document, Kind kind, std::string_view name) {
    const std::string section = section_of(kind);
    const Node* all = node_at(document, section);
    if (section.empty() || all == nullptr) return {};
    if (kind != Kind::page) return all->find(name) == nullptr ? "" : section + pointer_part(name);
    for (std::size_t i = 0; i < all->elements.size(); ++i)
        if (text_in(&all->elements[i], "name") == name) return section + pointer_part(i);
    return {};
}

Named named_at(const Node& document, const std::string& pointer) {
    for (const Section& section : sections) {
        if (parent_of(pointer) != section.pointer) continue;
        const Node* all = node_at(document, section.pointer);
        if (all == nullptr) return {};
        for (const Member& member : all->members)
            if (section.pointer + pointer_part(member.name) == pointer)
                return {section.kind, member.name};
        if (const Node* node = node_at(document, pointer);
            node != nullptr && !all->elements.empty())
            return {section.kind, text_in(node, "name")};
    }
    return {};
}

std::string free_name(const Node& document, Kind kind, std::string like) {
    const std::vector<std::string> names = names_of(document, kind);
    const auto taken = [&](const std::string& name) {
        return std::find(names.begin(), names.end(), name) != names.end();
    };
    if (!like.empty() && !taken(like)) return like;
    return next_free(std::move(like), taken);
}

std::string next_free(std::string like, const std::function<bool(const std::string&)>& taken) {
    const std::size_t last = like.find_last_not_of("0123456789");
    if (last != std::string::npos && last + 1 < like.size() && like[last] == ' ') like.resize(last);
    constexpr std::size_t longest = 34;  // a name has 40 characters at most
    like = shortened(std::move(like), longest);
    for (int number = 2;; ++number)
        if (std::string name = like + " " + std::to_string(number); !taken(name)) return name;
}

std::string shortened(std::string words, std::size_t bytes) {
    if (words.size() <= bytes) return words;
    // UTF-8: bytes 10xxxxxx go on with a character.
    while (bytes > 0 && (static_cast<unsigned char>(words[bytes]) & 0xC0U) == 0x80U)
        --bytes;
    words.resize(bytes);
    return words;
}

std::string state_words(const Node& state) {
    return state.kind == Node::Kind::text ? state.text : text_in(&state, "text");
}

NameUses::NameUses(const Schema& schema, const Node& document) {
    schema.visit(document, [&](const std::string& pointer, const Shape& shape, const Node& value) {
        if (has_names(shape.kind) && value.kind == Node::Kind::text)
            uses_[{shape.kind, value.text}].push_back(pointer);
    });
}

const std::vector<std::string>& NameUses::of(Kind kind, const std::string& name) const {
    static const std::vector<std::string> none;
    const auto found = uses_.find({kind, name});
    return found == uses_.end() ? none : found->second;
}

std::string in_words(const Node& document, const std::string& pointer) {
    const Node* node = &document;
    std::string words, owner, behind;
    std::string rest = pointer, at;
    while (!rest.empty()) {
        const std::string token = rest.substr(1, rest.find('/', 1) - 1);
        rest = rest.substr(std::min(token.size() + 1, rest.size()));
        at += "/" + token;
        const std::string parent = parent_of(at);
        node = node_at(document, at);
        if (parent == "/pages") {
            behind = " on page \"" + text_in(node, "name") + "\"";
        } else if (last_of(parent) == "items") {
            const std::string name = text_in(node, "name");
            owner = name.empty()
                        ? text_in(node, "kind") + " " + std::to_string(std::stoul(token) + 1)
                        : "\"" + name + "\"";
        } else if (const Named named = named_at(document, at); !named.name.empty()) {
            owner = std::string(noun_of(named.kind)) + " \"" + named.name + "\"";
        } else if (token != "items" && std::none_of(std::begin(sections),
                                                    std::end(sections),
                                                    [&](auto& one) { return at == one.pointer; })) {
            // People count from one.
            const bool index = token.find_first_not_of("0123456789") == std::string::npos;
            words += (words.empty() ? "" : " ") +
                     (index ? std::to_string(std::stoul(token) + 1) : token);
        }
    }
    if (owner.empty() && !behind.empty()) return words + " of" + behind.substr(3);
    return (words.empty() ? owner : owner.empty() ? words : words + " of " + owner) + behind;
}

std::string users_in_words(const Node& document,
                           const std::vector<std::string>& uses,
                           std::size_t most) {
    std::string words;
    for (std::size_t i = 0; i < std::min(uses.size(), most); ++i)
        words += (words.empty() ? "" : ", ") + in_words(document, uses[i]);
    if (uses.size() > most) words += " and " + std::to_string(uses.size() - most) + " more";
    return words;
}

Amended renamed(const Schema& schema,
                std::string_view text,
                const Node& document,
                const Named& named,
                const std::string& name) {
    const std::string place = place_of(document, named.kind, named.name);
    if (place.empty())
        return {std::nullopt, std::string("there is no ") + noun_of(named.kind) + " of that name"};
    if (name == named.name) return {std::string(text), {}};
    if (!place_of(document, named.kind, name).empty())
        return {std::nullopt,
                std::string("there is a ") + noun_of(named.kind) + " \"" + name + "\" already"};
    std::vector<Change> changes;
    const NameUses all(schema, document);
    for (const std::string& use : all.of(named.kind, named.name))
        changes.push_back({Change::Kind::replace, use, json_text(name)});
    if (named.kind == Kind::page)
        changes.push_back({Change::Kind::replace, place + "/name", json_text(name)});
    else
        for (Change& change : waivers_following(
                 document, after_rename(place, section_of(named.kind) + pointer_part(name))))
            changes.push_back(std::move(change));
    Amended result = amend(text, changes);
    if (!result.text || named.kind == Kind::page) return result;
    // The palettes speak of paints by name, too.
    if (const Node* palettes = document.find("palettes");
        named.kind == Kind::paint && palettes != nullptr)
        for (const Member& palette : palettes->members)
            if (palette.value.find(named.name) != nullptr && result.text) {
                const std::string at = "/palettes" + pointer_part(palette.name);
                result =
                    moved(*result.text, at + pointer_part(named.name), at + pointer_part(name));
            }
    return result.text ? moved(*result.text, place, section_of(named.kind) + pointer_part(name))
                       : result;
}

bool is_state_words(const Node& document, const std::string& pointer) {
    return state_place(document, pointer).has_value();
}

Amended renamed_state(const Schema& schema,
                      std::string_view text,
                      const Node& document,
                      const std::string& pointer,
                      const std::string& words) {
    const std::optional<StatePlace> state = state_place(document, pointer);
    if (!state) return {std::nullopt, "no state of a choice is there"};
    const std::string was = state_words(*node_at(document, state->choice));
    const Named value = named_at(document, state->value);
    std::vector<Change> changes{{Change::Kind::replace, pointer, json_text(words)}};
    schema.visit(document, [&](const std::string& at, const Shape&, const Node& node) {
        if (node.kind == Node::Kind::text && node.text == was && at != pointer &&
            value_behind(document, at) == value.name)
            changes.push_back({Change::Kind::replace, at, json_text(words)});
    });
    return amend(text, changes);
}

std::vector<std::string> states_at(const Node& document, const std::string& pointer) {
    std::vector<std::string> states;
    const Node* value = value_of(document, value_behind(document, pointer));
    if (value == nullptr) return states;
    if (text_in(value, "type") == "flag") return {"true", "false"};
    if (const Node* choices = value->find("choices"); choices != nullptr)
        for (const Node& choice : choices->elements)
            states.push_back(json_text(state_words(choice)));
    return states;
}

Amended without(const Schema& schema,
                std::string_view text,
                const Node& document,
                const Named& named) {
    const std::string place = place_of(document, named.kind, named.name);
    if (place.empty())
        return {std::nullopt, std::string("there is no ") + noun_of(named.kind) + " of that name"};
    const NameUses all(schema, document);
    if (const std::vector<std::string>& uses = all.of(named.kind, named.name); !uses.empty())
        return {std::nullopt,
                std::string(noun_of(named.kind)) + " \"" + named.name + "\" is used by " +
                    users_in_words(document, uses, 3)};
    const std::vector<std::string> gone{place};
    std::vector<Change> changes = waivers_following(document, after_removal(document, gone));
    if (const Node* palettes = document.find("palettes");
        named.kind == Kind::paint && palettes != nullptr)
        for (const Member& palette : palettes->members)
            if (palette.value.find(named.name) != nullptr)
                changes.push_back(
                    {Change::Kind::remove,
                     "/palettes" + pointer_part(palette.name) + pointer_part(named.name),
                     {}});
    changes.push_back({Change::Kind::remove, place, {}});
    return amend(text, changes);
}

}  // namespace dialplate
