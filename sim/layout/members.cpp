#include "sim/layout/members.hpp"

#include "sim/layout/source_text.hpp"
#include "sim/layout/suggestion.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <sstream>
#include <vector>

namespace dialplate {
namespace {

constexpr std::size_t longest_list = 24;
constexpr std::size_t longest_name = 40;

std::vector<std::string_view> names_of(MemberTable table, bool needed_only) {
    std::vector<std::string_view> names;
    for (const MemberName& member : table) {
        if (member.needed || !needed_only) names.push_back(member.name);
    }
    return names;
}

std::string plain_number(double value) {
    std::ostringstream text;
    text.precision(10);
    text << value;
    return text.str();
}

std::string allowed_range(const Range& range) {
    std::string text = range.least == range.most
                           ? "allowed is " + std::to_string(range.least)
                           : "allowed are whole numbers from " + std::to_string(range.least) +
                                 " to " + std::to_string(range.most);
    if (!range.why.empty()) text += " (" + std::string(range.why) + ')';
    return text;
}

bool holds(const std::vector<std::string_view>& words, std::string_view word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

std::string why_no_name(std::string_view name) {
    if (name.empty()) return "is empty";
    if (characters(name) > longest_name) {
        return "has " + std::to_string(characters(name)) + " characters; allowed are at most " +
               std::to_string(longest_name);
    }
    if (name.front() == ' ' || name.back() == ' ') return "begins or ends with a blank";
    for (const char c : name) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20 || byte == 0x7F) return "holds a control character";
        if (std::string_view("\"\\=/").find(c) != std::string_view::npos) {
            return std::string("holds a ") + c + "; not allowed are \" \\ = /";
        }
    }
    return {};
}

}  // namespace

std::string name_in(const Node& node, std::string_view member) {
    const Node* const name = node.find(member);
    return name != nullptr && name->kind == Node::Kind::text ? name->text : std::string();
}

std::string describe(const Noun& noun) {
    std::string text(noun.kind);
    if (!noun.name.empty()) text += ' ' + quote(noun.name);
    return text;
}

std::string with_article(std::string_view noun) {
    const bool vowel =
        !noun.empty() && std::string_view("aeio").find(noun.front()) != std::string_view::npos;
    return (vowel ? "an " : "a ") + std::string(noun);
}

std::string listed(const std::vector<std::string_view>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i == longest_list) return text + ", ...";
        if (i > 0) text += ", ";
        text += words[i];
    }
    return text;
}

std::string did_you_mean(std::string_view wrong,
                         const std::vector<std::string_view>& candidates,
                         Mistakes& mistakes) {
    if (!mistakes.may_suggest()) return {};
    const std::string_view best = nearest(wrong, candidates);
    return best.empty() ? std::string() : "; did you mean " + quote(best) + '?';
}

std::optional<std::int64_t> whole_in(const Node& node,
                                     const std::string& pointer,
                                     const std::string& what,
                                     const Range& range,
                                     Mistakes& mistakes) {
    if (node.kind == Node::Kind::misfit) return std::nullopt;
    const auto complain = [&](const char* rule, const std::string& needs) {
        mistakes.add({rule, pointer, node.place, what + " is " + describe(node) + "; " + needs});
        return std::nullopt;
    };
    if (node.kind != Node::Kind::number) {
        return complain("wrong-type",
                        "needs a whole number from " + std::to_string(range.least) + " to " +
                            std::to_string(range.most));
    }
    if (!node.integral) return complain("wrong-type", allowed_range(range));
    if (node.whole < range.least || node.whole > range.most) {
        return complain("out-of-range", allowed_range(range));
    }
    return node.whole;
}

