// SPDX-License-Identifier: GPL-3.0-or-later
/// The heat that a trip's water takes, and what the fuel has to give for it.
#pragma once
#include "tuckwright/provision.hpp"

namespace tuckwright::provisioning {

inline constexpr double usual_boils_away = 0.05;

/// Fills in water, boiling point, heats, their working, and what had to be assumed for them.
void work_out_heat(const Trip& trip, Provision& answer);

} // namespace tuckwright::provisioning
