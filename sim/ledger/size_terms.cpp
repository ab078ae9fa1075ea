#include "sim/ledger/size_terms.hpp"

#include "sim/image/decoder_sizes.hpp"

#include <algorithm>
#include <cstddef>
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
            case Part::tones_plain:
            case Part::tones_context:
                return parts.has(Part::smooth) || parts.has(Part::picture);
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
    const auto count = [&parts](std::initializer_list<Part> group) {
        return std::count_if(
            group.begin(), group.end(), [&parts](Part part) { return parts.has(part); });
    };
    const auto any = [&count](std::initializer_list<Part> group) { return count(group) > 0; };
    const auto all = [&](std::initializer_list<Part> group) {
        engine(count(group) == static_cast<std::ptrdiff_t>(group.size()));
    };
    for (int i = 0; i < part_count; ++i)
        engine(has(static_cast<Part>(i)));

    const bool readout = has(Part::readout), box = has(Part::box), meter = has(Part::meter),
               scale = has(Part::scale), picture = has(Part::picture);
    const auto kinds = count({Part::readout, Part::box, Part::meter, Part::scale, Part::picture});
    for (const int least : {1, 2, 3})
        engine(kinds > least);
    // What keeps a state of what the glass shows.
    engine(readout || box || meter || scale);

    // How glyphs are told apart, and which decoders are linked.
    const auto bitmaps = count({Part::plain, Part::runs, Part::context});
    const bool tones = any({Part::tones_plain, Part::tones_context}), smooth = has(Part::smooth);
    const bool smooth_plain = smooth && has(Part::tones_plain),
               smooth_context = smooth && has(Part::tones_context);
    const bool in_context = has(Part::context) || smooth_context;
    const bool others = any({Part::plain, Part::runs}) || smooth_plain;
    const auto ways = bitmaps + count({Part::segment, Part::smooth});
    for (const int least : {0, 1, 2})
        engine(bitmaps > least);
    for (const int least : {0, 1, 2, 3})
        engine(ways > least);
    engine(in_context && others);
    engine(has(Part::segment) && (in_context || others));
    engine(has(Part::segment) && in_context);
    engine(has(Part::segment) && !in_context && !others);
    engine(tones);
    engine(smooth_plain && smooth_context);
    all({Part::tones_plain, Part::tones_context});
    all({Part::smooth, Part::plain});
    all({Part::smooth, Part::runs});
    all({Part::smooth, Part::context});
    engine(bitmaps == 0 && has(Part::tones_context));
    engine(has(Part::plain) || (picture && has(Part::runs)));  // rows of runs, sent

    // Some drivers decide glyphs in context themselves, unless they are enlarged.
    const bool decides =
        program.bus && sends_contexts(*program.bus, program.bytes_per_pixel) && has(Part::context);
    const bool blocks_of_context = has(Part::context) && (!decides || has(Part::enlarged));
    engine(blocks_of_context);
    engine(blocks_of_context || has(Part::tones_context));
    engine(decides && has(Part::enlarged));
    engine(decides && program.bus == BusKind::usart_spi);
    // A row is kept on the stack. What lies more than 63 bytes above its bottom takes further instructions.
    const int columns = program.context_columns;
    for (const int least : {10, 18, 26, 54, 58})
        engine(has(Part::tones_context) && columns > least);
    for (const int least : {54, 58})
        engine(blocks_of_context && columns > least);
    engine(blocks_of_context && has(Part::enlarged) && columns > 58);
    engine(decides && columns > 118);

    // Pictures, and what they share with glyphs: a function with one caller is put in its place.
    engine(picture && bitmaps > 0);
    engine(picture && bitmaps > 1);
    engine(picture && bitmaps > 2);
    all({Part::picture, Part::runs});
    all({Part::picture, Part::context});
    engine(picture && tones);
    all({Part::picture, Part::tones_plain});
    all({Part::picture, Part::tones_context});
    engine(picture && (tones || has(Part::changed_runs)));
    engine(picture && (bitmaps > 0 || (smooth && tones)));
    all({Part::picture, Part::enlarged});
    engine(picture && has(Part::enlarged) && tones);
    all({Part::picture, Part::readout});
    all({Part::picture, Part::readout, Part::enlarged});
    all({Part::picture, Part::box});
    all({Part::picture, Part::meter});

    // Changed runs have one way for bitmaps, which reads each packing, and one for segments.
    const bool changed_bitmaps = has(Part::changed_runs) && any({Part::plain, Part::runs});
    engine(changed_bitmaps);
    engine(changed_bitmaps && has(Part::segment));
    engine(changed_bitmaps && has(Part::plain));
    engine(changed_bitmaps && has(Part::plain) && has(Part::runs));
    engine(changed_bitmaps && has(Part::enlarged));
    all({Part::changed_runs, Part::tuning_digit});

    // Arithmetic and reading that several share.
    const bool sheet = program.touch_sheet;
    engine(readout || has(Part::tape));                          // digits of a number
    engine(sheet || meter || scale || has(Part::tuning_digit));  // division
    engine(scale || has(Part::tuning_digit));                    // with a sign
    engine(sheet || meter || has(Part::tape));                   // product of 32 bits
    engine(box || meter || scale);                               // numbers of 32 bits
    engine(meter && any({Part::touch, Part::peak}));             // going through the items

    // Who calls what besides.
    all({Part::readout, Part::box});
    all({Part::readout, Part::meter});
    all({Part::readout, Part::scale});
    engine(readout || scale);
    all({Part::readout, Part::tape});
    all({Part::readout, Part::scale, Part::tuning_digit});
    all({Part::readout, Part::segment});
    all({Part::readout, Part::enlarged});
    all({Part::enlarged, Part::context});
    all({Part::scale, Part::tuning_digit});
    all({Part::box, Part::meter});
    all({Part::box, Part::scale});
    engine(box || meter);
    all({Part::scale, Part::meter});
    all({Part::touch, Part::peak});
    all({Part::touch, Part::words, Part::pages});
    all({Part::pages, Part::peak});
    all({Part::peak, Part::blocks});
    all({Part::peak, Part::upright});
    all({Part::blocks, Part::upright});
    engine(has(Part::peak) && kinds > 1);
    engine(has(Part::tape) && kinds > 1);

    const auto driver = [&terms](bool holds) { terms.push_back({SizeRow::driver, holds}); };
    for (const BusKind kind :
         {BusKind::spi, BusKind::spi_timed, BusKind::usart_spi, BusKind::parallel8}) {
        driver(program.bus == kind);
        driver(program.bus == kind && program.bytes_per_pixel == 3);
    }
    terms.push_back({SizeRow::touch, sheet});
    return terms;
}

}  // namespace dialplate
