#include "sim/edit/member_changes.hpp"

#include "sim/edit/json_words.hpp"
#include "sim/edit/naming.hpp"
#include "sim/edit/pointers.hpp"
#include "sim/edit/waivers.hpp"
#include "sim/layout/mistakes.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace dialplate {
namespace {

using Kind = Shape::Kind;

/// The document with another value at a place.
Node with_value(std::string_view text, const std::string& pointer, const std::string& value) {
    const Change change{Change::Kind::replace, pointer, value};
    return tree_of(amend(text, std::span(&change, 1)).text.value_or("null")).value_or(Node{});
}

const OfferedMember* find(const std::vector<OfferedMember>& members, const std::string& name) {
    const auto found = std::find_if(
        members.begin(), members.end(), [&](auto& member) { return member.name == name; });
    return found == members.end() ? nullptr : &*found;
}

Change add(const std::string& pointer, const std::string& name, std::string value) {
    return {Change::Kind::add, pointer + pointer_part(name), std::move(value)};
}

void add_first(const Grounds& grounds,
               const std::string& pointer,
               const std::vector<std::string>& names,
               std::vector<Change>& changes) {
    const std::vector<OfferedMember> offered = grounds.schema.members(grounds.document, pointer);
    for (const std::string& name : names)
        if (const OfferedMember* member = find(offered, name);
            member != nullptr && member->present == nullptr)
            changes.push_back(
                add(pointer,
                    name,
                    first_value(grounds, pointer + pointer_part(name), name, member->shape)));
}

/// Members that one member needs beside it.
std::vector<std::string> needed_by(const Grounds& grounds,
                                   const std::string& pointer,
                                   const std::string& member) {
    std::vector<std::string> needed =
        grounds.schema.company_of(grounds.document, pointer, member).needed;
    // The reader's own: without "when" a lamp shows the words of the present choice, and has none itself.
    const Node* object = node_at(grounds.document, pointer);
    if (text_in(object, "kind") == "lamp" && member == "text" &&
        states_at(grounds.document, pointer + "/when") != std::vector<std::string>{"true", "false"})
        needed.insert(needed.begin(), "when");
    return needed;
}

/// Whether a value of that form can take what stands there now.
bool takes(const Shape& shape, const Shape& now, const Node& value) {
    if (shape.kind == Kind::fixed || now.kind == Kind::fixed) return shape.kind == now.kind;
    if (shape.kind != now.kind) return false;
    return shape.kind != Kind::choice || shape.choices.empty() ||
           std::find(shape.choices.begin(), shape.choices.end(), value.text) != shape.choices.end();
}

/// Whether a name may stand at a place.
bool fits(const Grounds& grounds,
          const std::string& pointer,
          const Shape& shape,
          const Node& value) {
    if (!has_names(shape.kind)) return true;
    const std::vector<std::string> names = names_that_fit(grounds, pointer, shape);
    return std::find(names.begin(), names.end(), value.text) != names.end();
}

/// From a name to something written out, and back.
Amended written_out_or_named(const Grounds& grounds,
                             std::string_view text,
                             const std::string& pointer,
                             const Form& form,
                             const Node& now) {
    std::string value;
    if (form.skeleton == "\"\"") {
        const Node* name = now.find("name");
        value = json_text(name != nullptr ? name->text : state_words(now));
    } else {
        const Node document = with_value(text, pointer, "{}");
        const Grounds there{grounds.schema, document, grounds.layout};
        for (const OfferedMember& member : grounds.schema.members(document, pointer))
            if (member.required)
                value += (value.empty() ? "" : ", ") + json_text(member.name) + ": " +
                         (member.shape.kind == Kind::text
                              ? json_text(now.text)
                              : first_value(there,
                                            pointer + pointer_part(member.name),
                                            member.name,
                                            member.shape));
        value = "{" + value + "}";
    }
    const Change change{Change::Kind::replace, pointer, value};
    return amend(text, std::span(&change, 1));
}

}  // namespace

