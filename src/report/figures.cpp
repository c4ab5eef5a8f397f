// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/figures.hpp"

#include "tuckwright/contract.hpp"

namespace tuckwright::report
{

Weights weights_of(const Bundle& bundle)
{
    Weights weights;
    for (const auto& item : bundle.items) {
        weights.empty += item.weight_g;
        weights.contents += item.contents_g;
    }
    weights.empty += bundle.bag ? bundle.bag->weight_g : 0;
    for (const auto& band : bundle.bands) {
        weights.empty += band.weight_g;
    }
    weights.total = total_weight_g(bundle);
    return weights;
}

double outsides_ml(const Bundle& bundle)
{
    double sum = 0;
    for (const auto& item : bundle.items) {
        for (const auto& solid : item.solids) {
            sum += volume_ml(solid.shape);
        }
    }
    return sum;
}

std::optional<double> gap_of(const Bundle& bundle)
{
    if (!has_bundle(bundle.status) || !(bundle.lower_bound_ml > 0)) {
        return std::nullopt;
    }
    return gap(bundle);
}

std::string into_of(const Bundle& bundle, std::size_t item)
{
    require(item < bundle.items.size(), "a step's item is one of the bundle's");
    const auto& moved = bundle.items[item];
    if (moved.closes) {
        return label(bundle, *moved.closes);
    }
    return moved.in ? label(bundle, moved.in->item) : "bundle";
}

} // namespace tuckwright::report
