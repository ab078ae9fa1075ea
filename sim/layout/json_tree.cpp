#include "sim/layout/json_tree.hpp"

#include "sim/layout/syntax_mistake.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace dialplate {
namespace {

// nlohmann_json 3.11 tells no positions. But between two tokens there is only white space, commas and
// colons, so walking along the text, one token for each event, gives the first byte of each.
class TreeBuilder {
public:
    using number_integer_t = nlohmann::json::number_integer_t;
    using number_unsigned_t = nlohmann::json::number_unsigned_t;
    using number_float_t = nlohmann::json::number_float_t;
    using string_t = nlohmann::json::string_t;
    using binary_t = nlohmann::json::binary_t;

    TreeBuilder(std::string_view text, Mistakes& mistakes, Place origin)
        : walk_(text, origin), mistakes_(mistakes) {}

    bool null() { return put(Node::Kind::null) != nullptr; }
    bool boolean(bool value) {
        put(Node::Kind::boolean)->boolean = value;
        return true;
    }
    bool number_integer(number_integer_t value) {
        Node* const node = put_number(static_cast<double>(value));
        node->whole = value;
        return true;
    }
    bool number_unsigned(number_unsigned_t value) {
        constexpr auto most =
            static_cast<number_unsigned_t>(std::numeric_limits<std::int64_t>::max());
        Node* const node = put_number(static_cast<double>(value));
        node->whole = static_cast<std::int64_t>(std::min(value, most));
        return true;
    }
    bool number_float(number_float_t value, const string_t& /*written*/) {
        Node* const node = put_number(value);
        // 2^63 as a double; the greatest below it still fits.
        constexpr double beyond = 9223372036854775808.0;
        if (value >= beyond) {
            node->whole = std::numeric_limits<std::int64_t>::max();
        } else if (value < -beyond) {
            node->whole = std::numeric_limits<std::int64_t>::min();
        } else if (node->integral) {
            node->whole = static_cast<std::int64_t>(value);
        }
        return true;
    }
    bool string(string_t& value) {
        put(Node::Kind::text)->text = std::move(value);
        return true;
    }
    bool binary(binary_t& /*value*/) { return false; }
    bool start_object(std::size_t /*count*/) { return open(Node::Kind::object); }
    bool start_array(std::size_t /*count*/) { return open(Node::Kind::list); }
    bool key(string_t& name) {
        const Place place = walk_.take_token().place;
        open_.back()->members.push_back({std::move(name), place, Node{}});
        walk_.state = Expected::colon;
        return true;
    }
    bool end_object() {
        remove_duplicates(*open_.back());
        return close();
    }
    bool end_array() { return close(); }
    bool parse_error(std::size_t position,
                     const std::string& /*last_token*/,
                     const nlohmann::json::exception& fault) {
        constexpr int number_overflow = 406;
        if (fault.id == number_overflow) {
            overflow = walk_.peek_token();
        } else {
            const Node* const open = open_.empty() ? nullptr : open_.back();
            Mistake mistake = syntax_mistake(walk_, position, open);
            mistake.pointer = path();
            mistakes_.add(std::move(mistake));
        }
        return false;
    }

    std::optional<Token> overflow;  ///< A number that no double holds, where parsing stopped.
    Node root;

