// SPDX-License-Identifier: GPL-3.0-or-later
// Which vessels can be filled, and which is meant where none is named.
#include <algorithm>

#include "tuckwright/fill.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright {

std::string usual_vessel(const Kit& kit)
{
    std::string id;
    double most = 0;
    for (const Item& item : kit.items) {
        const double room = item.inside ? volume_ml(item.inside->shape) : 0;
        if (room > most && problems_of_vessel(kit, item.id).empty()) {
            most = room;
            id = item.id;
        }
    }
    return id;
}

std::vector<Problem> problems_of_vessel(const Kit& kit, const std::string& vessel)
{
    const auto found =
        std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& item) { return item.id == vessel; });
    const auto problem = [&](const std::string& what, const std::string& remedy) {
        return std::vector<Problem>{{"", 0, 0, what, remedy}};
    };
    if (found == kit.items.end()) {
        return problem("the kit has no item '" + vessel + "' to fill", "name one of its vessels by its id");
    }
    if (found->pouch) {
        return problem("'" + vessel + "' is a pouch, which takes on the shape of what is in it",
                       "name a vessel with firm walls");
    }
    if (!found->inside) {
        return problem("'" + vessel + "' has no inside to fill", "name a vessel");
    }
    if (found->inside->opens == Opening::both) {
        return problem("'" + vessel + "' is open at both ends, so that it holds nothing by itself",
                       "name a vessel with a floor");
    }
    if (found->is_full()) {
        return problem("'" + vessel + "' is filled by its contents", "name another vessel, or take its contents out");
    }
    return {};
}

} // namespace tuckwright
