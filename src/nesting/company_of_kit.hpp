// SPDX-License-Identifier: GPL-3.0-or-later
/// The kit's rules of carrying for the bodies of a scene.
#pragma once
#include <optional>
#include <string>

#include "nesting/kit_scene.hpp"

namespace tuckwright::nesting {

/// What the rules say of bodies; a shut lid's rules are its vessel's too, and what it is in counts as its vessel.
/// Requires: rules about items of the kit.
packing::Company company_of(const Kit& kit, const std::vector<Origin>& origins);

/// Why the rules can't all be kept, in words: an item that must lie in a vessel which it fits in no turn, or two that must
/// lie in the same vessel and keep apart. Nothing means that nothing is proved.
std::optional<std::string> rules_misfit(const Kit& kit);

} // namespace tuckwright::nesting
