#include "sim/ledger/size_terms.hpp"

#include <cassert>

namespace dialplate {
namespace {

/// The first, one for each part, and the groups that are known to share or repeat code.
constexpr std::size_t expected_terms = 1 + part_count + 36;

}  // namespace

PartSet effective(PartSet parts) {
    const auto needs = [&parts](Part part) {
        switch (part) {
            case Part::tuning_digit:
            case Part::sign:
                return parts.has(Part::readout);
            case Part::rounded:
            case Part::words:
            case Part::touch:
                return parts.has(Part::box);
            case Part::hold:
            case Part::pages:
                return parts.has(Part::box) && parts.has(Part::touch);
            case Part::peak:
            case Part::blocks:
            case Part::upright:
                return parts.has(Part::meter);
            case Part::tape:
                return parts.has(Part::scale);
            case Part::changed_runs:
                return parts.has(Part::readout) &&
                       (parts.has(Part::plain) || parts.has(Part::runs) ||
                        parts.has(Part::segment));
            case Part::smooth:
                return parts.has(Part::tones_plain) || parts.has(Part::tones_context);
            default:
                return true;
        }
    };
    PartSet kept;
    for (int i = 0; i < part_count; ++i) {
        const auto part = static_cast<Part>(i);
        kept.add(part, parts.has(part) && needs(part));
    }
    return kept;
}

bool is_expected(std::size_t term) {
    return term < expected_terms;
}

std::vector<double> size_terms(PartSet all) {
    const PartSet parts = effective(all);
    std::vector<double> terms = {1.0};
    for (int i = 0; i < part_count; ++i) {
        terms.push_back(parts.has(static_cast<Part>(i)) ? 1.0 : 0.0);
    }
    const auto flag = [&terms](bool holds) { terms.push_back(holds ? 1.0 : 0.0); };
    const auto both = [&](Part a, Part b) { flag(parts.has(a) && parts.has(b)); };
    const int kinds = int{parts.has(Part::readout)} + int{parts.has(Part::box)} +
                      int{parts.has(Part::meter)} + int{parts.has(Part::scale)} +
                      int{parts.has(Part::picture)};
    const int packings = int{parts.has(Part::plain)} + int{parts.has(Part::runs)} +
                         int{parts.has(Part::segment)} + int{parts.has(Part::context)} +
                         int{parts.has(Part::tones_plain)} + int{parts.has(Part::tones_context)};
    flag(kinds > 0);
    flag(kinds > 1);
    flag(kinds > 2);
    flag(packings > 1);
    flag(packings > 2);
    both(Part::picture, Part::plain);
    both(Part::picture, Part::runs);
    both(Part::picture, Part::segment);
    both(Part::enlarged, Part::plain);
    both(Part::enlarged, Part::runs);
    both(Part::enlarged, Part::segment);
    both(Part::enlarged, Part::picture);
    both(Part::readout, Part::segment);
    both(Part::readout, Part::enlarged);
    both(Part::readout, Part::scale);
    both(Part::readout, Part::meter);
    both(Part::readout, Part::box);
    both(Part::scale, Part::segment);
    both(Part::scale, Part::enlarged);
    both(Part::scale, Part::meter);
    both(Part::scale, Part::box);
    both(Part::meter, Part::box);
    both(Part::box, Part::segment);
    both(Part::box, Part::enlarged);
    both(Part::tuning_digit, Part::sign);
    both(Part::touch, Part::words);
    both(Part::hold, Part::pages);
    both(Part::peak, Part::blocks);
    both(Part::peak, Part::upright);
    both(Part::blocks, Part::upright);
    both(Part::context, Part::tones_context);
    both(Part::plain, Part::tones_plain);
    both(Part::picture, Part::tones_plain);
    both(Part::picture, Part::tones_context);
    // One way of changing for bitmaps, one for segments.
    both(Part::changed_runs, Part::segment);
    flag(parts.has(Part::changed_runs) && (parts.has(Part::plain) || parts.has(Part::runs)));
    assert(terms.size() == expected_terms);
    for (int i = 0; i < part_count; ++i) {
        for (int j = i + 1; j < part_count; ++j) {
            both(static_cast<Part>(i), static_cast<Part>(j));
        }
    }
    return terms;
}

}  // namespace dialplate
