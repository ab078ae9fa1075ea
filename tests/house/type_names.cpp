#include "tests/house/type_names.hpp"

#include <algorithm>
#include <cctype>
#include <fstream>
#include <iterator>
#include <map>
#include <optional>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

bool is_word(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_';
}

struct Token {
    std::string text;
    int line = 0;
};

/// Words and signs of C++ without comments, texts and lines of the preprocessor.
class Tokens {
public:
    explicit Tokens(const std::string& text) : text_(text) {}

    std::optional<Token> next() {
        while (at_ < text_.size()) {
            const char c = text_[at_];
            if (c == '#' && begins_line_) {
                skip_line();
            } else if (follows("//")) {
                skip_line();
            } else if (follows("/*")) {
                skip_to("*/");
            } else if (follows("R\"")) {
                const std::size_t open = text_.find('(', at_);
                skip_to(")" + text_.substr(at_ + 2, open - at_ - 2) + "\"");
            } else if (c == '"' || (c == '\'' && !between_digits())) {
                skip_literal(c);
            } else if (is_word(c)) {
                const std::size_t from = at_;
                while (at_ < text_.size() && (is_word(text_[at_]) || between_digits()))
                    ++at_;
                begins_line_ = false;
                return Token{text_.substr(from, at_ - from), line_};
            } else if (std::isspace(static_cast<unsigned char>(c)) != 0) {
                step();
            } else {
                step();
                begins_line_ = false;
                return Token{std::string(1, c), line_};
            }
        }
        return std::nullopt;
    }

private:
    bool follows(const char* sign) const {
        return text_.compare(at_, std::char_traits<char>::length(sign), sign) == 0;
    }
    /// 10'000
    bool between_digits() const {
        return text_[at_] == '\'' && at_ > 0 && at_ + 1 < text_.size() &&
               std::isxdigit(static_cast<unsigned char>(text_[at_ - 1])) != 0 &&
               std::isxdigit(static_cast<unsigned char>(text_[at_ + 1])) != 0;
    }
    void step() {
        if (text_[at_] == '\n') {
            ++line_;
            begins_line_ = true;
        }
        ++at_;
    }
    void skip_line() {
        while (at_ < text_.size() && text_[at_] != '\n') {
            if (text_[at_] == '\\' && at_ + 1 < text_.size()) step();
            step();
        }
    }
    void skip_to(const std::string& end) {
        const std::size_t found = text_.find(end, at_ + 2);
        const std::size_t past = found == std::string::npos ? text_.size() : found + end.size();
        while (at_ < past)
            step();
    }
    void skip_literal(char quote) {
        for (step(); at_ < text_.size() && text_[at_] != quote; step())
            if (text_[at_] == '\\' && at_ + 1 < text_.size()) step();
        if (at_ < text_.size()) step();
        begins_line_ = false;
    }

    const std::string& text_;
    std::size_t at_ = 0;
    int line_ = 1;
    bool begins_line_ = true;
};

/// What a pair of braces encloses.
struct Scope {
    enum class Kind { named, unnamed, other } kind = Kind::other;
    std::string name;
};

std::vector<Token> all_tokens(const std::string& text) {
    std::vector<Token> all;
    Tokens tokens(text);
    while (std::optional<Token> token = tokens.next())
        all.push_back(std::move(*token));
    return all;
}

