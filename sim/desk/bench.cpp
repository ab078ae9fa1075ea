#include "sim/desk/bench.hpp"

#include "sim/layout/mistakes.hpp"

namespace dialplate {

const char* name_of(Mode mode) {
    constexpr const char* names[] = {"operate", "arrange", "look"};
    return names[static_cast<std::size_t>(mode)];
}

const Node* Bench::document() {
    if (document_revision_ != session.revision()) {
        std::vector<Finding> findings;
        Mistakes mistakes(findings);
        document_ = parse_json(session.text(), mistakes);
        document_revision_ = session.revision();
    }
    return document_ ? &*document_ : nullptr;
}

bool Bench::true_to_text() const {
    return piece.prototype() != nullptr && piece.mistakes().empty() &&
           piece.text() == session.text();
}

}  // namespace dialplate
