#include "sim/image/packing_choice.hpp"

#include <algorithm>

namespace dialplate {
namespace {

// Flash that a decoder takes on the ATmega328P beside what every engine has, measured on emitted sketches
// (avr-g++ 5.4, the flags of the emission): a layout of one packing against the same without raster glyphs.
constexpr std::int64_t plain_decoder = 580, runs_decoder = 640, context_decoder = 620;

std::int64_t size_of(const PackedFace& face) {
    return static_cast<std::int64_t>(face.bytes.size());
}

// A face, in every packing that it can have.
struct Candidate {
    const FaceToPack* wanted;
    PackedFace plain, runs, context;

    [[nodiscard]] bool may(PackingWish packing) const {
        return wanted->wish == PackingWish::automatic || wanted->wish == packing;
    }
    // The smaller one that needs no table; equal size: plain, the simpler decoder.
    [[nodiscard]] const PackedFace& other() const {
        if (wanted->wish == PackingWish::plain || runs.bytes.empty()) return plain;
        if (wanted->wish == PackingWish::runs || plain.bytes.empty()) return runs;
        return plain.bytes.size() <= runs.bytes.size() ? plain : runs;
    }
};

// Packs these in `context`, with a table of their own.
ContextTable pack_together(std::vector<Candidate*>& together) {
    std::vector<const Bitmap*> cells;
    for (const Candidate* candidate : together)
        for (const Glyph& glyph : candidate->wanted->raster->glyphs)
            cells.push_back(&glyph.cell);
    const ContextTable table = train_contexts(cells);
    for (Candidate* candidate : together)
        candidate->context =
            pack_context(*candidate->wanted->raster, table, candidate->wanted->enlarged);
    return table;
}

// What all faces take, those of `together` in context, with table and decoders.
std::int64_t all_in(const std::vector<Candidate>& candidates,
                    const std::vector<Candidate*>& together) {
    std::int64_t bytes = 0;
    bool plain = false, runs = false;
    for (const Candidate& candidate : candidates) {
        if (std::find(together.begin(), together.end(), &candidate) != together.end()) {
            bytes += size_of(candidate.context);
            continue;
        }
        bytes += size_of(candidate.other());
        (candidate.other().packing == Packing::plain ? plain : runs) = true;
    }
    if (!together.empty()) bytes += context_decoder + std::int64_t{std::tuple_size_v<ContextTable>};
    return bytes + (plain ? plain_decoder : 0) + (runs ? runs_decoder : 0);
}

}  // namespace

PackingChoices choose_packings(const std::vector<FaceToPack>& faces) {
    std::vector<Candidate> candidates;
    for (const FaceToPack& face : faces)
        candidates.push_back({.wanted = &face,
                              .plain = pack(*face.raster, Packing::plain, face.enlarged),
                              .runs = pack(*face.raster, Packing::runs, face.enlarged),
                              .context = {Packing::context, {}}});
    const auto named = [](const Candidate* candidate) {
        return candidate->wanted->wish == PackingWish::context;
    };

    // All that may be in `context`; then without those that gain nothing by it, until all gain.
    std::vector<Candidate*> together;
    for (Candidate& candidate : candidates)
        if (candidate.may(PackingWish::context)) together.push_back(&candidate);
    PackingChoices choices;
    ContextTable table = pack_together(together);
    for (const Candidate& candidate : candidates)
        choices.faces.push_back({.face = {},
                                 .plain = Bytes{size_of(candidate.plain)},
                                 .runs = Bytes{size_of(candidate.runs)},
                                 .context = Bytes{size_of(candidate.context)}});
    while (true) {
        const auto gains_nothing = [&](const Candidate* candidate) {
            return !named(candidate) &&
                   (candidate->context.bytes.empty() ||
                    size_of(candidate->context) >= size_of(candidate->other()));
        };
        if (std::erase_if(together, gains_nothing) == 0) break;
        table = pack_together(together);
    }
    std::vector<Candidate*> only_named = together;
    std::erase_if(only_named, [&](const Candidate* candidate) { return !named(candidate); });
    if (only_named.size() != together.size()) {
        const std::int64_t with = all_in(candidates, together);
        const ContextTable named_table = pack_together(only_named);
        if (all_in(candidates, only_named) <= with) {
            together = only_named;
            table = named_table;
        } else {
            table = pack_together(together);
        }
    }
    for (std::size_t i = 0; i < candidates.size(); ++i) {
        const bool in_context =
            std::find(together.begin(), together.end(), &candidates[i]) != together.end();
        choices.faces[i].face = in_context ? candidates[i].context : candidates[i].other();
        if (in_context) choices.faces[i].context = Bytes{size_of(candidates[i].context)};
    }
    if (!together.empty()) choices.contexts = table;
    return choices;
}

}  // namespace dialplate
