#include "sim/check/folding.hpp"

#include "sim/layout/source_text.hpp"

#include <algorithm>
#include <sstream>

namespace dialplate {

std::string folded(const std::string& text, int width, int indent) {
    std::istringstream words(text);
    std::string out, line;
    for (std::string word; words >> word;) {
        const bool fits = static_cast<int>(characters(line) + characters(word)) + 1 <= width;
        if (!line.empty() && !fits) {
            out += line + '\n' + std::string(static_cast<std::size_t>(indent), ' ');
            line.clear();
        }
        line += (line.empty() ? "" : " ") + word;
    }
    return out + line;
}

std::string up_to(int column, const std::string& text) {
    const int blanks = std::max(1, column - static_cast<int>(characters(text)));
    return text + std::string(static_cast<std::size_t>(blanks), ' ');
}

}  // namespace dialplate
