#include "sim/image/packing_in_time.hpp"

#include "sim/image/digit_time.hpp"

#include <algorithm>
#include <utility>

namespace dialplate {
namespace {

/// Whether the digits of a face change in time; also if it has none, or is not packed at all.
bool is_in_time(const PackingChoice& choice,
                std::optional<double> most_cycles,
                const PixelTimes& pixel,
                bool by_what_differs) {
    if (!most_cycles || choice.face.bytes.empty()) return true;
    const auto zero = std::find(choice.order.begin(), choice.order.end(), U'0');
    if (zero == choice.order.end()) return true;
    int count = 0;
    while (count < 10 && zero + count != choice.order.end() &&
           *(zero + count) == U'0' + static_cast<char32_t>(count)) {
        ++count;
    }
    const StoredDigits digits{
        choice.face.bytes, static_cast<int>(zero - choice.order.begin()), count};
    if (by_what_differs && !changed_runs_pay(digits)) return false;
    return median_change(digits, pixel, by_what_differs) <= *most_cycles;
}

}  // namespace

PackingChoices choose_packings_in_time(std::vector<FaceToPack> faces,
                                       const std::vector<std::optional<double>>& most_cycles,
                                       const PixelTimes& pixel,
                                       const PackingSurroundings& surroundings,
                                       const std::vector<PictureToPack>& pictures) {
    PackingChoices chosen = choose_packings(faces, surroundings, pictures);
    for (std::size_t i = 0; i < faces.size(); ++i) {
        if (faces[i].wish != PackingWish::automatic ||
            is_in_time(chosen.faces[i], most_cycles[i], pixel, false)) {
            continue;
        }
        // Changed runs take flash of their own: only where nothing else is fast enough.
        std::optional<std::pair<PackingWish, PackingChoices>> best;
        for (const bool by_what_differs : {false, true}) {
            if (best) break;
            for (const PackingWish wish :
                 {PackingWish::runs, PackingWish::context, PackingWish::plain}) {
                faces[i].wish = wish;
                PackingChoices trial = choose_packings(faces, surroundings, pictures);
                if (!trial.faces[i].face.bytes.empty() &&
                    is_in_time(trial.faces[i], most_cycles[i], pixel, by_what_differs) &&
                    (!best || trial.all_in.value < best->second.all_in.value)) {
                    best.emplace(wish, std::move(trial));
                }
            }
        }
        faces[i].wish = best ? best->first : PackingWish::automatic;
        if (best) chosen = std::move(best->second);
    }
    return chosen;
}

}  // namespace dialplate
