// Weights of a sum that come nearest to measured values.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

namespace dialplate {

/// sum of terms[i] * weight[i] should be `value`.
struct Equation {
    std::vector<double> terms;
    double value = 0.0;
};

/// Least squares by the normal equations, solved by elimination with pivots.
/// @param ridge  Added to the diagonal, relative to it, so that terms which never differ share a weight.
inline std::vector<double> least_squares(const std::vector<Equation>& equations, double ridge) {
    const std::size_t n = equations.front().terms.size();
    std::vector<std::vector<double>> a(n, std::vector<double>(n + 1, 0.0));
    for (const Equation& equation : equations) {
        for (std::size_t i = 0; i < n; ++i) {
            for (std::size_t j = 0; j < n; ++j) {
                a[i][j] += equation.terms[i] * equation.terms[j];
            }
            a[i][n] += equation.terms[i] * equation.value;
        }
    }
    for (std::size_t i = 0; i < n; ++i) {
        a[i][i] += a[i][i] * ridge + 1e-12;
    }
    for (std::size_t i = 0; i < n; ++i) {
        std::size_t pivot = i;
        for (std::size_t row = i + 1; row < n; ++row) {
            pivot = std::abs(a[row][i]) > std::abs(a[pivot][i]) ? row : pivot;
        }
        std::swap(a[i], a[pivot]);
        for (std::size_t row = 0; row < n; ++row) {
            if (row == i) {
                continue;
            }
            const double share = a[row][i] / a[i][i];
            for (std::size_t column = i; column <= n; ++column) {
                a[row][column] -= share * a[i][column];
            }
        }
    }
    std::vector<double> weights(n);
    for (std::size_t i = 0; i < n; ++i) {
        weights[i] = a[i][n] / a[i][i];
    }
    return weights;
}

}  // namespace dialplate
