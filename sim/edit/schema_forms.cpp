// The parts of a schema that say "this, or that": which forms a value may have, and what goes together.
#include "sim/edit/json_words.hpp"
#include "sim/edit/schema.hpp"

#include <algorithm>

namespace dialplate {
namespace {

/// The names in a list of names that may be missing.
std::vector<std::string> names_in(const Node* list) {
    std::vector<std::string> names;
    if (list != nullptr)
        for (const Node& name : list->elements)
            names.push_back(name.text);
    return names;
}

bool names_it(const Node* list, const std::string& name) {
    const std::vector<std::string> names = names_in(list);
    return std::find(names.begin(), names.end(), name) != names.end();
}

std::string description_of(const Node& part) {
    const Node* words = part.find("description");
    return words == nullptr ? "" : words->text;
}

/// {"if": {"properties": {D: {"const": V}}}}: D and V.
struct Condition {
    std::string member, word;
};
std::optional<Condition> condition_of(const Node& part) {
    const Node* condition = part.find("if");
    const Node* properties = condition == nullptr ? nullptr : condition->find("properties");
    if (properties == nullptr || properties->members.size() != 1 || part.find("then") == nullptr)
        return std::nullopt;
    const Node* fixed = properties->members[0].value.find("const");
    if (fixed == nullptr || fixed->kind != Node::Kind::text) return std::nullopt;
    return Condition{properties->members[0].name, fixed->text};
}

bool has(const Node* value, const std::string& member) {
    return value != nullptr && value->find(member) != nullptr;
}

}  // namespace

const Node& Schema::meant_by(const Node& part) const {
    const Node* reference = part.find("$ref");
    const Node* all = root_.find("definitions");
    if (reference == nullptr || all == nullptr) return part;
    const Node* meant = all->find(reference->text.substr(reference->text.rfind('/') + 1));
    return meant == nullptr ? part : *meant;
}

std::vector<Form> Schema::forms(const Node& document, std::string_view pointer) const {
    const Node* value = nullptr;
    std::vector<Form> forms;
    const auto by_member = [&](const std::string& member, const std::string& description) {
        forms.push_back(
            {member, description, has(value, member), "{" + json_text(member) + ": null}"});
    };
    for (const Node* part : parts_at(document, pointer, &value)) {
        // Variants told apart by the first member that they need.
        if (const Node* several = part->find("oneOf"); several != nullptr)
            for (const Node& variant : several->elements)
                if (const auto names = names_in(variant.find("required")); !names.empty())
                    by_member(names.front(), description_of(variant));
        // Variants told apart by the word in a member that all of them need.
        if (const Node* all = part->find("allOf"); all != nullptr)
            for (const Node& branch : all->elements) {
                const std::optional<Condition> told = condition_of(branch);
                if (!told || !names_it(part->find("required"), told->member)) continue;
                const Node* now = value == nullptr ? nullptr : value->find(told->member);
                forms.push_back(
                    {told->word,
                     description_of(meant_by(*branch.find("then"))),
                     now != nullptr && now->text == told->word,
                     "{" + json_text(told->member) + ": " + json_text(told->word) + "}"});
            }
        const Node* condition = part->find("if");
        const Node *then = part->find("then"), *otherwise = part->find("else");
        if (condition == nullptr || then == nullptr || otherwise == nullptr ||
            otherwise->find("$ref") == nullptr)
            continue;
        const Node* type = condition->find("type");
        if (type != nullptr && type->text == "string") {
            const bool text = value == nullptr || value->kind == Node::Kind::text;
            forms.push_back({"named", description_of(meant_by(*then)), text, "\"\""});
            forms.push_back({"written out", description_of(meant_by(*otherwise)), !text, "{}"});
        }
        if (const auto needed = names_in(condition->find("required"));
            needed.size() == 1 && then->find("$ref") != nullptr) {
            const Node &this_one = meant_by(*then), &that_one = meant_by(*otherwise);
            const auto other = names_in(that_one.find("required"));
            if (other.empty()) continue;
            by_member(other.front(), description_of(that_one));
            by_member(needed.front(), description_of(this_one));
        }
    }
    return forms;
}

Schema::Company Schema::company_of(const Node& document,
                                   std::string_view pointer,
                                   const std::string& member) const {
    const Node* value = nullptr;
    Company company;
    const auto take = [](std::vector<std::string>& into, const std::vector<std::string>& names) {
        into.insert(into.end(), names.begin(), names.end());
    };
    for (const Node* part : parts_at(document, pointer, &value)) {
        if (const Node* all = part->find("dependencies"); all != nullptr)
            take(company.needed, names_in(all->find(member)));
        const Node* condition = part->find("if");
        if (condition == nullptr || condition->find("properties") != nullptr ||
            !names_it(condition->find("required"), member))
            continue;
        if (const Node* then = part->find("then"); then != nullptr) {
            take(company.needed, names_in(then->find("required")));
            if (const Node* properties = then->find("properties"); properties != nullptr)
                for (const Member& property : properties->members)
                    if (property.value.kind == Node::Kind::boolean && !property.value.boolean)
                        company.barred.push_back(property.name);
        }
        if (const Node* otherwise = part->find("else"); otherwise != nullptr)
            take(company.instead, names_in(otherwise->find("required")));
    }
    return company;
}

}  // namespace dialplate
