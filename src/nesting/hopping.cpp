// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/hopping.hpp"

#include <vector>

#include "nesting/moves.hpp"
#include "packing/relaxation.hpp"
#include "packing/separation.hpp"

namespace tuckwright::nesting {

using namespace packing;

namespace {

/// The overlap of each body with others and walls.
std::vector<double> overlaps(const Layout& layout)
{
    const int n = static_cast<int>(layout.size());
    std::vector<double> sums;
    const Weights weights(layout.size());
    for (int body = 0; body < n; ++body) {
        sums.push_back(layout.cost_at(body, layout.place(body), weights, 1e300));
    }
    return sums;
}

/// One of a few bodies, that which overlaps most.
int one_that_overlaps(const Layout& layout, Random& random)
{
    const std::vector<double> sums = overlaps(layout);
    int chosen = static_cast<int>(random.below(layout.size()));
    for (int draw = 0; draw < 2; ++draw) {
        const int other = static_cast<int>(random.below(layout.size()));
        chosen = sums[at(other)] > sums[at(chosen)] ? other : chosen;
    }
    return chosen;
}

} // namespace

bool hop(Layout& layout, Random& random, const HopEffort& effort)
{
    const double none = negligible_overlap(layout.scene());
    const Weights weights(layout.size());
    relax(layout, weights, effort.relaxing);
    double least = layout.total_overlap();
    for (int quiet = 0; quiet < effort.patience && least > none && !(effort.stop && effort.stop()); ++quiet) {
        Layout trial = layout;
        if (random.chance(0.5)) {
            swap(trial, random);
        } else {
            rehouse(trial, one_that_overlaps(trial, random), random);
        }
        relax(trial, weights, effort.relaxing);
        if (const double overlap = trial.total_overlap(); overlap < least * (1 - 1e-6)) {
            least = overlap;
            layout = trial;
            quiet = -1;
        }
    }
    return least <= none;
}

} // namespace tuckwright::nesting
