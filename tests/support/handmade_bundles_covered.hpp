// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles packed by hand that go into a bag.
#pragma once
#include <numbers>

#include "support/handmade_bundles_parts.hpp"

namespace tuckwright::handmade {

/// Round two tins of 50 mm that touch: twice from middle to middle, and a whole turn. The open belt round two equal
/// pulleys is as long: L = 2 C + pi d (from memory: any handbook of machine elements).
inline const double round_two_tins = 2 * 50 + std::numbers::pi * 50;

/// Two tins that touch, with a strap round them, in a bag that they all but fill; the limits hold the bag too.
inline Bundle tins_in_a_bag()
{
    auto second = item("tin", cylinder(50, 60, {25, 0, 30}));
    second.copy = 2;
    auto result = bundle("Two tins", Cylinder{100, 60}, {item("tin", cylinder(50, 60, {-25, 0, 30})), second});
    result.bag = Bag{"sack", "Canvas sack, green", 40, snap_up(round_two_tins + 0.01), 60, 2};
    result.bands = {Band{"strap", "strap", 8, 300}};
    result.rule.diameter = 104;
    result.rule.height = 64;
    step_and_stand(result, {0, 1});
    return result;
}

} // namespace tuckwright::handmade
