// SPDX-License-Identifier: GPL-3.0-or-later
/// Two bodies under a narrow opening: whether one can still be let down and pushed aside when the other is there.
#pragma once
#include <vector>

#include "packing/scene.hpp"

namespace tuckwright::packing {

/// How far two bodies in one hollow bar each other's ways, whichever of them goes in first, in mm; 0 where one of the
/// orders is likely to work. Looks at few ways down and half-way aside, and at no third body: a guide for the search, no
/// proof. Requires: the hollow has a narrow opening; pieces in its frame, some of each body.
double jam(const Hollow& hollow, const std::vector<Piece>& first, const std::vector<Piece>& second);

} // namespace tuckwright::packing
