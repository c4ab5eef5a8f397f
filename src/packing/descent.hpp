// SPDX-License-Identifier: GPL-3.0-or-later
/// Descent to a local least of an energy of many variables.
#pragma once
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

namespace tuckwright::packing {

struct DescentOptions {
    int iterations = 20;
    double enough = 0;    ///< ends when the energy is no more than that
    double longest = 1;   ///< no variable changes by more in one step
    double slow = 0.98;   ///< a step that leaves more than this share of the energy gains next to nothing
    int patience = 3;     ///< so many of these in a row end it
};

/// The last few steps of a descent and what they did to the gradient.
/// Source: limited-memory quasi-Newton method, D. C. Liu and J. Nocedal, Mathematical Programming 45 (1989).
class StepHistory {
public:
    explicit StepHistory(std::size_t columns)
    {
        for (std::size_t k = 0; k < most; ++k) {
            steps_[k].resize(columns);
            changes_[k].resize(columns);
        }
    }

    bool empty() const { return count_ == 0; }
    void clear() { count_ = 0; }

    /// Writes the quasi-Newton direction against a gradient.
    void direction(const std::vector<double>& gradient, std::vector<double>& d) const
    {
        d = gradient;
        std::array<double, most> alpha{};
        for (std::size_t k = count_; k-- > 0;) {
            const std::size_t at = slot(k);
            alpha[k] = dot(steps_[at], d) / curvature_[at];
            add(d, -alpha[k], changes_[at]);
        }
        constexpr double first_scale = 0.25; // right for one overlap of two equal bodies
        const std::size_t last = slot(count_ + most - 1);
        const double scale =
            empty() ? first_scale : curvature_[last] / std::max(1e-300, dot(changes_[last], changes_[last]));
        for (double& value : d) {
            value *= scale;
        }
        for (std::size_t k = 0; k < count_; ++k) {
            const std::size_t at = slot(k);
            add(d, alpha[k] - dot(changes_[at], d) / curvature_[at], steps_[at]);
        }
        for (double& value : d) {
            value = -value;
        }
    }

    /// Takes the step from one point to the next, the oldest one giving way.
    void add_step(const std::vector<double>& from, const std::vector<double>& to, const std::vector<double>& gradient_from,
                  const std::vector<double>& gradient_to)
    {
        const std::size_t at = count_ == most ? first_ : slot(count_);
        std::vector<double>&step = steps_[at], &change = changes_[at];
        double curvature = 0, square = 0;
        for (std::size_t i = 0; i < step.size(); ++i) {
            const double s = to[i] - from[i], c = gradient_to[i] - gradient_from[i];
            curvature += s * c;
            square += c * c;
        }
        if (curvature <= 1e-12 * square) {
            return;
        }
        for (std::size_t i = 0; i < step.size(); ++i) {
            step[i] = to[i] - from[i];
            change[i] = gradient_to[i] - gradient_from[i];
        }
        curvature_[at] = curvature;
        if (count_ == most) {
            first_ = (first_ + 1) % most;
        } else {
            ++count_;
        }
    }

    static double dot(const std::vector<double>& a, const std::vector<double>& b)
    {
        double sum = 0;
        for (std::size_t k = 0; k < a.size(); ++k) {
            sum += a[k] * b[k];
        }
        return sum;
    }

private:
    static constexpr std::size_t most = 6;

    static void add(std::vector<double>& to, double factor, const std::vector<double>& what)
    {
        for (std::size_t i = 0; i < to.size(); ++i) {
            to[i] += factor * what[i];
        }
    }
    std::size_t slot(std::size_t k) const { return (first_ + k) % most; }

    std::array<std::vector<double>, most> steps_, changes_;
    std::array<double, most> curvature_{};
    std::size_t first_ = 0, count_ = 0;
};

/// Descends from `moved` to a local least of energy(variables, gradient), which returns its value and writes its slope.
/// Ensures: `moved` is there; returns the value, which is no larger than at first. The energy is asked once at least.
template <class Energy> class Descent {
public:
    Descent(Energy& energy, std::size_t columns)
        : energy_(energy), history_(columns), gradient_(columns), next_(columns), next_gradient_(columns), d_(columns)
    {
    }

    double run(std::vector<double>& moved, const DescentOptions& options)
    {
        history_.clear();
        value_ = energy_(moved, gradient_);
        for (int k = 0, slow = 0; k < options.iterations && value_ > options.enough && slow < options.patience; ++k) {
            const double before = value_;
            if (!step(moved, options.longest)) {
                if (history_.empty()) {
                    break;
                }
                history_.clear();
                continue;
            }
            slow = value_ > options.slow * before ? slow + 1 : 0;
        }
        return value_;
    }

private:
    /// One step along the quasi-Newton direction, shortened until it lowers the energy; false if it never does.
    bool step(std::vector<double>& moved, double longest_step)
    {
        history_.direction(gradient_, d_);
        if (StepHistory::dot(d_, gradient_) >= 0) {
            history_.clear();
            history_.direction(gradient_, d_);
        }
        const double slope = StepHistory::dot(d_, gradient_);
        double longest = 0;
        for (const double part : d_) {
            longest = std::max(longest, std::abs(part));
        }
        double share = std::min(1.0, longest_step / std::max(longest, 1e-300));
        for (const double shorter : {1.0, 0.4, 0.2, 0.2, 0.2}) {
            share *= shorter;
            for (std::size_t i = 0; i < next_.size(); ++i) {
                next_[i] = moved[i] + share * d_[i];
            }
            const double next_value = energy_(next_, next_gradient_);
            if (next_value < value_ + 1e-4 * share * slope) {
                history_.add_step(moved, next_, gradient_, next_gradient_);
                moved.swap(next_);
                gradient_.swap(next_gradient_);
                value_ = next_value;
                return true;
            }
        }
        return false;
    }

    Energy& energy_;
    StepHistory history_;
    std::vector<double> gradient_, next_, next_gradient_, d_;
    double value_ = 0;
};

} // namespace tuckwright::packing
