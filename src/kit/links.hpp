// SPDX-License-Identifier: GPL-3.0-or-later
/// How items of a kit name one another: by id, and sometimes in a ring.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "kit/item_reading.hpp"

namespace tuckwright::reading
{

/// The index of an item that another one names, or nothing.
using Link = std::optional<std::size_t>;

/// Finds items by their ids. Requires: the drafts outlive it.
class IdIndex
{
public:
    explicit IdIndex(const std::vector<ItemDraft>& drafts);

    /// The item of a sound id, the first where it is given twice.
    Link find(const std::string& id) const;
    /// The same; reports an id that no item has. Complexity: constant, but for the first hundred ids not found, which
    /// are compared with all.
    Link need(Reading& reading, const std::string& id, Place place);

private:
    std::unordered_map<std::string, std::size_t> ids_;
    std::vector<std::string_view> known_;
    std::size_t unknown_ = 0;
};

/// One item of each ring of links. Complexity: linear, each link being followed once.
std::vector<std::size_t> ring_starts(const std::vector<Link>& links);

} // namespace tuckwright::reading