std::optional<std::string> text_in(const Node& node,
                                   const std::string& pointer,
                                   const std::string& what,
                                   const TextShape& shape,
                                   Mistakes& mistakes) {
    const auto complain = [&](const char* rule, const std::string& why) {
        mistakes.add({rule, pointer, node.place, what + ' ' + why});
        return std::nullopt;
    };
    if (node.kind == Node::Kind::misfit) return std::nullopt;
    if (node.kind != Node::Kind::text) {
        return complain("wrong-type", "is " + describe(node) + "; needs text in double quotes");
    }
    const std::string& text = node.text;
    int lines = 1;
    for (const char c : text) {
        if (c == '\n') {
            ++lines;
        } else if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) {
            return complain("out-of-range",
                            "is " + quote(text) + " with a control character; allowed are " +
                                (shape.lines > 1 ? "printable characters and \\n between lines"
                                                 : "printable characters"));
        }
    }
    if (lines > shape.lines) {
        return complain(
            "out-of-range",
            "has " + std::to_string(lines) + " lines; allowed " +
                (shape.lines == 1 ? "is one" : "are at most " + std::to_string(shape.lines)));
    }
    const std::size_t count = characters(text);
    if (count < shape.least || count > shape.most) {
        return complain("out-of-range",
                        (count == 0 ? std::string("is empty")
                                    : "has " + std::to_string(count) + " characters") +
                            "; allowed are " + std::to_string(shape.least) + " to " +
                            std::to_string(shape.most) + " characters");
    }
    return text;
}

bool check_name(std::string_view name,
                std::string_view kind,
                const std::string& pointer,
                Place place,
                Mistakes& mistakes) {
    const std::string why = why_no_name(name);
    if (why.empty()) return true;
    mistakes.add({"bad-name",
                  pointer,
                  place,
                  "name " + quote(name) + " of " + with_article(kind) + ' ' + why});
    return false;
}

Members::Members(
    const Node& node, std::string pointer, Noun noun, MemberTable table, Mistakes& mistakes)
    : node_(node), pointer_(std::move(pointer)), noun_(std::move(noun)), mistakes_(mistakes) {
    if (node_.kind == Node::Kind::object) {
        check_names(table);
    } else if (node_.kind != Node::Kind::misfit) {
        fail_whole("wrong-type",
                   "is " + describe(node_) + "; needs an object { ... } with " +
                       listed(names_of(table, false)));
    }
}

void Members::check_names(MemberTable table) const {
    std::vector<std::string_view> meant;
    for (const Member& member : node_.members) {
        const bool known = std::any_of(table.begin(), table.end(), [&](const MemberName& allowed) {
            return allowed.name == member.name;
        });
        if (known) continue;
        std::string suggestion;
        if (mistakes_.may_suggest()) {
            const std::vector<std::string_view> names = names_of(table, false);
            std::vector<std::string_view> absent;
            for (const std::string_view name : names) {
                if (!has(name)) absent.push_back(name);
            }
            std::string_view best = meant_word(member.name, absent);
            if (best.empty()) best = meant_word(member.name, names);
            if (!best.empty()) suggestion = "; did you mean " + quote(best) + '?';
            meant.push_back(best);
        }
        mistakes_.add({"unknown-member",
                       pointer_of(member.name),
                       member.place,
                       what() + " has an unknown member " + quote(member.name) +
                           (suggestion.empty() ? "." : suggestion) + " Members of " +
                           with_article(noun_.kind) + ": " + listed(names_of(table, false))});
    }
    for (const MemberName& allowed : table) {
        // One that is there under a wrong name has been told already.
        if (!allowed.needed || has(allowed.name) || holds(meant, allowed.name)) continue;
        fail_whole("missing-member",
                   "lacks " + quote(allowed.name) + "; " + with_article(noun_.kind) + " needs " +
                       listed(names_of(table, true)));
    }
}

std::string Members::pointer_of(std::string_view name) const {
    return pointer_ + pointer_part(name);
}

void Members::fail(std::string_view name, const char* rule, const std::string& message) const {
    const Node* const member = node_.find(name);
    mistakes_.add({rule,
                   member != nullptr ? pointer_of(name) : pointer_,
                   member != nullptr ? member->place : node_.place,
                   quote(name) + " of " + what() + ' ' + message});
}

void Members::fail_whole(const char* rule, const std::string& message) const {
    mistakes_.add({rule, pointer_, node_.place, what() + ' ' + message});
}

std::optional<std::int64_t> Members::whole(std::string_view name, const Range& range) const {
    const Node* const member = node_.find(name);
    if (member == nullptr) return std::nullopt;
    // The description is only worth making when something is wrong, but whole_in() needs it then.
    const bool fine = member->kind == Node::Kind::number && member->integral &&
                      member->whole >= range.least && member->whole <= range.most;
    if (fine) return member->whole;
    return whole_in(*member, pointer_of(name), quote(name) + " of " + what(), range, mistakes_);
}

