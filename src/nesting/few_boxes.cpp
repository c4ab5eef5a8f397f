// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/few_boxes.hpp"

#include <algorithm>

#include "nesting/kit_scene.hpp"
#include "packing/least_box.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::nesting {

namespace {

/// Whether an item is carried as its outside says and as nothing else.
bool keeps_its_shape(const Item& item)
{
    return item.forms.empty() && !item.sheet && !item.cloth && !item.pouch && !item.press && !item.closes &&
           !item.inside && item.parts.empty();
}

} // namespace

double bound_of_few_boxes_ml(const Kit& kit, double incumbent_ml, std::uint64_t work)
{
    require(incumbent_ml > 0, "an incumbent has a volume");
    std::size_t copies = 0;
    for (const Item& item : kit.items) {
        copies += static_cast<std::size_t>(item.count);
    }
    if (kit.bundle.shape != BundleShape::box || kit.bag || copies > packing::most_boxes ||
        !std::all_of(kit.items.begin(), kit.items.end(), keeps_its_shape)) {
        return 0;
    }
    const KitScene made = kit_scene(kit, {});
    packing::LeastBoxOptions options;
    options.limits = envelope_limits(kit);
    options.below = incumbent_ml * 1000;
    options.work = work;
    const packing::LeastBox least = packing::least_box(made.scene, options);
    return !least.proved ? 0 : std::min(incumbent_ml, least.volume / 1000);
}

} // namespace tuckwright::nesting
