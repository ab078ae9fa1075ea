#include "sim/desk/resample.hpp"

#include "sim/look/linear_light.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace dialplate {
namespace {

/// The pixels of a picture that one of the screen covers, in one direction.
struct Covered {
    int first = 0;
    std::vector<float> shares;  ///< Their sum is 1.
};

/// For pixels `begin` to `end` of `to`, which stand for `from` pixels in all.
std::vector<Covered> covered_by(int begin, int end, int to, int from) {
    std::vector<Covered> all;
    const double step = static_cast<double>(from) / to;
    for (int at = begin; at < end; ++at) {
        const double low = at * step, high = std::min((at + 1) * step, static_cast<double>(from));
        Covered covered{std::min(static_cast<int>(low), from - 1), {}};
        const int last = std::max(static_cast<int>(std::ceil(high - 1e-9)) - 1, covered.first);
        for (int pixel = covered.first; pixel <= std::min(last, from - 1); ++pixel) {
            const double share =
                (std::min(high, pixel + 1.0) - std::max(low, static_cast<double>(pixel))) / step;
            covered.shares.push_back(static_cast<float>(share));
        }
        all.push_back(std::move(covered));
    }
    return all;
}

}  // namespace

void draw_resampled(Canvas& canvas, const Area& over, const Rgb888& picture, const Area& part) {
    const Area seen = common_part(common_part(over, part), canvas.all());
    if (seen.empty()) return;
    const LightTables& tables = light_tables();
    const std::vector<Covered> columns =
        covered_by(seen.x - over.x, seen.right() - over.x, over.width, picture.width);
    const std::vector<Covered> rows =
        covered_by(seen.y - over.y, seen.bottom() - over.y, over.height, picture.height);
    for (int y = 0; y < seen.height; ++y) {
        const Covered& down = rows[static_cast<std::size_t>(y)];
        for (int x = 0; x < seen.width; ++x) {
            const Covered& across = columns[static_cast<std::size_t>(x)];
            Light sum;
            for (std::size_t j = 0; j < down.shares.size(); ++j)
                for (std::size_t i = 0; i < across.shares.size(); ++i) {
                    const Light light = tables.light(picture.at(across.first + static_cast<int>(i),
                                                                down.first + static_cast<int>(j)));
                    const float share = down.shares[j] * across.shares[i];
                    sum.red += share * light.red;
                    sum.green += share * light.green;
                    sum.blue += share * light.blue;
                }
            canvas.set(seen.x + x, seen.y + y, tables.rgb888(sum));
        }
    }
}

}  // namespace dialplate
