// SPDX-License-Identifier: GPL-3.0-or-later
/// The usual cautions for the fuel of a trip.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/trip.hpp"

namespace tuckwright::advice {

std::vector<std::string> provision_cautions(const Trip& trip);

} // namespace tuckwright::advice