    [[nodiscard]] const std::vector<std::size_t>& misfits() const { return misfits_; }
    void expect_misfits(std::vector<std::size_t> offsets) { misfits_ = std::move(offsets); }

private:
    Node* put(Node::Kind kind) {
        const Token token = walk_.take_token();
        Node* node = &root;
        if (!open_.empty()) {
            Node& parent = *open_.back();
            node = parent.kind == Node::Kind::object ? &parent.members.back().value
                                                     : &parent.elements.emplace_back();
        }
        node->kind = kind;
        node->place = token.place;
        if (kind == Node::Kind::number) {
            node->text = token.text;
            if (std::find(misfits_.begin(), misfits_.end(), token.offset) != misfits_.end()) {
                node->kind = Node::Kind::misfit;
            }
        }
        after_value();
        return node;
    }
    Node* put_number(double value) {
        Node* const node = put(Node::Kind::number);
        node->number = value;
        node->integral = std::floor(value) == value;
        return node;
    }
    bool open(Node::Kind kind) {
        Node* const node = put(kind);
        if (open_.size() == deepest_nesting) {
            mistakes_.add(
                {.rule = "too-deep",
                 .place = node->place,
                 .message = "more than " + std::to_string(deepest_nesting) +
                            " objects and lists within one another; a layout needs seven"});
            return false;
        }
        // Stays where it is: its parent gets no further child while it is open.
        open_.push_back(node);
        walk_.state = kind == Node::Kind::object ? Expected::first_name : Expected::first_element;
        return true;
    }
    bool close() {
        walk_.take_token();
        open_.pop_back();
        after_value();
        return true;
    }
    void after_value() {
        walk_.state = open_.empty()                              ? Expected::end
                      : open_.back()->kind == Node::Kind::object ? Expected::next_name
                                                                 : Expected::next_element;
    }
    // JSON Pointer of the innermost open object or list.
    [[nodiscard]] std::string path() const {
        std::string pointer;
        for (std::size_t i = 0; i + 1 < open_.size(); ++i) {
            const Node& node = *open_[i];
            pointer += node.kind == Node::Kind::object ? pointer_part(node.members.back().name)
                                                       : pointer_part(node.elements.size() - 1);
        }
        return pointer;
    }
    void remove_duplicates(Node& object) {
        std::vector<Member>& members = object.members;
        std::vector<std::size_t> order(members.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return members[a].name < members[b].name;
        });
        std::vector<bool> again(members.size(), false);
        bool any = false;
        for (std::size_t i = 1, first = 0; i < order.size(); ++i) {
            const Member& member = members[order[i]];
            const Member& earlier = members[order[first]];
            if (member.name != earlier.name) {
                first = i;
                continue;
            }
            again[order[i]] = any = true;
            mistakes_.add({.rule = "duplicate-member",
                           .pointer = path() + pointer_part(member.name),
                           .place = member.place,
                           .message = quote(member.name) +
                                      " is given twice in this object; first in line " +
                                      std::to_string(earlier.place.line) + ", column " +
                                      std::to_string(earlier.place.column)});
        }
        if (!any) return;
        std::size_t index = 0;
        std::erase_if(members, [&](const Member&) { return again[index++]; });
    }

    TokenWalk walk_;
    Mistakes& mistakes_;
    std::vector<Node*> open_;
    std::vector<std::size_t> misfits_;
};

void collect_places(const Node& node,
                    const std::string& pointer,
                    std::map<std::string, Place>& to) {
    to.emplace(pointer, node.place);
    for (const Member& member : node.members) {
        collect_places(member.value, pointer + pointer_part(member.name), to);
    }
    for (std::size_t i = 0; i < node.elements.size(); ++i) {
        collect_places(node.elements[i], pointer + pointer_part(i), to);
    }
}

}  // namespace

const Node* Node::find(std::string_view name) const {
    for (const Member& member : members) {
        if (member.name == name) return &member.value;
    }
    return nullptr;
}

std::optional<Node> parse_json(std::string_view text, Mistakes& mistakes, Place origin) {
    constexpr std::size_t most_misfits = 16;
    std::string patched;  // The text with numbers that overflow replaced by zeros.
    std::vector<std::size_t> misfits;
    for (;;) {
        std::vector<Finding> found;
        Mistakes attempt(found);
        TreeBuilder builder(text, attempt, origin);
        builder.expect_misfits(misfits);
        const bool parsed = nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
        if (builder.overflow && misfits.size() < most_misfits) {
            const Token& token = *builder.overflow;
            mistakes.add({.rule = "out-of-range",
                          .place = token.place,
                          .message = "the number " + quote(token.text) +
                                     " does not fit; even a 64-bit floating-point number ends at "
                                     "about 1.8e308"});
            misfits.push_back(token.offset);
            if (patched.empty()) patched = text;
            patched.replace(token.offset, token.text.size(), token.text.size(), ' ');
            patched[token.offset] = '0';
            text = patched;
            continue;
        }
        for (Finding& finding : found) {
            mistakes.add({finding.rule, finding.pointer, finding.place, finding.message});
        }
        if (!parsed) return std::nullopt;
        return std::move(builder.root);
    }
}

std::string pointer_part(std::string_view name) {
    std::string part = "/";
    for (const char c : name) {
        if (c == '~') {
            part += "~0";
        } else if (c == '/') {
            part += "~1";
        } else {
            part += c;
        }
    }
    return part;
}

std::string pointer_part(std::size_t index) {
    return '/' + std::to_string(index);
}

std::map<std::string, Place> places_of(const Node& root) {
    std::map<std::string, Place> places;
    collect_places(root, {}, places);
    return places;
}

std::string describe(const Node& node) {
    switch (node.kind) {
        case Node::Kind::null:
            return "null";
        case Node::Kind::boolean:
            return node.boolean ? "true" : "false";
        case Node::Kind::number:
        case Node::Kind::misfit:
            return node.text.size() > 40 ? node.text.substr(0, 40) + "..." : node.text;
        case Node::Kind::text:
            return "text " + quote(node.text);
        case Node::Kind::list:
            return "a list of " + std::to_string(node.elements.size());
        case Node::Kind::object:
            return "an object";
    }
    return "nothing";
}

}  // namespace dialplate
