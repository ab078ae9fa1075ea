#include "sim/image/packing_choice.hpp"

#include "sim/image/decoder_sizes.hpp"

#include <algorithm>
#include <cassert>
#include <map>

namespace dialplate {
namespace {

constexpr std::int64_t table_bytes = std::tuple_size_v<ContextTable>;

std::int64_t size_of(const PackedFace& face) {
    return static_cast<std::int64_t>(face.bytes.size());
}

// A face, in the packings that do not depend on the other faces.
struct Candidate {
    const FaceToPack* wanted;
    PackedFace plain, runs;

    [[nodiscard]] bool may(PackingWish packing) const {
        return wanted->wish == PackingWish::automatic || wanted->wish == packing;
    }
    // The smallest among the packings of a set, but `context`; equal size: plain, the simpler decoder. Null: none.
    [[nodiscard]] const PackedFace* smallest(unsigned packings) const {
        const bool may_plain =
            (packings & packing_bit::plain) != 0 && may(PackingWish::plain) && !plain.bytes.empty();
        const bool may_runs =
            (packings & packing_bit::runs) != 0 && may(PackingWish::runs) && !runs.bytes.empty();
        if (may_plain && (!may_runs || plain.bytes.size() <= runs.bytes.size())) return &plain;
        return may_runs ? &runs : nullptr;
    }
};

// Some faces in `context`, with one table.
struct Together {
    ContextTable table{};
    std::vector<PackedFace> faces;  // by candidate; no bytes: not among them, or it does not fit
    std::vector<std::vector<char32_t>> orders;
};

class Chooser {
public:
    Chooser(const std::vector<FaceToPack>& faces, const PackingSurroundings& surroundings)
        : surroundings_(surroundings) {
        for (const FaceToPack& face : faces)
            candidates_.push_back({.wanted = &face,
                                   .plain = pack(*face.raster, Packing::plain, face.enlarged),
                                   .runs = pack(*face.raster, Packing::runs, face.enlarged)});
    }

    PackingChoices take() {
        PackingChoices best;
        for (unsigned packings = 1; packings < decoder_bytes.size(); ++packings) {
            std::optional<PackingChoices> choices = with(packings);
            if (choices && (best.faces.empty() || choices->all_in < best.all_in))
                best = std::move(*choices);
        }
        assert(!best.faces.empty());  // with all packings there is always a choice
        // What each face would take in context: with all the others that may.
        const Together& all = together(std::vector<bool>(candidates_.size(), true));
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            PackingChoice& face = best.faces[i];
            face.plain = Bytes{size_of(candidates_[i].plain)};
            face.runs = Bytes{size_of(candidates_[i].runs)};
            face.context =
                Bytes{size_of(face.face.packing == Packing::context ? face.face : all.faces[i])};
        }
        return best;
    }

private:
    // Faces that fit no packing are left without bytes, whatever the set.
    [[nodiscard]] bool fits_nothing(std::size_t i) {
        const Candidate& c = candidates_[i];
        if (c.smallest(packing_bit::plain | packing_bit::runs) != nullptr) return false;
        return !c.may(PackingWish::context) ||
               together(std::vector<bool>(candidates_.size(), true)).faces[i].bytes.empty();
    }
    // With decoders for just these; nothing: a face needs another.
    std::optional<PackingChoices> with(unsigned packings) {
        const bool context = (packings & packing_bit::context) != 0;
        std::vector<bool> in_context(candidates_.size(), false);
        for (std::size_t i = 0; i < candidates_.size(); ++i)
            in_context[i] = context && candidates_[i].may(PackingWish::context);
        // Those that gain nothing by it leave, until all that are left gain.
        for (bool changed = context; changed;) {
            changed = false;
            const Together& packed = together(in_context);
            for (std::size_t i = 0; i < candidates_.size(); ++i) {
                const PackedFace* other = candidates_[i].smallest(packings);
                if (!in_context[i] ||
                    (!packed.faces[i].bytes.empty() &&
                     (other == nullptr || size_of(packed.faces[i]) < size_of(*other))))
                    continue;
                in_context[i] = false;
                changed = true;
            }
        }
        PackingChoices choices;
        unsigned used = surroundings_.already;
        if (std::find(in_context.begin(), in_context.end(), true) != in_context.end()) {
            choices.contexts = together(in_context).table;
            choices.all_in += Bytes{table_bytes};
            if (surroundings_.decides_and_sends) choices.all_in += Bytes{decide_and_send_bytes};
            used |= packing_bit::context;
        }
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            PackingChoice choice;
            if (in_context[i]) {
                choice.face = together(in_context).faces[i];
                choice.order = together(in_context).orders[i];
            } else if (const PackedFace* other = candidates_[i].smallest(packings)) {
                choice.face = *other;
                used |= other->packing == Packing::plain ? packing_bit::plain : packing_bit::runs;
                for (const Glyph& glyph : candidates_[i].wanted->raster->glyphs)
                    choice.order.push_back(glyph.code);
            } else if (!fits_nothing(i)) {
                return std::nullopt;
            }
            choices.all_in += Bytes{size_of(choice.face)};
            choices.faces.push_back(std::move(choice));
        }
        choices.all_in += Bytes{decoder_bytes[used]};
        return choices;
    }

    // Packs these in `context`, with a table of their own. Kept, since several sets of packings ask for the same.
    const Together& together(const std::vector<bool>& which) {
        const auto [known, is_new] = known_.try_emplace(which);
        Together& packed = known->second;
        if (!is_new) return packed;
        std::vector<const Bitmap*> cells;
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            if (!which[i]) continue;
            for (const Glyph& glyph : candidates_[i].wanted->raster->glyphs)
                cells.push_back(&glyph.cell);
        }
        packed.table = train_contexts(cells);
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            packed.faces.push_back({Packing::context, {}});
            packed.orders.emplace_back();
            if (!which[i]) continue;
            const FaceToPack& wanted = *candidates_[i].wanted;
            RasterFace ordered = *wanted.raster;
            // A separator in a readout has its glyph's number in seven bits.
            constexpr std::size_t most_ordered = 127;
            if (ordered.glyphs.size() <= most_ordered)
                order_for_contexts(ordered, wanted.digits_first, packed.table);
            packed.faces.back() = pack_context(ordered, packed.table, wanted.enlarged);
            for (const Glyph& glyph : ordered.glyphs)
                packed.orders.back().push_back(glyph.code);
        }
        return packed;
    }

    const PackingSurroundings surroundings_;
    std::vector<Candidate> candidates_;
    std::map<std::vector<bool>, Together> known_;
};

}  // namespace

PackingChoices choose_packings(const std::vector<FaceToPack>& faces,
                               const PackingSurroundings& surroundings) {
    return faces.empty() ? PackingChoices{} : Chooser(faces, surroundings).take();
}

}  // namespace dialplate
