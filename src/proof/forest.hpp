// SPDX-License-Identifier: GPL-3.0-or-later
/// Who is in whom, without numbers.
#pragma once
#include <optional>
#include <vector>

#include "proof/findings.hpp"

namespace tuckwright::proof {

/// Objects to containers and vessels that are not there, to full containers, to rings of containers or lids, and to
/// items named twice.
void check_forest(const Bundle& bundle, Findings& findings);

/// The containers of an item from the direct one outward. Requires: a sound forest.
std::vector<Lodging> containers_of(const Bundle& bundle, std::size_t item);

/// Whether `outer` holds `inner`, directly or not; no item holds itself. Requires: a sound forest.
bool holds(const Bundle& bundle, std::size_t outer, std::size_t inner);

/// What an item hangs on when it is in its place: the vessel for a shut lid, its container otherwise.
std::optional<std::size_t> hangs_on(const PlacedItem& item);

/// The item shut on each item as its lid, if any (the first where there are several).
std::vector<std::optional<std::size_t>> shut_lids(const Bundle& bundle);

} // namespace tuckwright::proof
