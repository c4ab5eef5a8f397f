// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/coaxial_twin.hpp"

#include <algorithm>
#include <limits>
#include <numbers>

namespace twin {

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double rounding = 1e-9; // mm

/// One choice of a holder for each tin: an index, or its own for "directly in the bundle".
using Holders = std::vector<std::size_t>;

bool is_forest(const Holders& holders)
{
    for (std::size_t k = 0; k < holders.size(); ++k) {
        std::size_t at = k;
        for (std::size_t step = 0; holders[at] != at; ++step) {
            if (step > holders.size()) {
                return false;
            }
            at = holders[at];
        }
    }
    return true;
}

class Forest {
public:
    Forest(const std::vector<Tin>& tins, const Holders& holders, double clearance)
        : tins_(tins), holders_(holders), clearance_(clearance)
    {
    }

    /// Height of a tin with all that it holds, stacked on one axis; infinite where something does not fit. On one
    /// axis everything stands on the highest point of what is below, so the order does not matter.
    double height(std::size_t tin) const
    {
        const Tin& vessel = tins_[tin];
        double stack = 0;
        for (std::size_t child = 0; child < tins_.size(); ++child) {
            if (child == tin || holders_[child] != tin) {
                continue;
            }
            if (tins_[child].diameter + 2 * clearance_ > vessel.cavity + rounding) {
                return infinite;
            }
            if (!vessel.shut && stack >= vessel.height - vessel.floor) {
                return infinite; // above the rim it would not be in the vessel
            }
            stack += height(child);
        }
        if (vessel.shut) {
            return stack > vessel.depth + rounding ? infinite : vessel.height;
        }
        return std::max(vessel.height, vessel.floor + stack);
    }

    /// The smallest envelope over all ways to part the outermost tins into two stacks (one of them maybe empty).
    double least_volume() const
    {
        std::vector<std::size_t> roots;
        for (std::size_t k = 0; k < tins_.size(); ++k) {
            if (holders_[k] == k) {
                roots.push_back(k);
            }
        }
        double best = infinite;
        for (unsigned part = 0; part < 1u << (roots.size() - 1); ++part) {
            double width[2] = {0, 0}, high[2] = {0, 0};
            for (std::size_t k = 0; k < roots.size(); ++k) {
                const unsigned stack = part >> k & 1u;
                width[stack] = std::max(width[stack], tins_[roots[k]].diameter);
                high[stack] += height(roots[k]);
            }
            const double diameter = width[0] + width[1];
            best = std::min(best, std::numbers::pi / 4 * diameter * diameter * std::max(high[0], high[1]) / 1000);
        }
        return best;
    }

private:
    const std::vector<Tin>& tins_;
    const Holders& holders_;
    double clearance_;
};

} // namespace

double least_volume_ml(const std::vector<Tin>& tins, double clearance)
{
    const std::size_t n = tins.size();
    Holders holders(n, 0);
    double best = infinite;
    for (;;) {
        if (is_forest(holders)) {
            best = std::min(best, Forest(tins, holders, clearance).least_volume());
        }
        std::size_t digit = 0;
        while (digit < n && ++holders[digit] == n) {
            holders[digit++] = 0;
        }
        if (digit == n) {
            return best;
        }
    }
}

} // namespace twin
