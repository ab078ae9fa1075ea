#include "sim/ledger/draw_terms.hpp"

#include "ui/image_format.hpp"

#include <algorithm>
#include <iterator>

namespace dialplate {
namespace {

using work::Subject;

int face_byte(Subject subject, int byte) {
    const int kind = static_cast<int>(subject) - static_cast<int>(Subject::plain);
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
    {face_byte(Subject::segment, face::enlarged), Part::enlarged},
    {face_byte(Subject::plain, face::packing), Part::segment},
    {face_byte(Subject::runs, face::packing), Part::segment},
    {face_byte(Subject::segment, face::packing), Part::segment},
    {work::readout + readout::tuning, Part::tuning_digit},
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
    {work::runs_row, Part::plain, "row in runs beside plain"},
    {work::plain_row, Part::runs, "plain row beside runs"},
    {of(work::window, Subject::meter), Part::blocks, "part of a meter that may have blocks"},
    {work::meter + meter::over_from, Part::blocks, "paint of a meter that may have blocks"},
    {work::meter + meter::over_from, Part::peak, "paint of a meter that may have a peak"},
    {work::meter + meter::over_from, Part::upright, "paint of a meter that may be upright"},
    {work::meter + meter::value, Part::peak, "meter that may have a peak"},
    {work::scale + scale::value, Part::tape, "scale that may be a tape"},
};

}  // namespace

DrawTerms draw_terms(const EngineWork& work, PartSet parts) {
    DrawTerms terms{};
    std::copy(work.times.begin(), work.times.end(), terms.begin());
    for (const Condition& condition : conditions) {
        if (!parts.has(condition.part)) terms[static_cast<std::size_t>(condition.kind)] = 0.0;
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
    return term < work::kinds ? name_of_work(term) : slowed[term - work::kinds].name;
}

DriverTerms driver_terms(const EngineWork& work) {
    DriverTerms terms;
    for (int subject = 0; subject < work::subjects; ++subject) {
        const auto at = [&](int group) {
            return work.times[static_cast<std::size_t>(group + subject)];
        };
        terms.windows += at(work::window);
        terms.pushes += at(work::push);
        terms.empty_pushes += at(work::empty_push);
    }
    terms.pixels = work.times[work::pixel];
    terms.even_pixels = work.times[work::even_pixel];
    terms.even_pushes = work.times[work::even_push];
    return terms;
}

}  // namespace dialplate
