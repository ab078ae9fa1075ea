#include "sim/ledger/size_terms.hpp"

#include <initializer_list>

namespace dialplate {

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

std::vector<SizeTerm> size_terms(const DisplayProgram& program) {
    const PartSet parts = effective(program.parts);
    std::vector<SizeTerm> terms = {{SizeRow::engine, true}};
    const auto engine = [&terms](bool holds) { terms.push_back({SizeRow::engine, holds}); };
    const auto has = [&parts](Part part) { return parts.has(part); };
    const auto all = [&](std::initializer_list<Part> group) {
        bool every = true;
        for (const Part part : group) {
            every = every && has(part);
        }
        engine(every);
    };
    const auto more_than = [&](int least, std::initializer_list<Part> group) {
        int count = 0;
        for (const Part part : group) {
            count += has(part) ? 1 : 0;
        }
        engine(count > least);
    };
    for (int i = 0; i < part_count; ++i) {
        engine(has(static_cast<Part>(i)));
    }

    const auto kinds = {Part::readout, Part::box, Part::meter, Part::scale, Part::picture};
    more_than(0, kinds);
    more_than(1, kinds);
    more_than(2, kinds);
    const auto packings = {Part::plain,
                           Part::runs,
                           Part::segment,
                           Part::context,
                           Part::tones_plain,
                           Part::tones_context};
    more_than(1, packings);
    more_than(2, packings);
    const auto bitmaps = {Part::plain, Part::runs, Part::context};
    more_than(0, bitmaps);
    more_than(1, bitmaps);
    more_than(2, bitmaps);

    // Changed runs have one way for bitmaps, which reads each packing, and one for segments.
    const bool changed_bitmaps = has(Part::changed_runs) && (has(Part::plain) || has(Part::runs));
    engine(changed_bitmaps);
    engine(changed_bitmaps && has(Part::segment));
    all({Part::changed_runs, Part::segment});
    all({Part::changed_runs, Part::plain, Part::runs});
    all({Part::changed_runs, Part::enlarged});
    all({Part::changed_runs, Part::tuning_digit});
    all({Part::changed_runs, Part::sign});

    engine(has(Part::enlarged) && (has(Part::plain) || has(Part::runs) || has(Part::context)));
    all({Part::enlarged, Part::plain});
    all({Part::enlarged, Part::runs});
    all({Part::enlarged, Part::context});
    all({Part::enlarged, Part::segment});

    // Faces and pictures in tones, and pictures in one bit.
    const bool tones = has(Part::tones_plain) || has(Part::tones_context);
    engine(tones);
    engine(tones && has(Part::picture));
    all({Part::tones_plain, Part::tones_context});
    all({Part::plain, Part::tones_plain});
    all({Part::context, Part::tones_context});
    all({Part::context, Part::smooth});
    all({Part::smooth, Part::tones_plain});
    all({Part::smooth, Part::tones_context});
    all({Part::smooth, Part::tones_plain, Part::tones_context});
    all({Part::picture, Part::smooth});
    all({Part::picture, Part::tones_plain});
    all({Part::picture, Part::tones_context});
    all({Part::picture, Part::plain});
    all({Part::picture, Part::runs});
    all({Part::picture, Part::context});

    // Who calls the drawing of texts and numbers besides.
    all({Part::readout, Part::box});
    all({Part::readout, Part::meter});
    all({Part::readout, Part::scale});
    all({Part::readout, Part::scale, Part::tuning_digit});
    all({Part::readout, Part::segment});
    all({Part::readout, Part::enlarged});
    all({Part::box, Part::meter});
    all({Part::box, Part::scale});
    all({Part::box, Part::segment});
    all({Part::box, Part::enlarged});
    all({Part::scale, Part::meter});
    all({Part::scale, Part::segment});
    all({Part::scale, Part::enlarged});
    all({Part::tuning_digit, Part::sign});
    all({Part::touch, Part::words});
    all({Part::hold, Part::pages});
    all({Part::peak, Part::blocks});
    all({Part::peak, Part::upright});
    all({Part::blocks, Part::upright});

    const auto driver = [&terms](bool holds) { terms.push_back({SizeRow::driver, holds}); };
    for (const BusKind kind :
         {BusKind::spi, BusKind::spi_timed, BusKind::usart_spi, BusKind::parallel8}) {
        driver(program.bus == kind);
        driver(program.bus == kind && program.bytes_per_pixel == 3);
    }
    // With two bytes a pixel this driver decides glyphs in context itself, and some of the engine is not linked.
    const bool decides =
        program.bus == BusKind::spi_timed && program.bytes_per_pixel == 2 && has(Part::context);
    engine(decides);
    engine(decides && has(Part::enlarged));
    engine(decides && has(Part::tones_context));
    engine(decides && (has(Part::enlarged) || has(Part::tones_context)));
    engine(decides && has(Part::picture));
    engine(decides && (has(Part::plain) || has(Part::runs)));

    terms.push_back({SizeRow::touch, program.touch_sheet});
    terms.push_back({SizeRow::touch, program.touch_sheet && program.bus == BusKind::parallel8});
    return terms;
}

}  // namespace dialplate
