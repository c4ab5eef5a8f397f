// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Starting with an item, its lid and what it holds, everything that a small drop would press into one of these is
// added, with all that hangs on it, and then what would be pressed into that. Weights count in full, though some of them
// may rest on a neighbour: so the load is never told too small.
#include <algorithm>
#include <functional>

#include "stacking/hanging.hpp"
#include "stacking/plane_search.hpp"
#include "tuckwright/handling.hpp"
#include "tuckwright/tolerance.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

using stacking::Hanging;

constexpr double same_weight = 1 + 1e-12;

bool is_limited(const PlacedItem& item) { return item.nothing_on_top || item.bears_g.has_value(); }

/// Called for each pair that was looked at, and found not to press on each other only by a plane of its own.
using Seen = std::function<void(const SeparatingPlane&)>;

class Loads {
public:
    Loads(const Bundle& bundle, Seen seen) : bundle_(bundle), hanging_(bundle), seen_(std::move(seen)) {}

    std::vector<std::size_t> on(std::size_t item) const
    {
        const std::size_t base = hanging_.unit(item), count = bundle_.items.size();
        std::vector<bool> loaded(count, false);
        std::vector<std::size_t> open;
        for (std::size_t own = 0; own < count; ++own) {
            if (hanging_.on(own, base)) {
                open.push_back(own);
            }
        }
        const std::size_t first = open.size();
        for (std::size_t k = 0; k < open.size(); ++k) {
            for (std::size_t upper = 0; upper < count; ++upper) {
                const std::size_t unit = hanging_.unit(upper);
                if (loaded[upper] || hanging_.on(upper, base) || hanging_.on(base, unit) ||
                    hanging_.on(open[k], unit) || hanging_.on(upper, hanging_.unit(open[k])) ||
                    !presses(upper, open[k])) {
                    continue;
                }
                for (std::size_t with = 0; with < count; ++with) {
                    if (hanging_.on(with, unit) && !loaded[with]) {
                        loaded[with] = true;
                        open.push_back(with);
                    }
                }
            }
        }
        open.erase(open.begin(), open.begin() + static_cast<std::ptrdiff_t>(first));
        std::sort(open.begin(), open.end());
        return open;
    }

private:
    bool presses(std::size_t upper, std::size_t lower) const
    {
        const auto &falling = bundle_.items[upper].solids, &standing = bundle_.items[lower].solids;
        bool any = false;
        for (std::size_t i = 0; i < falling.size(); ++i) {
            Solid lowered = falling[i];
            lowered.pose.center.z = snap(lowered.pose.center.z - tolerance::rest_drop);
            for (std::size_t j = 0; j < standing.size(); ++j) {
                const auto pair = stacking::parted(lowered, standing[j]);
                any = any || !pair.proved;
                if (pair.normal && seen_) {
                    seen_({upper, i, lower, j, *pair.normal});
                }
            }
        }
        return any;
    }

    const Bundle& bundle_;
    Hanging hanging_;
    Seen seen_;
};

} // namespace

std::vector<std::size_t> load_on(const Bundle& bundle, std::size_t item) { return Loads(bundle, {}).on(item); }

double weight_of(const Bundle& bundle, const std::vector<std::size_t>& items)
{
    double grams = 0;
    for (const std::size_t item : items) {
        grams += bundle.items[item].weight_g + bundle.items[item].contents_g;
    }
    return grams;
}

bool bears_its_load(const Bundle& bundle, std::size_t item, const std::vector<std::size_t>& load)
{
    const PlacedItem& it = bundle.items[item];
    return (!it.nothing_on_top || load.empty()) &&
           (!it.bears_g || weight_of(bundle, load) <= *it.bears_g * same_weight);
}

std::vector<SeparatingPlane> load_planes(const Bundle& bundle)
{
    std::vector<SeparatingPlane> planes;
    const Loads loads(bundle, [&](const SeparatingPlane& plane) { planes.push_back(plane); });
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        if (is_limited(bundle.items[item])) {
            loads.on(item);
        }
    }
    return planes;
}

} // namespace tuckwright
