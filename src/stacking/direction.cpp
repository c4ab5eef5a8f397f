// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/direction.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/whole_numbers.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::stacking {

namespace {

using whole::in_lowest_terms;
using whole::magnitude;
using whole::Wide;

constexpr double ways_out = 4; ///< how many times the bundle's size an item is drawn

Direction axis_of_cavity(const PlacedCavity& cavity)
{
    const auto axis = exact_axis(cavity.pose.turn, 2);
    require(axis.has_value(), "a cavity's axis has whole numbers below 2^62");
    return *axis;
}

void add_once(std::vector<Direction>& list, const Direction& direction)
{
    if (std::find(list.begin(), list.end(), direction) == list.end()) {
        list.push_back(direction);
    }
}

/// Level ways into the bundle: along the world's axes, between them, and along the item's own axes.
void add_ways_round(std::vector<Direction>& ways, const PlacedItem& item)
{
    for (const Direction& level :
         {Direction{1, 0, 0}, Direction{-1, 0, 0}, Direction{0, 1, 0}, Direction{0, -1, 0}, Direction{1, 1, 0},
          Direction{-1, 1, 0}, Direction{1, -1, 0}, Direction{-1, -1, 0}}) {
        add_once(ways, level);
    }
    for (const Solid& solid : item.solids) {
        for (std::size_t k = 0; k < 3; ++k) {
            const auto axis = exact_axis(solid.pose.turn, k);
            for (const int sign : {1, -1}) {
                if (axis && sign * (*axis)[2] <= 0) {
                    add_once(ways, sign > 0 ? *axis : opposite(*axis));
                }
            }
        }
    }
}

} // namespace

std::optional<Direction> exact_axis(const Quaternion& turn, std::size_t axis)
{
    for (const Wide part : {Wide{turn.w}, Wide{turn.x}, Wide{turn.y}, Wide{turn.z}}) {
        if (magnitude(part) >= whole::limit) {
            return std::nullopt;
        }
    }
    const Wide w = turn.w, x = turn.x, y = turn.y, z = turn.z;
    std::array<Wide, 3> image{};
    switch (axis) {
    case 0: image = {w * w + x * x - y * y - z * z, 2 * (x * y + w * z), 2 * (x * z - w * y)}; break;
    case 1: image = {2 * (x * y - w * z), w * w - x * x + y * y - z * z, 2 * (y * z + w * x)}; break;
    default: image = {2 * (x * z + w * y), 2 * (y * z - w * x), w * w - x * x - y * y + z * z}; break;
    }
    return in_lowest_terms(image);
}

std::optional<Direction> part_across(const Direction& direction, const Direction& axis)
{
    const Wide small = Wide{1} << 40;
    Wide along = 0, square = 0;
    for (std::size_t k = 0; k < 3; ++k) {
        if (magnitude(direction[k]) >= small || magnitude(axis[k]) >= small) {
            return std::nullopt;
        }
        along += Wide{direction[k]} * axis[k];
        square += Wide{axis[k]} * axis[k];
    }
    std::array<Wide, 3> rest{};
    for (std::size_t k = 0; k < 3; ++k) {
        rest[k] = direction[k] * square - along * axis[k];
    }
    return rest == std::array<Wide, 3>{} ? std::nullopt : in_lowest_terms(rest);
}

Direction opposite(const Direction& direction) { return {-direction[0], -direction[1], -direction[2]}; }

Vec3 to_vector(const Direction& direction)
{
    return {static_cast<double>(direction[0]), static_cast<double>(direction[1]), static_cast<double>(direction[2])};
}

int sign_of_dot(const Direction& a, const Direction& b)
{
    const Wide sum = Wide{a[0]} * b[0] + Wide{a[1]} * b[1] + Wide{a[2]} * b[2];
    return sum < 0 ? -1 : sum > 0 ? 1 : 0;
}

std::vector<Direction> ways_in(const Bundle& bundle, std::size_t item, bool ways_round)
{
    const PlacedItem& it = bundle.items[item];
    if (it.closes) {
        const PlacedItem& vessel = bundle.items[*it.closes];
        require(!vessel.cavities.empty(), "a lid closes an item with a cavity");
        return {opposite(axis_of_cavity(vessel.cavities.front()))};
    }
    if (it.in) {
        const PlacedItem& holder = bundle.items[it.in->item];
        require(it.in->cavity < holder.cavities.size(), "a container's cavity is one of its own");
        const PlacedCavity& cavity = holder.cavities[it.in->cavity];
        const Direction axis = axis_of_cavity(cavity);
        // Up a sleeve is never needed: one item bars another's way up just where the other bars its way down, so that
        // a circle of items that bar each other is the same both ways. Down it goes, whichever way up it stands.
        if (cavity.opens == Opening::both && axis[2] < 0) {
            return {axis};
        }
        return {opposite(axis)};
    }
    std::vector<Direction> ways{{0, 0, -1}};
    if (ways_round) {
        add_ways_round(ways, it);
    }
    return ways;
}

Vec3 upright_of_container(const Bundle& bundle, std::size_t item)
{
    const Vec3 inward = to_vector(ways_in(bundle, item, false).front());
    return (-1 / norm(inward)) * inward;
}

double size_of(const Bundle& bundle)
{
    Vec3 low{1e9, 1e9, 1e9}, high{-1e9, -1e9, -1e9};
    for (const PlacedItem& item : bundle.items) {
        for (const Solid& solid : item.solids) {
            const Extent e = extent(hull_of(solid));
            low = {std::min(low.x, e.low.x), std::min(low.y, e.low.y), std::min(low.z, e.low.z)};
            high = {std::max(high.x, e.high.x), std::max(high.y, e.high.y), std::max(high.z, e.high.z)};
        }
    }
    return high.x < low.x ? 0 : norm(high - low);
}

Hull drawn_in(const Solid& solid, const Direction& direction, double bundle_size)
{
    const Vec3 along = to_vector(direction);
    return hull_of(solid, (-ways_out * bundle_size / norm(along)) * along);
}

} // namespace tuckwright::stacking
