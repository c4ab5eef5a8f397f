// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/bundle.hpp"

#include <algorithm>

#include "tuckwright/contract.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

const char* to_string(Status status)
{
    switch (status) {
    case Status::proved_best: return "proved-best";
    case Status::found: return "found";
    case Status::stopped: return "stopped";
    case Status::does_not_fit: return "does-not-fit";
    case Status::not_found: return "not-found";
    }
    require(false, "a status is one of the five");
    return "";
}

bool has_bundle(Status status)
{
    return status == Status::proved_best || status == Status::found || status == Status::stopped;
}

Shape outer_envelope(const Bundle& bundle)
{
    Shape outer = bundle.envelope;
    const double twice = bundle.bag ? 2 * bundle.bag->thickness : 0;
    if (auto* cylinder = std::get_if<Cylinder>(&outer)) {
        *cylinder = {snap(cylinder->diameter + twice), snap(cylinder->height + twice)};
    } else {
        auto& box = std::get<Box>(outer);
        box = {snap(box.length + twice), snap(box.width + twice), snap(box.height + twice)};
    }
    return outer;
}

double gap(const Bundle& bundle)
{
    require(has_bundle(bundle.status) && bundle.lower_bound_ml > 0, "a gap is between a bundle and a positive bound");
    return std::max(0.0, volume_ml(outer_envelope(bundle)) / bundle.lower_bound_ml - 1);
}

double total_weight_g(const Bundle& bundle)
{
    double total = 0;
    for (const auto& item : bundle.items) {
        total += item.weight_g + item.contents_g;
    }
    total += bundle.bag ? bundle.bag->weight_g : 0;
    for (const auto& band : bundle.bands) {
        total += band.weight_g;
    }
    return total;
}

Solid neck_of(const PlacedCavity& cavity)
{
    require(cavity.neck.has_value(), "the cavity has a narrow opening");
    const Matrix3 turn = rotation_matrix(cavity.pose.turn);
    const double up = (height_of(cavity.shape) + height_of(*cavity.neck)) / 2;
    const Vec3& at = cavity.pose.center;
    const Vec3 center{at.x + up * turn[0][2], at.y + up * turn[1][2], at.z + up * turn[2][2]};
    return {*cavity.neck, {{snap(center.x), snap(center.y), snap(center.z)}, cavity.pose.turn}};
}

std::string label(const Bundle& bundle, std::size_t item)
{
    require(item < bundle.items.size(), "an item's index is below the number of items");
    const auto& wanted = bundle.items[item];
    const auto copies = std::count_if(bundle.items.begin(), bundle.items.end(),
                                      [&](const auto& other) { return other.id == wanted.id; });
    return copies > 1 ? wanted.id + " " + std::to_string(wanted.copy) : wanted.id;
}

} // namespace tuckwright
