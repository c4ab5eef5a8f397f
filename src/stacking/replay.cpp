// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/replay.hpp"

#include <algorithm>

#include "tuckwright/contract.hpp"

namespace tuckwright::stacking
{

bool is_within(const Bundle& bundle, std::size_t item, std::size_t holder)
{
    std::size_t steps = 0;
    for (auto in = bundle.items[item].in; in; in = bundle.items[in->item].in) {
        require(++steps <= bundle.items.size(), "no item lies within itself");
        if (in->item == holder) {
            return true;
        }
    }
    return false;
}

Replay::Replay(const Bundle& bundle)
    : bundle_(&bundle), placed_(bundle.items.size()), contents_(bundle.items.size() + 1), lids_(bundle.items.size())
{
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        const PlacedItem& item = bundle.items[i];
        if (item.closes) {
            require(*item.closes < bundle.items.size(), "a lid closes an item of the bundle");
            lids_[*item.closes] = i;
        } else {
            require(!item.in || item.in->item < bundle.items.size(), "a container is an item of the bundle");
            contents_[node_of_container(i)].push_back(i);
        }
    }
}

std::size_t Replay::node_of_container(std::size_t item) const
{
    const PlacedItem& it = bundle_->items[item];
    if (it.closes) {
        return *it.closes;
    }
    return it.in ? it.in->item : bundle_->items.size();
}

const std::vector<std::size_t>& Replay::contents(std::optional<std::size_t> holder) const
{
    return contents_[holder ? *holder : bundle_->items.size()];
}

std::vector<std::size_t> Replay::group(std::size_t item) const
{
    const auto cover = lids_[item];
    std::vector<std::size_t> members;
    for (std::size_t i = 0; i < placed_.size(); ++i) {
        const bool moves_along =
            is_within(*bundle_, i, item) || (cover && (i == *cover || is_within(*bundle_, i, *cover)));
        if (i == item || (placed_[i] && moves_along)) {
            members.push_back(i);
        }
    }
    return members;
}

std::vector<std::size_t> Replay::obstacles(std::size_t item) const
{
    const std::size_t nodes = placed_.size() + 1;
    std::vector<bool> reached(nodes);
    std::vector<std::size_t> open{node_of_container(item)};
    reached[open.front()] = true;
    const auto reach = [&](std::size_t node) {
        if (!reached[node]) {
            reached[node] = true;
            open.push_back(node);
        }
    };
    while (!open.empty()) {
        const std::size_t node = open.back();
        open.pop_back();
        for (const std::size_t child : contents_[node]) {
            if (placed_[child]) {
                reach(child);
            }
        }
        if (node + 1 == nodes) {
            continue;
        }
        if (lids_[node] && placed_[*lids_[node]]) {
            reach(*lids_[node]);
        }
        if (placed_[node]) {
            reach(node_of_container(node));
        }
    }
    const std::vector<std::size_t> movers = group(item);
    std::vector<std::size_t> standing;
    for (std::size_t i = 0; i + 1 < nodes; ++i) {
        if (reached[i] && !is_within(*bundle_, item, i) && !std::binary_search(movers.begin(), movers.end(), i)) {
            standing.push_back(i);
        }
    }
    return standing;
}

} // namespace tuckwright::stacking
