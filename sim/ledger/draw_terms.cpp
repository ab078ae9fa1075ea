#include "sim/ledger/draw_terms.hpp"

#include "sim/image/decoder_sizes.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace dialplate {
namespace {

using work::Subject;

int face_byte(Subject subject, int byte) {
    const int kind = subject == Subject::plain         ? 0
                     : subject == Subject::runs        ? 1
                     : subject == Subject::context     ? 2
                     : subject == Subject::segment     ? 3
                     : subject == Subject::plain_tones ? 4
                                                       : 5;
    return work::face + kind * work::face_fields + byte;
}

int of(int group, Subject subject) {
    return group + static_cast<int>(subject);
}

/// Reads that an engine without a part leaves out.
struct Condition {
    int kind;
    Part part;
};
const Condition conditions[] = {
    {face_byte(Subject::plain, face::enlarged), Part::enlarged},
    {face_byte(Subject::runs, face::enlarged), Part::enlarged},
    {face_byte(Subject::context, face::enlarged), Part::enlarged},
    {face_byte(Subject::segment, face::enlarged), Part::enlarged},
    {face_byte(Subject::plain_tones, face::enlarged), Part::enlarged},
    {face_byte(Subject::context_tones, face::enlarged), Part::enlarged},
    {work::readout + readout::tuning, Part::tuning_digit},
    {work::readout + readout::thickness, Part::tuning_digit},
    {work::header + header::hold, Part::hold},
    {work::header + header::repeat_after, Part::hold},
    {work::header + header::repeat_every, Part::hold},
};

/// Work that a part makes slower.
struct Slowed {
    int kind;
    Part part;
    const char* name;
};
const Slowed slowed[slowed_terms] = {
    {of(work::row, Subject::box), Part::rounded, "row of a box that may be rounded"},
    {of(work::push, Subject::box), Part::rounded, "push for a box that may be rounded"},
    {work::sent_row, Part::enlarged, "row sent that may be enlarged"},
    {of(work::window, Subject::plain), Part::segment, "plain glyph beside segments"},
    {of(work::window, Subject::runs), Part::segment, "glyph in runs beside segments"},
    {of(work::window, Subject::runs), Part::plain, "glyph in runs beside plain"},
    {of(work::window, Subject::plain), Part::context, "plain glyph beside contexts"},
    {of(work::window, Subject::runs), Part::context, "glyph in runs beside contexts"},
    {work::runs_row, Part::plain, "row in runs beside plain"},
    {work::plain_row, Part::runs, "plain row beside runs"},
    {of(work::window, Subject::meter), Part::blocks, "part of a meter that may have blocks"},
    {work::meter + meter::over_from, Part::blocks, "paint of a meter that may have blocks"},
    {work::meter + meter::over_from, Part::peak, "paint of a meter that may have a peak"},
    {work::meter + meter::over_from, Part::upright, "paint of a meter that may be upright"},
    {work::meter + meter::value, Part::peak, "meter that may have a peak"},
    {work::meter + meter::from, Part::blocks, "place on a meter that may have blocks"},
    {work::meter + meter::from, Part::upright, "place on a meter that may be upright"},
    {work::readout + readout::cells, Part::sign, "cell of a readout that may have a sign"},
    {work::scale + scale::value, Part::tape, "scale that may be a tape"},
    {work::header + header::at_values, Part::meter, "value looked up beside meters"},
    {work::readout + readout::drop, Part::tuning_digit, "number that may have a marked digit"},
    {work::runs_low, Part::picture, "low bit of a run beside pictures"},
    {work::tones_pixel, Part::tones_context, "plain pixel in tones beside contexts in tones"},
};

bool sends_without_pushes(const DrawingEngine& engine, Subject subject) {
    switch (subject) {
        case Subject::context:
            return engine.sends_contexts;
        case Subject::segment:
        case Subject::changed_runs:
        case Subject::changed_segments:
            return engine.sends_rows;
        default:
            return false;
    }
}

}  // namespace

DrawingEngine engine_on(PartSet parts, BusKind bus, int bytes_per_pixel) {
    return {parts,
            sends_contexts(bus, bytes_per_pixel),
            bus == BusKind::spi_timed && bytes_per_pixel == 2};
}

DrawTerms draw_terms(const EngineWork& work, const DrawingEngine& engine) {
    const PartSet parts = engine.parts;
    DrawTerms terms{};
    std::copy(work.times.begin(), work.times.end(), terms.begin());
    for (const Condition& condition : conditions) {
        if (!parts.has(condition.part)) terms[static_cast<std::size_t>(condition.kind)] = 0.0;
    }
    // The packing is asked for once by each part that has one of its own.
    const double asked = (parts.has(Part::segment) ? 0.5 : 0.0) +
                         (parts.has(Part::context) ? 0.5 : 0.0) +
                         (parts.has(Part::smooth) ? 0.5 : 0.0);
    for (int packing = 0; packing < work::face_kinds; ++packing) {
        terms[static_cast<std::size_t>(work::face + packing * work::face_fields + face::packing)] *=
            asked;
    }
    // One way of deciding for all; or, where the driver sends at once, another for those that are enlarged.
    for (int i = 0; i < work::context_fields; ++i) {
        double& apart = terms[static_cast<std::size_t>(work::context + i)];
        double& large = terms[static_cast<std::size_t>(work::large_context + i)];
        if (engine.sends_contexts) {
            terms[static_cast<std::size_t>(sent_at_once + i)] = std::exchange(apart, 0.0);
        } else {
            apart += std::exchange(large, 0.0);
        }
    }
    for (int subject = 0; subject < work::subjects; ++subject) {
        if (!sends_without_pushes(engine, static_cast<Subject>(subject))) continue;
        terms[static_cast<std::size_t>(work::push + subject)] = 0.0;
        terms[static_cast<std::size_t>(work::empty_push + subject)] = 0.0;
    }
    // Bytes that count with another; what is the driver's.
    terms[work::nothing] = terms[work::pixel] = 0.0;
    terms[work::even_pixel] = terms[work::even_push] = 0.0;
    for (std::size_t i = 0; i < slowed_terms; ++i) {
        const bool is = parts.has(slowed[i].part);
        terms[work::kinds + i] = is ? work.times[static_cast<std::size_t>(slowed[i].kind)] : 0.0;
    }
    return terms;
}

std::string name_of_term(int term) {
    if (term >= sent_at_once) {
        return "decisions in context, sent at once, " + std::to_string(term - sent_at_once);
    }
    return term < work::kinds ? name_of_work(term) : slowed[term - work::kinds].name;
}

DriverTerms driver_terms(const EngineWork& work, const DrawingEngine& engine) {
    DriverTerms terms;
    for (int subject = 0; subject < work::subjects; ++subject) {
        const auto at = [&](int group) {
            return work.times[static_cast<std::size_t>(group + subject)];
        };
        terms.windows += at(work::window);
        if (sends_without_pushes(engine, static_cast<Subject>(subject))) continue;
        terms.pushes += at(work::push);
        terms.empty_pushes += at(work::empty_push);
    }
    if (engine.sends_contexts)
        terms.decided_pixels = work.times[work::context + work::columns_sent];
    terms.pixels = work.times[work::pixel];
    terms.even_pixels = work.times[work::even_pixel];
    terms.even_pushes = work.times[work::even_push];
    return terms;
}

}  // namespace dialplate
