#include "sim/edit/schema.hpp"

#include "sim/layout/mistakes.hpp"

#include <algorithm>
#include <charconv>
#include <map>
#include <utility>

namespace dialplate {
namespace {

/// References within the schema are not followed deeper than this; it needs six.
constexpr int deepest = 24;

std::string take_token(std::string_view& pointer) {
    pointer.remove_prefix(1);
    const std::string_view raw = pointer.substr(0, pointer.find('/'));
    pointer.remove_prefix(raw.size());
    std::string token;
    for (std::size_t i = 0; i < raw.size(); ++i) {
        if (raw[i] == '~' && i + 1 < raw.size())
            token += raw[++i] == '1' ? '/' : '~';
        else
            token += raw[i];
    }
    return token;
}

const Node* child_of(const Node& node, const std::string& token) {
    if (node.kind == Node::Kind::object) return node.find(token);
    if (node.kind != Node::Kind::list) return nullptr;
    std::size_t index = 0;
    const auto [end, fault] = std::from_chars(token.data(), token.data() + token.size(), index);
    if (fault != std::errc{} || end != token.data() + token.size()) return nullptr;
    return index < node.elements.size() ? &node.elements[index] : nullptr;
}

bool same(const Node& a, const Node& b) {
    return a.kind == b.kind && a.text == b.text && a.boolean == b.boolean && a.number == b.number;
}

bool has_type(const Node& value, const std::string& type) {
    switch (value.kind) {
        case Node::Kind::text:
            return type == "string";
        case Node::Kind::boolean:
            return type == "boolean";
        case Node::Kind::number:
            return type == "number" || (type == "integer" && value.integral);
        case Node::Kind::list:
            return type == "array";
        case Node::Kind::object:
            return type == "object";
        default:
            return type == "null";
    }
}

/// Definitions whose name says what a text stands for.
const std::map<std::string, Shape::Kind>& kinds_by_definition() {
    static const std::map<std::string, Shape::Kind> kinds = {{"paint", Shape::Kind::paint},
                                                             {"face", Shape::Kind::face},
                                                             {"value", Shape::Kind::value},
                                                             {"colour", Shape::Kind::colour},
                                                             {"words", Shape::Kind::words},
                                                             {"state", Shape::Kind::state}};
    return kinds;
}

constexpr std::string_view definitions = "#/definitions/";

}  // namespace

const Node* node_at(const Node& document, std::string_view pointer) {
    const Node* node = &document;
    while (node != nullptr && !pointer.empty() && pointer[0] == '/')
        node = child_of(*node, take_token(pointer));
    return node;
}

std::optional<Schema> Schema::read(std::string_view text) {
    std::vector<Finding> findings;
    Mistakes mistakes(findings);
    std::optional<Node> root = parse_json(text, mistakes);
    if (!root) return std::nullopt;
    return Schema(std::move(*root));
}

bool Schema::holds(const Node& condition, const Node* value) const {
    if (value == nullptr) return false;
    if (const Node* type = condition.find("type"); type != nullptr && !has_type(*value, type->text))
        return false;
    if (const Node* fixed = condition.find("const"); fixed != nullptr && !same(*fixed, *value))
        return false;
    if (const Node* several = condition.find("enum");
        several != nullptr && std::none_of(several->elements.begin(),
                                           several->elements.end(),
                                           [&](const Node& one) { return same(one, *value); }))
        return false;
    if (const Node* required = condition.find("required"); required != nullptr)
        for (const Node& name : required->elements)
            if (value->find(name.text) == nullptr) return false;
    if (const Node* properties = condition.find("properties"); properties != nullptr)
        for (const Member& property : properties->members)
            if (const Node* inner = value->find(property.name);
                inner != nullptr && !holds(property.value, inner))
                return false;
    return true;
}

void Schema::gather(const Node& schema, const Node* value, Parts& parts, int depth) const {
    if (depth > deepest || schema.kind != Node::Kind::object) return;
    parts.push_back(&schema);
    if (const Node* reference = schema.find("$ref"); reference != nullptr) {
        std::string_view name = reference->text;
        if (name.substr(0, definitions.size()) == definitions) {
            const Node* all = root_.find("definitions");
            name.remove_prefix(definitions.size());
            if (const Node* target = all == nullptr ? nullptr : all->find(name); target != nullptr)
                gather(*target, value, parts, depth + 1);
        }
    }
    if (const Node* all = schema.find("allOf"); all != nullptr)
        for (const Node& part : all->elements)
            gather(part, value, parts, depth + 1);
    if (const Node* condition = schema.find("if"); condition != nullptr) {
        const Node* branch = schema.find(holds(*condition, value) ? "then" : "else");
        // Only what is there can be judged: without a value the general form is offered.
        if (value == nullptr) branch = schema.find("then");
        if (branch != nullptr) gather(*branch, value, parts, depth + 1);
    }
    if (const Node* several = schema.find("oneOf"); several != nullptr && value != nullptr) {
        // The variant whose first required member is there.
        for (const Node& variant : several->elements) {
            const Node* required = variant.find("required");
            if (required == nullptr || required->elements.empty()) continue;
            if (value->find(required->elements[0].text) == nullptr) continue;
            gather(variant, value, parts, depth + 1);
            break;
        }
    }
}

Schema::Parts Schema::child(const Parts& of, const std::string& token, const Node* value) const {
    Parts parts;
    Parts further;
    for (const Node* part : of) {
        if (const Node* properties = part->find("properties"); properties != nullptr)
            if (const Node* property = properties->find(token); property != nullptr)
                gather(*property, value, parts, 0);
        if (const Node* additional = part->find("additionalProperties");
            additional != nullptr && additional->kind == Node::Kind::object)
            further.push_back(additional);
        if (const Node* items = part->find("items"); items != nullptr) further.push_back(items);
    }
    if (parts.empty())
        for (const Node* part : further)
            gather(*part, value, parts, 0);
    return parts;
}

Schema::Parts Schema::parts_at(const Node& document,
                               std::string_view pointer,
                               const Node** value) const {
    Parts parts;
    *value = &document;
    gather(root_, *value, parts, 0);
    while (!pointer.empty() && pointer[0] == '/') {
        const std::string token = take_token(pointer);
        *value = *value == nullptr ? nullptr : child_of(**value, token);
        parts = child(parts, token, *value);
    }
    return parts;
}

Shape Schema::shape_of(const Parts& parts, const std::string& member, const Node* value) const {
    Shape shape;
    const auto settle = [&](Shape::Kind kind) {
        if (shape.kind == Shape::Kind::other) shape.kind = kind;
    };
    const auto number = [](std::optional<double>& into, const Node* node) {
        if (node != nullptr && !into) into = node->number;
    };
    for (const Node* part : parts) {
        if (const Node* words = part->find("description");
            words != nullptr && shape.description.empty())
            shape.description = words->text;
        number(shape.least, part->find("minimum"));
        number(shape.most, part->find("maximum"));
        if (const Node* longest = part->find("maxLength"); longest != nullptr && !shape.longest)
            shape.longest = static_cast<int>(longest->number);
        if (const Node* fewest = part->find("minItems"); fewest != nullptr)
            shape.fewest = std::max(shape.fewest, static_cast<int>(fewest->number));
        for (const char* limit : {"maxItems", "maxProperties"})
            if (const Node* greatest = part->find(limit); greatest != nullptr && !shape.greatest)
                shape.greatest = static_cast<int>(greatest->number);
        if (const Node* reference = part->find("$ref"); reference != nullptr) {
            const auto known =
                kinds_by_definition().find(reference->text.substr(definitions.size()));
            if (known != kinds_by_definition().end()) settle(known->second);
        }
        if (part->find("const") != nullptr) shape.kind = Shape::Kind::fixed;
        if (const Node* several = part->find("enum"); several != nullptr) {
            settle(Shape::Kind::choice);
            if (shape.choices.empty())
                for (const Node& one : several->elements)
                    shape.choices.push_back(one.text);
        }
        if (const Node* type = part->find("type"); type != nullptr) {
            const std::string& name = type->text;
            if (name == "string")
                settle(member == "look"   ? Shape::Kind::look
                       : member == "page" ? Shape::Kind::page
                                          : Shape::Kind::text);
            else if (name == "integer")
                settle(Shape::Kind::whole);
            else if (name == "number")
                settle(Shape::Kind::number);
            else if (name == "boolean")
                settle(Shape::Kind::flag);
            else if (name == "array")
                settle(Shape::Kind::list);
            else if (name == "object") {
                const Node* additional = part->find("additionalProperties");
                const bool open = additional != nullptr && additional->kind == Node::Kind::object;
                settle(open ? Shape::Kind::map : Shape::Kind::object);
            }
        }
    }
    // "A name, or its figures written out": what is there decides.
    if (shape.kind == Shape::Kind::other && value != nullptr)
        shape.kind = value->kind == Node::Kind::object ? Shape::Kind::object
                     : value->kind == Node::Kind::list ? Shape::Kind::list
                     : value->kind == Node::Kind::text ? Shape::Kind::text
                                                       : Shape::Kind::other;
    return shape;
}

Shape Schema::shape(const Node& document, std::string_view pointer) const {
    const Node* value = nullptr;
    const Parts parts = parts_at(document, pointer, &value);
    const std::size_t slash = pointer.rfind('/');
    return shape_of(parts,
                    slash == std::string_view::npos ? "" : std::string(pointer.substr(slash + 1)),
                    value);
}

std::vector<OfferedMember> Schema::members(const Node& document, std::string_view pointer) const {
    const Node* value = nullptr;
    const Parts parts = parts_at(document, pointer, &value);
    std::vector<std::string> names, required;
    for (const Node* part : parts) {
        if (const Node* properties = part->find("properties"); properties != nullptr)
            for (const Member& property : properties->members)
                names.push_back(property.name);
        if (const Node* wanted = part->find("required"); wanted != nullptr)
            for (const Node& name : wanted->elements)
                required.push_back(name.text);
    }
    if (value != nullptr)
        for (const Member& member : value->members)
            names.push_back(member.name);

    std::vector<OfferedMember> offered;
    for (const std::string& name : names) {
        const auto is_it = [&](const OfferedMember& one) { return one.name == name; };
        if (std::any_of(offered.begin(), offered.end(), is_it)) continue;
        const std::string there = std::string(pointer) + pointer_part(name);
        offered.push_back({name,
                           shape(document, there),
                           std::find(required.begin(), required.end(), name) != required.end(),
                           value == nullptr ? nullptr : value->find(name)});
    }
    return offered;
}

void Schema::visit(const Node& document, const Seen& see) const {
    Parts parts;
    gather(root_, &document, parts, 0);
    visit(parts, {}, {}, document, see);
}

void Schema::visit(const Parts& parts,
                   const std::string& pointer,
                   const std::string& member,
                   const Node& value,
                   const Seen& see) const {
    see(pointer, shape_of(parts, member, &value), value);
    for (const Member& inner : value.members)
        visit(child(parts, inner.name, &inner.value),
              pointer + pointer_part(inner.name),
              inner.name,
              inner.value,
              see);
    for (std::size_t i = 0; i < value.elements.size(); ++i) {
        const std::string index = std::to_string(i);
        visit(child(parts, index, &value.elements[i]),
              pointer + "/" + index,
              index,
              value.elements[i],
              see);
    }
}

Shape Schema::within(const Node& document, std::string_view pointer) const {
    return shape(document, std::string(pointer) + "/-");
}

}  // namespace dialplate
