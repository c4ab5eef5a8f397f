// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/least_volume.hpp"

#include <algorithm>
#include <numeric>

#include "nesting/branch_and_bound.hpp"
#include "nesting/few_boxes.hpp"
#include "nesting/lower_bound.hpp"

namespace tuckwright {

int things_of(const Kit& kit)
{
    return std::accumulate(kit.items.begin(), kit.items.end(), 0,
                           [](int sum, const Item& item) { return sum + item.count; });
}

LeastVolume::LeastVolume(const Kit& kit) : kit_(kit), ml_(nesting::lower_bound_ml(kit)), things_(things_of(kit)) {}

void LeastVolume::raise(double volume_ml, std::uint64_t work)
{
    constexpr std::uint64_t pairs_for_a_set = 10; // in the time that the other takes
    if (!is_met_by(volume_ml)) {
        ml_ = std::max(ml_, nesting::bound_of_few_boxes_ml(kit_, volume_ml, pairs_for_a_set * work));
    }
    if (!is_met_by(volume_ml)) {
        ml_ = std::max(ml_, nesting::bound_along_axes_ml(kit_, volume_ml, work));
    }
}

bool LeastVolume::is_soon_met_by(double volume_ml)
{
    constexpr int few = 12;
    constexpr std::uint64_t quick = 250'000;
    if (things_ <= few && volume_ml < tried_) {
        tried_ = volume_ml;
        raise(volume_ml, quick);
    }
    return is_met_by(volume_ml);
}

} // namespace tuckwright
