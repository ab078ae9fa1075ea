#include "sim/desk/bench.hpp"

namespace dialplate {

const char* name_of(Mode mode) {
    constexpr const char* names[] = {"operate", "arrange", "look"};
    return names[static_cast<std::size_t>(mode)];
}

bool Bench::true_to_text() const {
    return piece.prototype() != nullptr && piece.mistakes().empty() &&
           piece.text() == session.text();
}

}  // namespace dialplate
