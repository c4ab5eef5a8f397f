// SPDX-License-Identifier: GPL-3.0-or-later
/// What goes round the whole bundle: a soft bag, bands and straps.
#pragma once
#include <string>
#include <vector>

#include "kit/item_reading.hpp"
#include "kit/links.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::reading
{

/// The `bag` or `band` of an item's fields, which must hold nothing but its id, name and weight besides.
void read_cover(Reading& reading, Fields& fields, ItemDraft& draft);

/// Reports bands that hold shut what is no lid, or a lid of which there are several. Requires: lids have been settled.
void check_bands(Reading& reading, const std::vector<ItemDraft>& drafts, IdIndex& ids);

/// Puts the drafts' items into the kit, bags and bands apart from the rest, and reports a second bag and a kit that has
/// nothing to go into its bag. Requires: what lids close has been settled by the drafts' indices.
void take_items(Reading& reading, std::vector<ItemDraft>& drafts, Place items, Kit& kit);

} // namespace tuckwright::reading
