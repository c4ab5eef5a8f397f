// SPDX-License-Identifier: GPL-3.0-or-later
/// Springy things that are pressed into the cavity of a vessel: what the file says of them, and whether it can be done.
#pragma once
#include <vector>

#include "kit/links.hpp"

namespace tuckwright::reading
{

/// The entry `press-fit` of an item, where it has one. Refuses what is no plain round piece. Requires: the item's other
/// entries have been read.
void read_press(Reading& reading, Fields& item, ItemDraft& draft);

/// Finds the vessel of each thing that is pressed into one, checks the pair, and fills in Item::press where nothing is
/// wrong; the thing then goes in that vessel as if `goes-in` said so.
void check_presses(Reading& reading, std::vector<ItemDraft>& drafts, IdIndex& ids);

} // namespace tuckwright::reading
