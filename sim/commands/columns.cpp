#include "sim/commands/columns.hpp"

namespace dialplate {
namespace {

std::string spaces(std::size_t has, std::size_t width) {
    return std::string(width > has ? width - has : 0, ' ');
}

}  // namespace

std::string left(const std::string& text, std::size_t width) {
    return text + spaces(text.size(), width);
}

std::string right(const std::string& text, std::size_t width) {
    return spaces(text.size(), width) + text;
}

}  // namespace dialplate