std::vector<Change> added(const Grounds& grounds,
                          const std::string& pointer,
                          const std::string& member) {
    std::vector<Change> changes;
    add_first(grounds, pointer, {member}, changes);
    add_first(grounds, pointer, needed_by(grounds, pointer, member), changes);
    const Node* object = node_at(grounds.document, pointer);
    const Schema::Company company = grounds.schema.company_of(grounds.document, pointer, member);
    for (const std::string& barred : company.barred)
        if (object != nullptr && object->find(barred) != nullptr)
            changes.push_back({Change::Kind::remove, pointer + pointer_part(barred), {}});
    return changes;
}

std::string obstacle_to(const Grounds& grounds,
                        const std::string& pointer,
                        const OfferedMember& member) {
    const Node* const object = node_at(grounds.document, pointer);
    const bool in_tones = object != nullptr && object->find("tones") != nullptr;
    if (in_tones && (member.name == "ink" || member.name == "ground"))
        return "The first and the last of its tones are ground and ink.";
    const bool named = has_names(member.shape.kind);
    if (!named ||
        !names_that_fit(grounds, pointer + pointer_part(member.name), member.shape).empty())
        return {};
    return std::string("The layout has no ") + noun_of(member.shape.kind) + " that will do.";
}

std::vector<Change> left_out(const Grounds& grounds,
                             const std::string& pointer,
                             const std::string& member) {
    const std::vector<std::string> gone{pointer + pointer_part(member)};
    std::vector<Change> changes =
        waivers_following(grounds.document, after_removal(grounds.document, gone));
    changes.push_back({Change::Kind::remove, gone.front(), {}});
    add_first(grounds,
              pointer,
              grounds.schema.company_of(grounds.document, pointer, member).instead,
              changes);
    return changes;
}

Amended reordered(std::string_view text,
                  const Node& document,
                  const std::string& list,
                  std::size_t from,
                  std::size_t to) {
    const Amended result = amend(text, waivers_following(document, after_move(list, from, to)));
    return result.text ? moved(*result.text, list + pointer_part(from), list + pointer_part(to))
                       : result;
}

std::vector<Change> one_more(const Grounds& grounds,
                             std::string_view text,
                             const std::string& pointer) {
    const Node* list = node_at(grounds.document, pointer);
    const Shape element = grounds.schema.within(grounds.document, pointer);
    if (list == nullptr || list->elements.empty())
        return {
            {Change::Kind::add, pointer + "/-", first_value(grounds, pointer + "/-", "", element)}};
    const std::size_t last = list->elements.size() - 1;
    const std::string next = pointer + pointer_part(last + 1);
    std::vector<Change> changes{{Change::Kind::add,
                                 pointer + "/-",
                                 value_at(text, pointer + pointer_part(last)).value_or("null")}};
    const std::string words = state_words(list->elements[last]);
    std::vector<std::string> taken;
    for (const Node& one : list->elements)
        taken.push_back(state_words(one));
    const bool states =
        is_state_words(grounds.document,
                       pointer + pointer_part(last) +
                           (list->elements[last].kind == Node::Kind::text ? "" : "/text"));
    if (states)
        changes.push_back({Change::Kind::replace,
                           next + (list->elements[last].kind == Node::Kind::text ? "" : "/text"),
                           json_text(next_free(words, [&](const std::string& tried) {
                               return std::find(taken.begin(), taken.end(), tried) != taken.end();
                           }))});
    return changes;
}

std::vector<Change> added_thing(const Grounds& grounds,
                                std::string_view text,
                                Kind kind,
                                const std::string& like,
                                const std::string& name) {
    const std::string thing = first_thing(grounds, kind, text, like, name);
    const std::string section = section_of(kind);
    if (kind == Kind::page) return {{Change::Kind::add, section + "/-", thing}};
    if (grounds.document.find(section.substr(1)) == nullptr)
        return {{Change::Kind::add, section, "{\n  " + json_text(name) + ": " + thing + "\n}"}};
    std::vector<Change> changes = {{Change::Kind::add, section + pointer_part(name), thing}};
    // A paint that resembles another does so in every palette.
    if (const Node* palettes = grounds.document.find("palettes");
        kind == Kind::paint && palettes != nullptr)
        for (const Member& palette : palettes->members) {
            const std::string place = "/palettes" + pointer_part(palette.name);
            if (const auto paint = written_at(text, place + pointer_part(like)))
                changes.push_back(
                    {Change::Kind::add, place + pointer_part(name), std::string(*paint)});
        }
    return changes;
}

