// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/acceptable.hpp"

#include <algorithm>

#include "nesting/bundle_of_layout.hpp"
#include "packing/polish.hpp"
#include "solve/covers.hpp"
#include "tuckwright/footing.hpp"
#include "tuckwright/handling.hpp"
#include "tuckwright/stacking.hpp"

namespace tuckwright {

std::vector<TooMuch> overloaded(const Bundle& bundle)
{
    std::vector<TooMuch> found;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        const PlacedItem& it = bundle.items[item];
        if (!it.nothing_on_top && !it.bears_g) {
            continue;
        }
        const std::vector<std::size_t> load = load_on(bundle, item);
        if (!bears_its_load(bundle, item, load)) {
            found.push_back({it.id, bundle.items[load.front()].id});
        }
    }
    return found;
}

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
    return passes_covers(kit, bundle) && overloaded(bundle).empty() &&
           std::all_of(all.begin(), all.end(), [](const Footing& footing) { return footing.carried; }) &&
           !stacking_order(bundle).steps.empty();
}

} // namespace tuckwright
