#include "sim/desk/bench.hpp"

#include "sim/edit/pointers.hpp"

namespace dialplate {

const char* name_of(Mode mode) {
    constexpr const char* names[] = {"operate", "arrange", "look"};
    return names[static_cast<std::size_t>(mode)];
}

const Node* Bench::document() {
    if (document_revision_ != session.revision()) {
        document_ = tree_of(session.text());
        document_revision_ = session.revision();
    }
    return document_ ? &*document_ : nullptr;
}

void Bench::note_saved() {
    if (piece.prototype() == nullptr || !piece.ledger()) return;
    saved = SavedAccount{piece.ledger()->flash, piece.ledger()->ram, {}, piece.ledger()->time};
    for (const Face& face : piece.layout().faces)
        saved->faces.push_back(face.name);
}

const NameUses& Bench::uses() {
    if (uses_revision_ != session.revision()) {
        uses_ = NameUses(*schema, *document());
        uses_revision_ = session.revision();
    }
    return uses_;
}

Grounds Bench::grounds() {
    return {*schema, *document(), piece.prototype() == nullptr ? nullptr : &piece.layout()};
}

void Bench::want(Amended amended, std::string name, const std::string& member) {
    if (!amended.text) {
        refusal = Refusal{member, amended.mistake};
        return;
    }
    Wanted one;
    one.name = std::move(name);
    one.text = std::move(amended.text);
    one.member = member;
    wanted.push_back(std::move(one));
}

bool Bench::true_to_text() const {
    return piece.prototype() != nullptr && piece.mistakes().empty() &&
           piece.text() == session.text();
}

}  // namespace dialplate
