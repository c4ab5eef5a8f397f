// SPDX-License-Identifier: GPL-3.0-or-later
/// What bundles packed by hand are put together from.
#pragma once
#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::handmade {

inline constexpr Quaternion as_it_is{1, 0, 0, 0};
inline constexpr Quaternion up_to_x{1, 0, 1, 0};     ///< lying, its top towards +x
inline constexpr Quaternion upside_down{0, 1, 0, 0}; ///< turned half round about x

inline Solid cylinder(double diameter, double height, Vec3 center, Quaternion turn = as_it_is)
{
    return {Cylinder{diameter, height}, {center, turn}};
}

inline Solid box(double length, double width, double height, Vec3 center, Quaternion turn = as_it_is)
{
    return {Box{length, width, height}, {center, turn}};
}

inline PlacedItem item(const std::string& id, const Solid& solid, const std::string& form = "standing")
{
    PlacedItem result;
    result.id = id;
    result.name = id;
    result.form = form;
    result.weight_g = 50;
    result.solids = {solid};
    return result;
}

inline PlacedItem hollow(PlacedItem of, const Solid& cavity, Opening opens)
{
    of.cavities.push_back({cavity.shape, cavity.pose, opens});
    return of;
}

inline PlacedItem in(PlacedItem what, std::size_t container, std::size_t cavity = 0)
{
    what.in = Lodging{container, cavity};
    return what;
}

inline Bundle bundle(const std::string& kit, const Shape& envelope, std::vector<PlacedItem> items)
{
    Bundle result;
    result.kit = kit;
    result.effort = "by hand";
    result.status = Status::found;
    result.clearance = 0.5;
    result.rule.shape = std::holds_alternative<Cylinder>(envelope) ? BundleShape::cylinder : BundleShape::box;
    result.envelope = envelope;
    result.lower_bound_ml = volume_ml(envelope) / 2;
    result.items = std::move(items);
    return result;
}

inline void step(Bundle& bundle, std::size_t item, std::array<std::int64_t, 3> direction = {0, 0, -1})
{
    bundle.steps.push_back({item, direction, "Put " + bundle.items[item].id + " into its place."});
}

/// Rests on the floor or a wall.
inline void stands(Bundle& bundle, std::size_t item) { bundle.certificate.rests.push_back({item, std::nullopt, {}}); }

/// Each of these items has its step, in this order, and all items stand.
inline void step_and_stand(Bundle& bundle, const std::vector<std::size_t>& order)
{
    for (const std::size_t item : order) {
        step(bundle, item);
    }
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        stands(bundle, item);
    }
}

inline void lies_on(Bundle& bundle, std::size_t item, std::size_t on, Vec3 point)
{
    bundle.certificate.rests.push_back({item, on, point});
}

} // namespace tuckwright::handmade
