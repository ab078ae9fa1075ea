#include "sim/ledger/stack_paths.hpp"

#include "sim/image/decoder_sizes.hpp"

#include <algorithm>
#include <initializer_list>
#include <numeric>

namespace dialplate {
namespace {

/// What decodes a glyph or the strip of a picture.
struct Decoder {
    int history = 0;
    std::vector<int> terms;
};

class Paths {
public:
    explicit Paths(const DisplayProgram& program)
        : program_(program), parts_(effective(program.parts)) {}

    std::vector<StackPath> all() const {
        std::vector<StackPath> paths = {{0, below_service({stack_term::page})}};
        const std::vector<Decoder> faces = decoders(has(Part::smooth), program_.faces_in),
                                   pictures = decoders(true, program_.pictures_in);
        for (const auto& drawing : who_draws()) {
            for (const Decoder& decoder : faces)
                paths.push_back(path(drawing, decoder));
        }
        if (has(Part::picture)) {
            for (const Decoder& decoder : pictures)
                paths.push_back(path({stack_term::picture}, decoder));
        }
        for (const Decoder& decoder : changes())
            paths.push_back(path(
                with(stack_term::change, {{stack_term::change_with_mark, has(Part::tuning_digit)}}),
                decoder));
        return paths;
    }

private:
    struct If {
        int term;
        bool holds;
    };

    [[nodiscard]] bool has(Part part) const { return parts_.has(part); }

    static std::vector<int> with(int term, std::initializer_list<If> more) {
        std::vector<int> terms = {term};
        for (const If& one : more) {
            if (one.holds) terms.push_back(one.term);
        }
        return terms;
    }

    [[nodiscard]] std::vector<int> below_service(const std::vector<int>& more) const {
        std::vector<int> terms = with(stack_term::service,
                                      {{stack_term::beside_pictures, has(Part::picture)},
                                       {stack_term::beside_enlarged, has(Part::enlarged)}});
        terms.insert(terms.end(), more.begin(), more.end());
        return terms;
    }

    [[nodiscard]] StackPath path(const std::vector<int>& drawing, const Decoder& decoder) const {
        StackPath path{decoder.history, below_service(drawing)};
        path.terms.insert(path.terms.end(), decoder.terms.begin(), decoder.terms.end());
        return path;
    }

    [[nodiscard]] std::vector<std::vector<int>> who_draws() const {
        std::vector<std::vector<int>> drawing = {{stack_term::page}};
        if (has(Part::readout))
            drawing.push_back(with(stack_term::readout,
                                   {{stack_term::readout_with_mark, has(Part::tuning_digit)}}));
        if (has(Part::box)) drawing.push_back({stack_term::box});
        if (has(Part::scale))
            drawing.push_back(
                with(stack_term::scale, {{stack_term::scale_with_tape, has(Part::tape)}}));
        return drawing;
    }

    /// @param tones  Whether bitmaps of two bits a pixel are among what is decoded.
    /// @param in     Packings that it is in.
    [[nodiscard]] std::vector<Decoder> decoders(bool tones, PartSet in) const {
        const auto decodes = [&](Part packing) { return has(packing) && in.has(packing); };
        const bool smooth = has(Part::smooth);
        const int columns = program_.context_columns;
        std::vector<Decoder> all;
        if (decodes(Part::plain))
            all.push_back({0, with(stack_term::plain, {{stack_term::plain_beside_tones, smooth}})});
        if (decodes(Part::runs)) all.push_back({0, {stack_term::runs}});
        if (decodes(Part::segment)) all.push_back({0, {stack_term::segment}});
        const bool decides =
            program_.bus && sends_contexts(*program_.bus, program_.bytes_per_pixel);
        if (decodes(Part::context) && decides)
            all.push_back({columns,
                           with(stack_term::sent_context,
                                {{stack_term::sent_context_beside_tones, smooth}})});
        if (decodes(Part::context) && (!decides || has(Part::enlarged)))
            all.push_back(
                {columns,
                 with(stack_term::context,
                      {{stack_term::context_beside_tones, smooth},
                       {stack_term::context_beside_others,
                        has(Part::plain) || has(Part::runs) || has(Part::segment) || smooth},
                       {stack_term::context_beside_plain_tones, has(Part::tones_plain)}})});
        if (tones && decodes(Part::tones_plain)) all.push_back({0, {stack_term::plain_tones}});
        // A byte of each column for each of the two bits.
        if (tones && decodes(Part::tones_context))
            all.push_back(
                {2 * columns,
                 with(stack_term::context_tones,
                      {{stack_term::context_tones_beside_plain, has(Part::plain)},
                       {stack_term::context_tones_beside_changes, has(Part::changed_runs)}})});
        return all;
    }

    /// Of digits that become others by what differs.
    [[nodiscard]] std::vector<Decoder> changes() const {
        std::vector<Decoder> all;
        if (!has(Part::changed_runs)) return all;
        if (program_.changed_bitmaps && (has(Part::plain) || has(Part::runs)))
            all.push_back(
                {0,
                 with(stack_term::changed_bitmap,
                      {{stack_term::changed_bitmap_beside_segments, has(Part::segment)},
                       {stack_term::changed_plain, has(Part::plain)},
                       {stack_term::changed_bitmap_beside_pictures, has(Part::picture)},
                       {stack_term::changed_bitmap_own_bus, !program_.bus},
                       {stack_term::changed_bitmap_usart, program_.bus == BusKind::usart_spi}})});
        if (has(Part::segment)) all.push_back({0, {stack_term::changed_segments}});
        return all;
    }

    const DisplayProgram& program_;
    const PartSet parts_;
};

}  // namespace

std::vector<StackPath> stack_paths(const DisplayProgram& program) {
    return Paths(program).all();
}

double depth_of(const StackPath& path, const double* weights) {
    return std::accumulate(path.terms.begin(),
                           path.terms.end(),
                           static_cast<double>(path.history),
                           [weights](double sum, int term) { return sum + weights[term]; });
}

double deepest(const std::vector<StackPath>& paths, const double* weights) {
    double most = 0.0;
    for (const StackPath& path : paths)
        most = std::max(most, depth_of(path, weights));
    return most;
}

}  // namespace dialplate