int Members::whole_or(std::string_view name, const Range& range, int otherwise) const {
    const std::optional<std::int64_t> value = whole(name, range);
    return value ? static_cast<int>(*value) : otherwise;
}

std::optional<double> Members::number(std::string_view name, const Span& span) const {
    const Node* const member = node_.find(name);
    if (member == nullptr || member->kind == Node::Kind::misfit) return std::nullopt;
    const std::string allowed =
        "numbers from " + plain_number(span.least) + " to " + plain_number(span.most);
    if (member->kind != Node::Kind::number) {
        fail(name, "wrong-type", "is " + describe(*member) + "; allowed are " + allowed);
        return std::nullopt;
    }
    if (member->number < span.least || member->number > span.most) {
        fail(name, "out-of-range", "is " + describe(*member) + "; allowed are " + allowed);
        return std::nullopt;
    }
    return member->number;
}

std::optional<bool> Members::flag(std::string_view name) const {
    const Node* const member = node_.find(name);
    if (member == nullptr || member->kind == Node::Kind::misfit) return std::nullopt;
    if (member->kind != Node::Kind::boolean) {
        fail(name, "wrong-type", "is " + describe(*member) + "; allowed are true and false");
        return std::nullopt;
    }
    return member->boolean;
}

std::optional<std::string> Members::text(std::string_view name, const TextShape& shape) const {
    const Node* const member = node_.find(name);
    if (member == nullptr) return std::nullopt;
    return text_in(*member, pointer_of(name), quote(name) + " of " + what(), shape, mistakes_);
}

std::optional<std::array<int, 2>> Members::pair(std::string_view name,
                                                const std::array<Range, 2>& ranges) const {
    const Node* const member = node_.find(name);
    if (member == nullptr || member->kind == Node::Kind::misfit) return std::nullopt;
    if (member->kind != Node::Kind::list || member->elements.size() != 2) {
        fail(name, "wrong-type", "is " + describe(*member) + "; needs a list of two whole numbers");
        return std::nullopt;
    }
    std::array<int, 2> result{};
    bool fine = true;
    for (std::size_t i = 0; i < 2; ++i) {
        const Node& element = member->elements[i];
        const std::optional<std::int64_t> value = whole_in(
            element,
            pointer_of(name) + pointer_part(i),
            (i == 0 ? "first number in " : "second number in ") + quote(name) + " of " + what(),
            ranges[i],
            mistakes_);
        fine = fine && value.has_value();
        if (value) result[i] = static_cast<int>(*value);
    }
    return fine ? std::optional(result) : std::nullopt;
}

const Node* Members::list(std::string_view name, const Range& count) const {
    const Node* const member = node_.find(name);
    if (member == nullptr || member->kind == Node::Kind::misfit) return nullptr;
    if (member->kind != Node::Kind::list) {
        fail(name, "wrong-type", "is " + describe(*member) + "; needs a list [ ... ]");
        return nullptr;
    }
    const auto size = static_cast<std::int64_t>(member->elements.size());
    if (size < count.least || size > count.most) {
        fail(name,
             "out-of-range",
             "has " + std::to_string(size) + " elements; allowed are " +
                 std::to_string(count.least) + " to " + std::to_string(count.most));
    }
    return member;
}

const Node* Members::object(std::string_view name) const {
    const Node* const member = node_.find(name);
    if (member == nullptr || member->kind == Node::Kind::misfit) return nullptr;
    if (member->kind != Node::Kind::object) {
        fail(name, "wrong-type", "is " + describe(*member) + "; needs an object { ... }");
        return nullptr;
    }
    return member;
}

void Members::unknown_word(std::string_view name,
                           const std::string& word,
                           const std::vector<std::string_view>& allowed) const {
    std::string suggestion;
    if (mistakes_.may_suggest()) {
        const std::string_view best = meant_word(word, allowed);
        if (!best.empty()) suggestion = "; did you mean " + quote(best) + '?';
    }
    fail(name,
         "unknown-word",
         "is " + quote(word) + (suggestion.empty() ? ";" : suggestion) + " allowed are " +
             listed(allowed));
}

}  // namespace dialplate
