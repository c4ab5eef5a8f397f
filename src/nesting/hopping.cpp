// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/hopping.hpp"

#include "nesting/moves.hpp"
#include "packing/relaxation.hpp"
#include "packing/separation.hpp"

namespace tuckwright::nesting {

using namespace packing;

namespace {

/// Of three bodies, that which overlaps most.
int one_that_overlaps(const Layout& layout, Random& random)
{
    const Weights weights(layout.size());
    int chosen = 0;
    double most = -1;
    for (int draw = 0; draw < 3; ++draw) {
        const int body = static_cast<int>(random.below(layout.size()));
        if (const double overlap = layout.cost_at(body, layout.place(body), weights, 1e300); overlap > most) {
            most = overlap;
            chosen = body;
        }
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
