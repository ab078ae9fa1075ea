// Weights of a sum that come nearest to measured values.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace dialplate {

/// Least squares by coordinate descent on the normal equations, some weights held above 0.
class LeastSquares {
public:
    /// @param may_be_negative  For each weight.
    explicit LeastSquares(std::vector<bool> may_be_negative)
        : free_(std::move(may_be_negative)),
          products_(free_.size() * free_.size()),
          sums_(free_.size()) {}

    /// sum of factor * weight[term] should be `value`.
    /// @param importance  Of an error of 1, squared; > 0.
    void add(const std::vector<std::pair<int, double>>& terms, double value, double importance) {
        for (const auto& [i, a] : terms) {
            for (const auto& [j, b] : terms) {
                products_[at(i, j)] += importance * a * b;
            }
            sums_[static_cast<std::size_t>(i)] += importance * a * value;
        }
    }

    /// @param ridge  Added to the diagonal, relative to it, so that terms which always occur together share.
    [[nodiscard]] std::vector<double> solve(double ridge, int sweeps = 3000) const {
        return solve(ridge, std::vector<double>(free_.size()), sweeps);
    }
    /// @param doubt  For each term: what is added to its diagonal besides. An expected error of one equation
    ///               over the expected size of the weight, both squared.
    [[nodiscard]] std::vector<double> solve(double ridge,
                                            const std::vector<double>& doubt,
                                            int sweeps) const {
        const int n = static_cast<int>(free_.size());
        std::vector<double> weights(free_.size());
        std::vector<double> left = sums_;  // what the weights do not yet explain
        for (int sweep = 0; sweep < sweeps; ++sweep) {
            for (int i = 0; i < n; ++i) {
                const auto place = static_cast<std::size_t>(i);
                const double own = products_[at(i, i)];
                if (own == 0.0) continue;
                const double now = weights[place];
                double next = (left[place] + own * now) / (own * (1.0 + ridge) + doubt[place]);
                if (!free_[place]) next = std::max(0.0, next);
                const double step = next - now;
                if (step == 0.0) continue;
                weights[place] = next;
                for (int j = 0; j < n; ++j) {
                    left[static_cast<std::size_t>(j)] -= products_[at(i, j)] * step;
                }
            }
        }
        return weights;
    }

private:
    [[nodiscard]] std::size_t at(int i, int j) const {
        return static_cast<std::size_t>(i) * free_.size() + static_cast<std::size_t>(j);
    }

    std::vector<bool> free_;
    std::vector<double> products_;
    std::vector<double> sums_;
};

}  // namespace dialplate
