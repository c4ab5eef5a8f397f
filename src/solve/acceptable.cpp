// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/acceptable.hpp"

#include <algorithm>

#include "nesting/bundle_of_layout.hpp"
#include "packing/polish.hpp"
#include "solve/covers.hpp"
#include "solve/overloads.hpp"
#include "tuckwright/footing.hpp"
#include "tuckwright/stacking.hpp"

namespace tuckwright {

bool acceptable(const Kit& kit, const nesting::Proposal& proposal)
{
    packing::Layout layout = proposal.layout;
    layout.count_anew();
    packing::PolishOptions options;
    options.limits = nesting::envelope_limits(kit);
    if (!packing::settle(layout, options)) { // the order is that of things which rest on one another
        layout = proposal.layout;
    }
    const Bundle bundle = nesting::bundle_of_layout(kit, *proposal.scene, layout);
    const std::vector<Footing> all = footings(bundle);
    return passes_covers(kit, bundle) && overloads(bundle).empty() &&
           std::all_of(all.begin(), all.end(), [](const Footing& footing) { return footing.carried; }) &&
           !stacking_order(bundle).steps.empty();
}

} // namespace tuckwright
