// SPDX-License-Identifier: GPL-3.0-or-later
/// Volumes that no bundle of a kit can go below, and simple proofs that a kit cannot meet its limits.
#pragma once
#include <optional>
#include <string>

#include "tuckwright/kit.hpp"

namespace tuckwright::nesting {

/// A lower bound of the envelope's volume in ml: the larger of what each item needs alone, of the least width times
/// the least height, and of the outsides' volumes less the most that can flow into cavities (a maximum flow over the
/// containment graph). Valid for every bundle of the model, whichever lids are shut. Complexity: a maximum flow.
double lower_bound_ml(const Kit& kit);

/// A proof in words that no bundle meets the kit's limits, where a simple one exists. The proofs hold however an item
/// is turned. Nothing means that nothing is proved.
std::optional<std::string> misfit_proof(const Kit& kit);

} // namespace tuckwright::nesting
