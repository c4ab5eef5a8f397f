// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/overloads.hpp"

#include <utility>

#include "tuckwright/handling.hpp"

namespace tuckwright {

std::vector<Overload> overloads(const Bundle& bundle)
{
    std::vector<Overload> found;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        const PlacedItem& it = bundle.items[item];
        if (!it.nothing_on_top && !it.bears_g) {
            continue;
        }
        std::vector<std::size_t> load = load_on(bundle, item);
        if (!bears_its_load(bundle, item, load)) {
            found.push_back({item, std::move(load)});
        }
    }
    return found;
}

} // namespace tuckwright
