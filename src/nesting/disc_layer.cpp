// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/disc_layer.hpp"

#include <algorithm>

#include "packing/discs.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::nesting {

using namespace packing;

bool is_disc_layer(const Layout& layout)
{
    const std::vector<int>& bodies = layout.inside(outermost);
    double highest_foot = -1e300, lowest_top = 1e300;
    for (const int body : bodies) {
        const Form form = layout.place(body).form;
        if ((form != Form::standing && form != Form::upside_down) || !layout.stowed(body).plan_is_round) {
            return false;
        }
        for (const Piece& piece : layout.visible(body)) {
            highest_foot = std::max(highest_foot, piece.z - piece.half_height);
            lowest_top = std::min(lowest_top, piece.z + piece.half_height);
        }
    }
    return layout.envelope().round && bodies.size() > 1 && highest_foot < lowest_top;
}

bool rearrange_discs(Layout& layout, Random& random, const SqueezeOptions& options)
{
    require(is_disc_layer(layout), "round things stand side by side");
    const double air = PolishOptions{}.curved_gap / 2;
    const std::vector<int> bodies = layout.inside(outermost);
    std::vector<double> radii;
    for (const int body : bodies) {
        radii.push_back(plan_reach(layout.stowed(body), layout.place(body)) + air);
    }
    DiscEffort effort;
    effort.below = layout.envelope().radius;
    effort.work = options.work;
    effort.stop = options.stop;
    const DiscsFound found = discs_in_circle(radii, random, effort);
    layout.count_work(found.work);
    if (!found.places) {
        return false;
    }
    Envelope smaller = layout.envelope();
    smaller.radius = found.places->radius;
    layout.set_envelope(smaller);
    for (std::size_t k = 0; k < bodies.size(); ++k) {
        Place place = layout.place(bodies[k]);
        place.x = found.places->x[k];
        place.y = found.places->y[k];
        layout.put(bodies[k], place);
    }
    return true;
}

} // namespace tuckwright::nesting
