#include "sim/image/packing_choice.hpp"

#include "sim/image/decoder_sizes.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <cassert>
#include <iterator>
#include <map>

namespace dialplate {
namespace {

std::int64_t size_of(const PackedFace& face) {
    return static_cast<std::int64_t>(face.bytes.size());
}

// A face or a picture, in the packings that do not depend on the others.
struct Candidate {
    const FaceToPack* face = nullptr;
    const PictureToPack* picture = nullptr;
    std::vector<Bitmap> strips{};  // of the picture
    PackedFace plain{}, runs{};

    [[nodiscard]] PackingWish wish() const { return face != nullptr ? face->wish : picture->wish; }
    [[nodiscard]] bool tones() const {
        return face != nullptr ? face->raster->smooth : picture->bitmap->tones;
    }
    [[nodiscard]] bool may(PackingWish packing) const {
        return wish() == PackingWish::automatic || wish() == packing;
    }
    void add_bitmaps(std::vector<const Bitmap*>& bitmaps) const {
        for (const Bitmap& strip : strips)
            bitmaps.push_back(&strip);
        if (face == nullptr) return;
        for (const Glyph& glyph : face->raster->glyphs)
            bitmaps.push_back(&glyph.cell);
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

// Some of them in `context`, with one table.
struct Together {
    ContextTable table{};
    std::vector<PackedFace> faces;  // by candidate; no bytes: not among them, or it does not fit
    std::vector<std::vector<char32_t>> orders;
};

class Chooser {
public:
    Chooser(const std::vector<FaceToPack>& faces,
            const std::vector<PictureToPack>& pictures,
            const PackingSurroundings& surroundings)
        : surroundings_(surroundings), faces_(faces.size()) {
        for (const FaceToPack& face : faces)
            candidates_.push_back({.face = &face,
                                   .plain = pack(*face.raster, Packing::plain, face.enlarged),
                                   .runs = pack(*face.raster, Packing::runs, face.enlarged)});
        for (const PictureToPack& picture : pictures)
            candidates_.push_back(
                {.picture = &picture,
                 .strips = strips_of(*picture.bitmap),
                 .plain = {Packing::plain, pack_picture(*picture.bitmap, Packing::plain)},
                 .runs = {Packing::runs, pack_picture(*picture.bitmap, Packing::runs)}});
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
        const auto first_picture = best.faces.begin() + static_cast<std::ptrdiff_t>(faces_);
        best.pictures.assign(std::make_move_iterator(first_picture),
                             std::make_move_iterator(best.faces.end()));
        best.faces.erase(first_picture, best.faces.end());
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
        unsigned used = surroundings_.already, used_for_tones = 0;
        const auto use = [&](const Candidate& candidate, unsigned decoder) {
            (candidate.tones() ? used_for_tones : used) |= decoder;
        };
        for (std::size_t i = 0; i < candidates_.size(); ++i)
            if (in_context[i]) use(candidates_[i], packing_bit::context);
        if (std::find(in_context.begin(), in_context.end(), true) != in_context.end()) {
            choices.contexts = together(in_context).table;
            choices.table_bytes =
                used_for_tones != 0 ? int{context_model::all} : int{context_model::contexts};
            choices.all_in += Bytes{choices.table_bytes};
        }
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            PackingChoice choice;
            if (in_context[i]) {
                choice.face = together(in_context).faces[i];
                choice.order = together(in_context).orders[i];
            } else if (const PackedFace* other = candidates_[i].smallest(packings)) {
                choice.face = *other;
                use(candidates_[i],
                    other->packing == Packing::plain ? packing_bit::plain : packing_bit::runs);
                if (candidates_[i].face != nullptr) {
                    for (const Glyph& glyph : candidates_[i].face->raster->glyphs)
                        choice.order.push_back(glyph.code);
                }
            } else if (!fits_nothing(i)) {
                return std::nullopt;
            }
            choices.all_in += Bytes{size_of(choice.face)};
            choices.faces.push_back(std::move(choice));
        }
        choices.all_in += Bytes{decoders_size(used, sending())};
        if ((used_for_tones & packing_bit::plain) != 0)
            choices.all_in += Bytes{plain_tones_decoder_bytes};
        if ((used_for_tones & packing_bit::context) != 0)
            choices.all_in += Bytes{context_tones_decoder_bytes};
        return choices;
    }

    [[nodiscard]] Sending sending() const {
        return {surroundings_.decides_and_sends,
                std::any_of(candidates_.begin(), candidates_.end(), [](const Candidate& c) {
                    return c.face != nullptr && c.face->enlarged > 1;
                })};
    }
    // Packs these in `context`, with a table of their own. Kept, since several sets of packings ask for the same.
    const Together& together(const std::vector<bool>& which) {
        const auto [known, is_new] = known_.try_emplace(which);
        Together& packed = known->second;
        if (!is_new) return packed;
        std::vector<const Bitmap*> cells;
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            if (which[i]) candidates_[i].add_bitmaps(cells);
        }
        packed.table = train_contexts(cells);
        for (std::size_t i = 0; i < candidates_.size(); ++i) {
            packed.faces.push_back({Packing::context, {}});
            packed.orders.emplace_back();
            if (!which[i]) continue;
            if (const PictureToPack* picture = candidates_[i].picture) {
                packed.faces.back().bytes =
                    pack_picture(*picture->bitmap, Packing::context, packed.table);
                continue;
            }
            const FaceToPack& wanted = *candidates_[i].face;
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
    const std::size_t faces_;  // the first so many candidates; then the pictures
    std::vector<Candidate> candidates_;
    std::map<std::vector<bool>, Together> known_;
};

}  // namespace

PackingChoices choose_packings(const std::vector<FaceToPack>& faces,
                               const PackingSurroundings& surroundings,
                               const std::vector<PictureToPack>& pictures) {
    return faces.empty() && pictures.empty() ? PackingChoices{}
                                             : Chooser(faces, pictures, surroundings).take();
}

}  // namespace dialplate
