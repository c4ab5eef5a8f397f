// SPDX-License-Identifier: GPL-3.0-or-later
/// From heat to fuel: weight, volume, and how spirit is diluted.
#pragma once
#include "tuckwright/provision.hpp"

namespace tuckwright::provisioning {

inline constexpr double usual_headspace = 0.1;

/// Fills in the fuel, its vessel, and the dilution where spirit is diluted. Requires: Provision::fuel_kj is there.
void work_out_fuel(const FuelPlan& plan, Provision& answer);

} // namespace tuckwright::provisioning
