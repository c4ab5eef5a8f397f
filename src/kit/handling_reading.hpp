// SPDX-License-Identifier: GPL-3.0-or-later
/// What a file says of what may lie on an item, and of how soon it is wanted.
#pragma once
#include <optional>
#include <vector>

#include "kit/carry_reading.hpp"

namespace tuckwright::reading
{

struct ItemDraft;

/// The entries `nothing-on-top`, `bears` and `reach` of an item.
void read_handling(Reading& reading, Fields& fields, ItemDraft& draft);

/// The usual rule that nothing lies on what is fragile, where it says of itself neither that nor what it bears. Reports
/// what says `nothing-on-top: no` against the rule.
void keep_tops_free(Reading& reading, std::vector<ItemDraft>& drafts, const Waivers& waivers);

} // namespace tuckwright::reading
