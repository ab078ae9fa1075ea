#include "sim/ledger/draw_terms.hpp"

namespace dialplate {

std::array<double, draw_term_count> draw_terms(const Update& update) {
    const EngineWork& work = update.work;
    return {static_cast<double>(update.sent.pixels - work.part_pixels),
            static_cast<double>(work.part_pixels),
            static_cast<double>(work.rows),
            static_cast<double>(work.parts),
            static_cast<double>(update.sent.windows),
            static_cast<double>(work.reads),
            static_cast<double>(work.decode_reads),
            1.0};
}

}  // namespace dialplate
