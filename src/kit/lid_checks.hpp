// SPDX-License-Identifier: GPL-3.0-or-later
/// What must hold between lids and the vessels they close, and between the items of a kit at large.
#pragma once
#include <vector>

#include "kit/links.hpp"

namespace tuckwright::reading
{

/// Reports ids that are given twice.
void check_ids(Reading& reading, const std::vector<ItemDraft>& drafts, const IdIndex& ids);

/// Finds the vessel of each lid, checks the pair, and fills in Item::closes where nothing is wrong. Reports vessels
/// that hold a liquid and are not surely closed.
void check_lids(Reading& reading, std::vector<ItemDraft>& drafts, IdIndex& ids);

} // namespace tuckwright::reading