Amended given_form(const Grounds& grounds,
                   std::string_view text,
                   const std::string& pointer,
                   const Form& form) {
    const Node* now = node_at(grounds.document, pointer);
    if (now == nullptr) return {std::nullopt, "there is nothing at that place"};
    if (form.present) return {std::string(text), {}};
    const std::optional<Node> skeleton = tree_of(form.skeleton);
    if (!skeleton || skeleton->kind != Node::Kind::object || skeleton->members.empty() ||
        now->kind != Node::Kind::object)
        return written_out_or_named(grounds, text, pointer, form, *now);

    const std::string told_by = skeleton->members.front().name;
    const Node document = with_value(text, pointer, form.skeleton);
    const std::vector<OfferedMember> offered = grounds.schema.members(document, pointer);
    const Node* told = now->find(told_by);
    Amended result{std::string(text), {}};
    const auto do_it = [&](const Change& change) {
        if (result.text) result = amend(*result.text, std::span(&change, 1));
    };
    if (told != nullptr)
        do_it({Change::Kind::replace,
               pointer + pointer_part(told_by),
               json_text(skeleton->members.front().value.text)});

    std::vector<const Member*> spare;  // Does not fit as it is, but may under another name.
    for (const Member& member : now->members) {
        if (member.name == told_by) continue;
        const std::string place = pointer + pointer_part(member.name);
        const OfferedMember* there = find(offered, member.name);
        const Grounds later{grounds.schema, document, grounds.layout};
        if (there == nullptr ||
            !takes(there->shape, grounds.schema.shape(grounds.document, place), member.value) ||
            !fits(later, place, there->shape, member.value))
            spare.push_back(&member);
    }
    std::vector<const OfferedMember*> missing;
    for (const OfferedMember& member : offered)
        if ((member.required || member.name == told_by) &&
            (now->find(member.name) == nullptr ||
             std::any_of(
                 spare.begin(), spare.end(), [&](auto* one) { return one->name == member.name; })))
            missing.push_back(&member);
    // A value, paint or face that has no room any more goes where one is missing.
    for (auto member = missing.begin(); member != missing.end();) {
        const std::string place = pointer + pointer_part((*member)->name);
        const Grounds there{grounds.schema, document, grounds.layout};
        const auto one = std::find_if(spare.begin(), spare.end(), [&](const Member* spare_one) {
            const Shape shape =
                grounds.schema.shape(grounds.document, pointer + pointer_part(spare_one->name));
            return has_names(shape.kind) && shape.kind == (*member)->shape.kind &&
                   fits(there, place, shape, spare_one->value);
        });
        // Under its own name it did not fit: then it was tried already.
        if (one == spare.end() || (*one)->name == (*member)->name) {
            ++member;
            continue;
        }
        if (result.text) result = moved(*result.text, pointer + pointer_part((*one)->name), place);
        spare.erase(one);
        member = missing.erase(member);
    }
    for (const Member* one : spare)
        do_it({Change::Kind::remove, pointer + pointer_part(one->name), {}});
    // First values of what is missing, each seeing those before: a state hangs on its value.
    for (const OfferedMember* member : missing) {
        if (!result.text) break;
        const std::optional<Node> so_far = tree_of(*result.text);
        if (!so_far) break;
        const Grounds there{grounds.schema, *so_far, grounds.layout};
        const std::string value =
            first_value(there, pointer + pointer_part(member->name), member->name, member->shape);
        if (value == "\"\"" && has_names(member->shape.kind))
            return {std::nullopt,
                    std::string("the layout has no ") + noun_of(member->shape.kind) +
                        " that will do for \"" + member->name + "\""};
        do_it(add(pointer, member->name, value));
    }
    // What was kept may need company in its new form.
    for (const Member& member : now->members) {
        const std::optional<Node> so_far = tree_of(result.text.value_or(""));
        if (!so_far || node_at(*so_far, pointer)->find(member.name) == nullptr) continue;
        const Grounds there{grounds.schema, *so_far, grounds.layout};
        std::vector<Change> company;
        add_first(there, pointer, needed_by(there, pointer, member.name), company);
        for (const Change& change : company)
            do_it(change);
    }
    return result;
}

}  // namespace dialplate