/// The scope that the words since the last ; { or } open with a brace. What does not begin as a type or a namespace
/// does is a function, a loop or a value.
/// @param head  Those words.
/// @param line  Set to that of the name if it is a type's.
Scope scope_of(const std::vector<Token>& head, int& line) {
    std::size_t at = 0;
    if (at < head.size() && head[at].text == "template") {
        int open = 0;
        do {
            ++at;
            if (at >= head.size()) return {};
            open += head[at].text == "<" ? 1 : head[at].text == ">" ? -1 : 0;
        } while (open > 0);
        ++at;
    }
    if (at < head.size() && head[at].text == "inline") ++at;
    if (at >= head.size()) return {};
    if (head[at].text == "namespace") {
        std::string name;
        for (++at; at < head.size(); ++at)
            name += head[at].text;
        return {name.empty() ? Scope::Kind::unnamed : Scope::Kind::named, name};
    }
    const bool is_enum = head[at].text == "enum";
    if (is_enum) ++at;
    if (at < head.size() &&
        (head[at].text == "struct" || head[at].text == "class" || head[at].text == "union"))
        ++at;
    else if (!is_enum)
        return {};
    if (at >= head.size() || !is_word(head[at].text[0])) return {};  // no name, or an attribute
    Token name = head[at];
    // "Outer::Inner"
    while (at + 3 < head.size() && head[at + 1].text == ":" && head[at + 2].text == ":") {
        at += 3;
        name.text += "::" + head[at].text;
    }
    const std::string after = at + 1 < head.size() ? head[at + 1].text : "{";
    // "final", a base or the brace; all else is a specialisation, or a function that returns one.
    if (after != "{" && after != ":" && after != "final") return {};
    line = name.line;
    return {Scope::Kind::named, name.text};
}

std::string joined(const std::vector<Scope>& scopes) {
    std::string name;
    for (const Scope& scope : scopes)
        name += (name.empty() ? "" : "::") + scope.name;
    return name;
}

}  // namespace

std::vector<NamedType> types_defined(const std::string& file, const std::string& text) {
    std::vector<NamedType> types;
    std::vector<Scope> scopes;
    std::vector<Token> head;
    for (const Token& token : all_tokens(text)) {
        if (token.text == "{") {
            int line = 0;
            scopes.push_back(scope_of(head, line));
            head.clear();
            const bool shared = std::all_of(scopes.begin(), scopes.end(), [](const Scope& scope) {
                return scope.kind == Scope::Kind::named;
            });
            if (line != 0 && shared) types.push_back({joined(scopes), file, line});
        } else if (token.text == "}") {
            if (!scopes.empty()) scopes.pop_back();
            head.clear();
        } else if (token.text == ";") {
            head.clear();
        } else if (token.text == ":" && head.size() == 1 &&
                   (head[0].text == "public" || head[0].text == "private" ||
                    head[0].text == "protected")) {
            head.clear();
        } else {
            head.push_back(token);
        }
    }
    return types;
}

std::vector<std::string> types_of_one_name(const fs::path& tree) {
    std::vector<std::string> files;
    for (const char* top : {"ui", "fonts", "sim", "tests"}) {
        if (!fs::exists(tree / top)) continue;
        for (const fs::directory_entry& entry : fs::recursive_directory_iterator(tree / top)) {
            const std::string ending = entry.path().extension().string();
            if (entry.is_regular_file() && (ending == ".hpp" || ending == ".cpp"))
                files.push_back(fs::relative(entry.path(), tree).generic_string());
        }
    }
    std::sort(files.begin(), files.end());

    // Two folders of tests are two programs; tests/a.cpp may go into any.
    const auto program_of = [](const std::string& file) -> std::string {
        if (file.rfind("tests/", 0) != 0) return {};
        const std::size_t slash = file.find('/', 6);
        return slash == std::string::npos ? std::string{} : file.substr(0, slash);
    };
    std::vector<std::string> faults;
    std::map<std::string, std::vector<NamedType>> known;
    for (const std::string& file : files) {
        std::ifstream in(tree / file);
        const std::string text{std::istreambuf_iterator<char>(in), {}};
        for (NamedType& type : types_defined(file, text)) {
            std::vector<NamedType>& same = known[type.name];
            const auto beside = std::find_if(same.begin(), same.end(), [&](const NamedType& other) {
                const std::string a = program_of(other.file);
                const std::string b = program_of(file);
                return other.file != file && (a.empty() || b.empty() || a == b);
            });
            if (beside != same.end()) {
                faults.push_back(file + ":" + std::to_string(type.line) + ": error: " + type.name +
                                 " is also in " + beside->file + ":" +
                                 std::to_string(beside->line) + " [type-names]");
            }
            same.push_back(std::move(type));
        }
    }
    return faults;
}

}  // namespace dialplate
