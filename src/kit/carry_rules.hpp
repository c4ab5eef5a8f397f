// SPDX-License-Identifier: GPL-3.0-or-later
/// The rules of carrying of a kit: those that its items give, and the usual ones for their kinds.
#pragma once
#include <vector>

#include "kit/links.hpp"

namespace tuckwright::reading
{

/// The rules, the file's own first, each once. Reports items that are not there, vessels that can hold nothing, rings
/// of `goes-in`, and what contradicts a `goes-in`. Requires: check_lids passed over the drafts.
/// Complexity: pairs of items times the length of a chain of `goes-in`.
std::vector<CarryRule> carry_rules(Reading& reading, const std::vector<ItemDraft>& drafts, IdIndex& ids,
                                   const Waivers& waivers);

} // namespace tuckwright::reading
