#include "sim/image/packing_choice.hpp"

#include "ui/image_format.hpp"

#include <algorithm>

namespace dialplate {
namespace {

// Flash that a decoder takes on the ATmega328P beside what every engine has, measured on emitted sketches
// (avr-g++ 5.4, the flags of the emission): a layout of one packing against the same without raster glyphs.
constexpr std::int64_t plain_decoder = 580, runs_decoder = 640, context_decoder = 620;
constexpr std::int64_t plain_tones_decoder = 560, context_tones_decoder = 760;

std::int64_t size_of(const PackedFace& face) {
    return static_cast<std::int64_t>(face.bytes.size());
}

// A face or a picture, in every packing that it can have.
struct Candidate {
    const FaceToPack* face = nullptr;
    const PictureToPack* picture = nullptr;
    std::vector<Bitmap> strips{};  // of the picture
    PackedFace plain{}, runs{}, context{};

    [[nodiscard]] PackingWish wish() const { return face != nullptr ? face->wish : picture->wish; }
    [[nodiscard]] bool tones() const {
        return face != nullptr ? face->raster->smooth : picture->bitmap->tones;
    }
    [[nodiscard]] bool may(PackingWish packing) const {
        return wish() == PackingWish::automatic || wish() == packing;
    }
    [[nodiscard]] PackedFace packed(Packing packing, const ContextTable& table = {}) const {
        if (picture != nullptr) return {packing, pack_picture(*picture->bitmap, packing, table)};
        return packing == Packing::context ? pack_context(*face->raster, table, face->enlarged)
                                           : pack(*face->raster, packing, face->enlarged);
    }
    void add_bitmaps(std::vector<const Bitmap*>& bitmaps) const {
        for (const Bitmap& strip : strips)
            bitmaps.push_back(&strip);
        if (face == nullptr) return;
        for (const Glyph& glyph : face->raster->glyphs)
            bitmaps.push_back(&glyph.cell);
    }
    // The smaller one that needs no table; equal size: plain, the simpler decoder.
    [[nodiscard]] const PackedFace& other() const {
        if (wish() == PackingWish::plain || runs.bytes.empty()) return plain;
        if (wish() == PackingWish::runs || plain.bytes.empty()) return runs;
        return plain.bytes.size() <= runs.bytes.size() ? plain : runs;
    }
};

// Packs these in `context`, with a table of their own.
ContextTable pack_together(std::vector<Candidate*>& together) {
    std::vector<const Bitmap*> bitmaps;
    for (const Candidate* candidate : together)
        candidate->add_bitmaps(bitmaps);
    const ContextTable table = train_contexts(bitmaps);
    for (Candidate* candidate : together)
        candidate->context = candidate->packed(Packing::context, table);
    return table;
}

bool any_in_tones(const std::vector<Candidate*>& together) {
    return std::any_of(together.begin(), together.end(), [](const Candidate* candidate) {
        return candidate->tones();
    });
}

int table_bytes(const std::vector<Candidate*>& together) {
    if (together.empty()) return 0;
    return any_in_tones(together) ? int{context_model::all} : int{context_model::contexts};
}

// What all of them take, those of `together` in context, with table and decoders.
std::int64_t all_in(const std::vector<Candidate>& candidates,
                    const std::vector<Candidate*>& together) {
    std::int64_t bytes = table_bytes(together);
    bool plain = false, runs = false, plain_tones = false;
    for (const Candidate& candidate : candidates) {
        if (std::find(together.begin(), together.end(), &candidate) != together.end()) {
            bytes += size_of(candidate.context);
            continue;
        }
        bytes += size_of(candidate.other());
        (candidate.tones()                             ? plain_tones
         : candidate.other().packing == Packing::plain ? plain
                                                       : runs) = true;
    }
    const bool context_tones = any_in_tones(together);
    const bool context =
        std::any_of(together.begin(), together.end(), [](const Candidate* candidate) {
            return !candidate->tones();
        });
    return bytes + (plain ? plain_decoder : 0) + (runs ? runs_decoder : 0) +
           (context ? context_decoder : 0) + (plain_tones ? plain_tones_decoder : 0) +
           (context_tones ? context_tones_decoder : 0);
}

Bytes whole(const PackedFace& face) {
    return Bytes{size_of(face)};
}

}  // namespace

PackingChoices choose_packings(const std::vector<FaceToPack>& faces,
                               const std::vector<PictureToPack>& pictures) {
    std::vector<Candidate> candidates;
    for (const FaceToPack& face : faces)
        candidates.push_back({.face = &face});
    for (const PictureToPack& picture : pictures)
        candidates.push_back({.picture = &picture, .strips = strips_of(*picture.bitmap)});
    for (Candidate& candidate : candidates) {
        candidate.plain = candidate.packed(Packing::plain);
        candidate.runs = candidate.packed(Packing::runs);
    }
    const auto named = [](const Candidate* candidate) {
        return candidate->wish() == PackingWish::context;
    };

    // All that may be in `context`; then without those that gain nothing by it, until all gain.
    std::vector<Candidate*> together;
    for (Candidate& candidate : candidates)
        if (candidate.may(PackingWish::context)) together.push_back(&candidate);
    ContextTable table = pack_together(together);
    std::vector<PackingChoice> all;
    for (const Candidate& candidate : candidates)
        all.push_back({.face = {},
                       .plain = whole(candidate.plain),
                       .runs = whole(candidate.runs),
                       .context = whole(candidate.context)});
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
        all[i].face = in_context ? candidates[i].context : candidates[i].other();
        if (in_context) all[i].context = whole(candidates[i].context);
    }
    PackingChoices choices;
    if (!together.empty()) choices.contexts = table;
    choices.table_bytes = table_bytes(together);
    const auto first_picture = all.begin() + static_cast<std::ptrdiff_t>(faces.size());
    choices.pictures.assign(std::make_move_iterator(first_picture),
                            std::make_move_iterator(all.end()));
    all.erase(first_picture, all.end());
    choices.faces = std::move(all);
    return choices;
}

}  // namespace dialplate
