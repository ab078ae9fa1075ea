#include "sim/trial/result.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace dialplate {
namespace {

double mean(const std::vector<double>& all) {
    return std::accumulate(all.begin(), all.end(), 0.0) / static_cast<double>(all.size());
}

/// @pre At least two.
double deviation(const std::vector<double>& all) {
    const double middle = mean(all);
    double sum = 0.0;
    for (const double one : all)
        sum += (one - middle) * (one - middle);
    return std::sqrt(sum / static_cast<double>(all.size() - 1));
}

/// @pre At least one.
double median(std::vector<double> all) {
    std::sort(all.begin(), all.end());
    const std::size_t half = all.size() / 2;
    return all.size() % 2 == 1 ? all[half] : (all[half - 1] + all[half]) / 2.0;
}

TouchFigures figures_of(const std::vector<const TrialTouch*>& touches) {
    TouchFigures figures;
    std::vector<double> times, across, down;
    for (const TrialTouch* touch : touches) {
        ++(touch->hit ? figures.hits : figures.misses);
        if (touch->hit) times.push_back(touch->after.value);
        if (!touch->near) continue;
        across.push_back(touch->off_x.value);
        down.push_back(touch->off_y.value);
    }
    if (!times.empty()) figures.median_ms = median(times);
    figures.landings = static_cast<int>(across.size());
    if (across.empty()) return figures;
    figures.off_x_mm = mean(across);
    figures.off_y_mm = mean(down);
    if (across.size() < 2) return figures;
    figures.spread_x_mm = deviation(across);
    figures.spread_y_mm = deviation(down);
    return figures;
}

}  // namespace

std::optional<double> TouchFigures::sigma_mm() const {
    if (!spread_x_mm || !spread_y_mm) return std::nullopt;
    return std::sqrt((*spread_x_mm * *spread_x_mm + *spread_y_mm * *spread_y_mm) / 2.0);
}

TrialResult result_of(const Trial& trial) {
    TrialResult result;
    std::vector<const TrialTouch*> all;
    for (const TrialTouch& touch : trial.touches())
        all.push_back(&touch);
    result.all = figures_of(all);
    const Layout& layout = trial.layout();
    for (std::size_t page = 0; page < layout.pages.size(); ++page)
        for (const Item& item : layout.pages[page].items) {
            std::vector<const TrialTouch*> here;
            for (const TrialTouch* touch : all)
                if (touch->key == item.pointer) here.push_back(touch);
            if (here.empty()) continue;
            result.keys.push_back(
                {item.pointer, item.name, static_cast<int>(page), figures_of(here)});
        }
    return result;
}

}  // namespace dialplate
