#include "sim/edit/differences.hpp"

#include <nlohmann/json.hpp>

namespace dialplate {
namespace {

using Json = nlohmann::ordered_json;

std::string shortened(const Json* value) {
    if (value == nullptr) return "none";
    constexpr std::size_t most = 28;
    std::string text = value->dump();
    return text.size() <= most ? text : text.substr(0, most - 3) + "...";
}

std::string part(const std::string& name) {
    std::string token = "/";
    for (const char c : name)
        token += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
    return token;
}

void compare(const std::string& at,
             const Json* mine,
             const Json* theirs,
             std::vector<Difference>& found) {
    if (mine != nullptr && theirs != nullptr) {
        if (*mine == *theirs) return;
        if (mine->is_object() && theirs->is_object()) {
            for (const auto& [name, value] : mine->items())
                compare(at + part(name),
                        &value,
                        theirs->contains(name) ? &(*theirs)[name] : nullptr,
                        found);
            for (const auto& [name, value] : theirs->items())
                if (!mine->contains(name)) compare(at + part(name), nullptr, &value, found);
            return;
        }
        if (mine->is_array() && theirs->is_array() && mine->size() == theirs->size()) {
            for (std::size_t i = 0; i < mine->size(); ++i)
                compare(at + "/" + std::to_string(i), &(*mine)[i], &(*theirs)[i], found);
            return;
        }
    }
    found.push_back({at.empty() ? "the document" : at, shortened(mine), shortened(theirs)});
}

}  // namespace

std::vector<Difference> differences_between(std::string_view mine, std::string_view theirs) {
    const Json a = Json::parse(mine, nullptr, false), b = Json::parse(theirs, nullptr, false);
    std::vector<Difference> found;
    if (a.is_discarded() || b.is_discarded()) {
        if (mine != theirs)
            found.push_back({"the document",
                             a.is_discarded() ? "no JSON" : "JSON",
                             b.is_discarded() ? "no JSON" : "JSON"});
        return found;
    }
    compare("", &a, &b, found);
    return found;
}

}  // namespace dialplate
