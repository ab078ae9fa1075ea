#include "sim/layout/amend.hpp"

#include "sim/layout/mistakes.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <numeric>
#include <utility>
#include <vector>

namespace dialplate {
namespace {

constexpr std::string_view white = " \t\r\n";

/// A member of an object or an element of a list, as offsets into the document.
struct Entry {
    std::string name{};     ///< Of a member, escapes resolved.
    std::size_t begin = 0;  ///< First byte: of the name, or of the value of an element.
    std::size_t value_begin = 0, value_end = 0;
};

struct Container {
    bool object = false;
    std::size_t open = 0, close = 0;  ///< Offsets of its brackets.
    std::vector<Entry> entries{};
};

std::size_t skip_white(std::string_view text, std::size_t at) {
    return std::min(text.find_first_not_of(white, at), text.size());
}

std::size_t text_end(std::string_view text, std::size_t at) {
    for (++at; text[at] != '"'; ++at) {
        if (text[at] == '\\') ++at;
    }
    return at + 1;
}

std::size_t value_end(std::string_view text, std::size_t at) {
    if (text[at] == '"') return text_end(text, at);
    if (text[at] != '{' && text[at] != '[') {
        return std::min(text.find_first_of(",]} \t\r\n", at), text.size());
    }
    int depth = 0;
    do {
        const char c = text[at];
        if (c == '"') {
            at = text_end(text, at);
            continue;
        }
        if (c == '{' || c == '[') ++depth;
        if (c == '}' || c == ']') --depth;
        ++at;
    } while (depth > 0);
    return at;
}

Container read_container(std::string_view text, std::size_t open) {
    Container container{.object = text[open] == '{', .open = open};
    std::size_t at = skip_white(text, open + 1);
    while (text[at] != '}' && text[at] != ']') {
        Entry entry{.begin = at};
        if (container.object) {
            const std::size_t name_end = text_end(text, at);
            entry.name = nlohmann::json::parse(text.substr(at, name_end - at)).get<std::string>();
            at = skip_white(text, skip_white(text, name_end) + 1);  // Past the colon.
        }
        entry.value_begin = at;
        entry.value_end = value_end(text, at);
        at = skip_white(text, entry.value_end);
        if (text[at] == ',') at = skip_white(text, at + 1);
        container.entries.push_back(std::move(entry));
    }
    container.close = at;
    return container;
}

/// Takes one reference token off the front of a pointer (RFC 6901, section 4).
std::string take_token(std::string_view& pointer) {
    pointer.remove_prefix(1);
    const std::string_view raw = pointer.substr(0, pointer.find('/'));
    pointer.remove_prefix(raw.size());
    std::string token;
    for (std::size_t i = 0; i < raw.size(); ++i) {
        if (raw[i] == '~' && i + 1 < raw.size()) {
            token += raw[++i] == '1' ? '/' : '~';
        } else {
            token += raw[i];
        }
    }
    return token;
}

std::optional<std::size_t> index_of(std::string_view token) {
    std::size_t index = 0;
    const auto [end, fault] = std::from_chars(token.data(), token.data() + token.size(), index);
    if (fault != std::errc{} || end != token.data() + token.size()) return std::nullopt;
    if (token.size() > 1 && token[0] == '0') return std::nullopt;
    return index;
}

/// Number of the entry that a token names: the number of entries if there is none.
std::size_t find_entry(const Container& container, const std::string& token) {
    const std::size_t count = container.entries.size();
    if (!container.object) return std::min(index_of(token).value_or(count), count);
    const auto found = std::ranges::find(container.entries, token, &Entry::name);
    return static_cast<std::size_t>(found - container.entries.begin());
}

/// Where a pointer leads: the container that holds its last token, and that token.
struct Site {
    Container container;
    std::string token;
};

/// @param pointer  Not empty.
std::optional<Site> find_site(std::string_view text, std::string_view pointer) {
    std::size_t at = skip_white(text, 0);
    while (pointer[0] == '/') {
        if (text[at] != '{' && text[at] != '[') return std::nullopt;
        Site site{read_container(text, at), take_token(pointer)};
        if (pointer.empty()) return site;
        const std::size_t entry = find_entry(site.container, site.token);
        if (entry == site.container.entries.size()) return std::nullopt;
        at = site.container.entries[entry].value_begin;
    }
    return std::nullopt;
}

/// White space at the start of the line on which `at` lies.
std::string_view indentation(std::string_view text, std::size_t at) {
    const std::size_t feed = at == 0 ? std::string_view::npos : text.rfind('\n', at - 1);
    const std::size_t begin = feed == std::string_view::npos ? 0 : feed + 1;
    const std::size_t end = text.find_first_not_of(" \t", begin);
    return text.substr(begin, std::min(end, at) - begin);
}

bool first_on_its_line(std::string_view text, std::size_t at) {
    const std::size_t before =
        at == 0 ? std::string_view::npos : text.find_last_not_of(" \t", at - 1);
    return before != std::string_view::npos && text[before] == '\n';
}

std::string_view line_end(std::string_view text) {
    const std::size_t feed = text.find('\n');
    return feed != std::string_view::npos && feed > 0 && text[feed - 1] == '\r' ? "\r\n" : "\n";
}

/// A value whose further lines begin with the indentation of the line where it goes.
std::string indented(std::string_view value, std::string_view text, std::size_t at) {
    const std::string_view indent = indentation(text, at);
    std::string result;
    for (const char c : value) {
        if (c == '\n') {
            if (line_end(text).size() == 2 && !result.ends_with('\r')) result += '\r';
            result += '\n';
            result += indent;
        } else {
            result += c;
        }
    }
    return result;
}

/// What stands between two entries when one more comes beside `neighbour`.
std::string separator(std::string_view text, const Entry& neighbour) {
    if (!first_on_its_line(text, neighbour.begin)) return ", ";
    return "," + std::string(line_end(text)) + std::string(indentation(text, neighbour.begin));
}

/// A member as its neighbour writes it, or an element.
std::string written_entry(std::string_view text, const Site& site, const std::string& value) {
    if (!site.container.object) return value;
    std::string colon = ": ";
    if (!site.container.entries.empty()) {
        const Entry& last = site.container.entries.back();
        const std::size_t name_end = text_end(text, last.begin);
        const std::string_view between = text.substr(name_end, last.value_begin - name_end);
        if (between.find('\n') == std::string_view::npos) colon = between;
    }
    return nlohmann::json(site.token).dump() + colon + value;
}

void add(std::string& text, const Site& site, std::size_t index, std::string_view value) {
    const std::vector<Entry>& entries = site.container.entries;
    if (entries.empty()) {
        const std::size_t inside = site.container.open + 1;
        const std::string entry =
            written_entry(text, site, indented(value, text, site.container.open));
        text.replace(inside, site.container.close - inside, entry);
    } else if (index == entries.size()) {
        const Entry& last = entries.back();
        const std::string entry = written_entry(text, site, indented(value, text, last.begin));
        text.insert(last.value_end, separator(text, last) + entry);
    } else {
        const Entry& next = entries[index];
        const std::string entry = written_entry(text, site, indented(value, text, next.begin));
        text.insert(next.begin, entry + separator(text, next));
    }
}

void remove(std::string& text, const Container& container, std::size_t index) {
    const std::vector<Entry>& entries = container.entries;
    const bool last = index + 1 == entries.size();
    const std::size_t begin = entries.size() == 1 ? container.open + 1
                              : last              ? entries[index - 1].value_end
                                                  : entries[index].begin;
    const std::size_t end = entries.size() == 1 ? container.close
                            : last              ? entries[index].value_end
                                                : entries[index + 1].begin;
    text.erase(begin, end - begin);
}

/// @return Empty, or what is wrong.
std::string apply(std::string& text, const Change& change) {
    const bool removes = change.kind == Change::Kind::remove;
    if (!removes && !nlohmann::json::accept(change.value)) {
        return "its value " + quote(change.value) + " is not JSON";
    }
    if (change.pointer.empty()) {
        if (removes) return "the whole document cannot be removed";
        const std::size_t begin = skip_white(text, 0);
        text.replace(begin, value_end(text, begin) - begin, change.value);
        return {};
    }
    if (change.pointer[0] != '/') return "a JSON Pointer begins with a slash";
    const std::optional<Site> site = find_site(text, change.pointer);
    if (!site) return "nothing in the document holds such a place";
    const Container& container = site->container;
    const std::size_t count = container.entries.size();
    const std::size_t index = find_entry(container, site->token);
    if (index < count && (change.kind == Change::Kind::replace ||
                          (change.kind == Change::Kind::add && container.object))) {
        const Entry& entry = container.entries[index];
        text.replace(entry.value_begin,
                     entry.value_end - entry.value_begin,
                     indented(change.value, text, entry.begin));
        return {};
    }
    if (change.kind == Change::Kind::add) {
        const bool at_end = site->token == "-" || index_of(site->token) == count;
        if (!container.object && index == count && !at_end) {
            return "the list has " + std::to_string(count) + " elements, and " +
                   quote(site->token) + " is neither an index up to there nor \"-\"";
        }
        add(text, *site, index, change.value);
        return {};
    }
    if (index == count) return "there is no value at that place";
    remove(text, container, index);
    return {};
}

}  // namespace

const char* name_of(Change::Kind kind) {
    switch (kind) {
        case Change::Kind::add:
            return "add";
        case Change::Kind::remove:
            return "remove";
        case Change::Kind::replace:
            break;
    }
    return "replace";
}

Amended amend(std::string_view document, std::span<const Change> changes) {
    if (!nlohmann::json::accept(document)) {
        return {std::nullopt, "the document is not JSON, so that no part of it can be changed"};
    }
    std::string text(document);
    for (const Change& change : changes) {
        const std::string mistake = apply(text, change);
        if (!mistake.empty()) {
            return {std::nullopt,
                    std::string("cannot ") + name_of(change.kind) + " " + quote(change.pointer) +
                        ": " + mistake};
        }
    }
    return {std::move(text), {}};
}

std::optional<std::string_view> written_at(std::string_view document, std::string_view pointer) {
    if (!nlohmann::json::accept(document)) return std::nullopt;
    if (pointer.empty()) {
        const std::size_t begin = skip_white(document, 0);
        return document.substr(begin, value_end(document, begin) - begin);
    }
    const std::optional<Site> site = find_site(document, pointer);
    if (!site) return std::nullopt;
    const std::size_t index = find_entry(site->container, site->token);
    if (index == site->container.entries.size()) return std::nullopt;
    const Entry& entry = site->container.entries[index];
    return document.substr(entry.value_begin, entry.value_end - entry.value_begin);
}

std::optional<std::string> value_at(std::string_view document, std::string_view pointer) {
    const std::optional<std::string_view> written = written_at(document, pointer);
    if (!written) return std::nullopt;
    const std::size_t begin = static_cast<std::size_t>(written->data() - document.data());
    const std::string_view indent = indentation(document, begin);
    std::string value;
    for (std::size_t at = 0; at < written->size();) {
        const std::size_t end = std::min(written->find('\n', at), written->size() - 1) + 1;
        value += written->substr(at, end - at);
        at = end;
        if (written->substr(at).starts_with(indent)) at += indent.size();
    }
    return value;
}

Amended moved(std::string_view document, std::string_view from, std::string_view to) {
    const auto fault = [&](const std::string& why) -> Amended {
        return {std::nullopt, "cannot move " + quote(from) + " to " + quote(to) + ": " + why};
    };
    if (!nlohmann::json::accept(document)) return fault("the document is not JSON");
    const std::size_t slash = from.rfind('/');
    if (slash == std::string_view::npos || to.rfind('/') != slash ||
        from.substr(0, slash) != to.substr(0, slash))
        return fault("both have to be in the same object or list");
    const std::optional<Site> site = find_site(document, from);
    if (!site) return fault("nothing in the document holds such a place");
    const std::vector<Entry>& entries = site->container.entries;
    const std::size_t index = find_entry(site->container, site->token);
    if (index == entries.size()) return fault("there is no value at that place");
    std::string_view last = to.substr(slash);
    const std::string token = take_token(last);
    std::string text(document);
    if (token == site->token) return {std::move(text), {}};

    if (site->container.object) {
        if (find_entry(site->container, token) != entries.size())
            return fault("there is a member of that name already");
        const std::size_t begin = entries[index].begin;
        text.replace(begin, text_end(document, begin) - begin, nlohmann::json(token).dump());
        return {std::move(text), {}};
    }
    const std::optional<std::size_t> place = index_of(token);
    if (!place || *place >= entries.size())
        return fault("the list has " + std::to_string(entries.size()) + " elements");
    std::vector<std::size_t> order(entries.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    order.erase(order.begin() + static_cast<std::ptrdiff_t>(index));
    order.insert(order.begin() + static_cast<std::ptrdiff_t>(*place), index);
    std::string list;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const Entry& here = entries[i];
        const Entry& comes = entries[order[i]];
        if (i > 0)
            list += document.substr(entries[i - 1].value_end,
                                    here.value_begin - entries[i - 1].value_end);
        list += document.substr(comes.value_begin, comes.value_end - comes.value_begin);
    }
    const std::size_t begin = entries.front().value_begin;
    text.replace(begin, entries.back().value_end - begin, list);
    return {std::move(text), {}};
}

}  // namespace dialplate
