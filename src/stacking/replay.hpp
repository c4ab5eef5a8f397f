// SPDX-License-Identifier: GPL-3.0-or-later
/// Putting a bundle together step by step: who moves together, and what stands in the way (rule 8 of the bundle).
#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright::stacking
{

/// Whether one item lies in a cavity of the other, directly or further in.
bool is_within(const Bundle& bundle, std::size_t item, std::size_t holder);

/// What has been placed so far. The bundle must outlive it.
class Replay
{
public:
    explicit Replay(const Bundle& bundle);

    const Bundle& bundle() const { return *bundle_; }
    bool placed(std::size_t item) const { return placed_[item]; }
    void place(std::size_t item) { placed_[item] = true; }

    /// Items whose container is that item, or the bundle for no item; lids that are shut are not in this list.
    const std::vector<std::size_t>& contents(std::optional<std::size_t> holder) const;
    /// The item that lies as a shut lid on this one.
    std::optional<std::size_t> lid(std::size_t item) const { return lids_[item]; }

    /// The item and what moves with it: what it holds and its shut lid, as far as they have been placed. Ascending.
    std::vector<std::size_t> group(std::size_t item) const;
    /// What has been placed and hangs together with the item's container (for a lid: its vessel), and that container
    /// itself; without the group, and without the containers in which the item lies. Ascending.
    std::vector<std::size_t> obstacles(std::size_t item) const;

private:
    std::size_t node_of_container(std::size_t item) const;

    const Bundle* bundle_;
    std::vector<bool> placed_;
    std::vector<std::vector<std::size_t>> contents_; ///< by holder; the last is the bundle's own
    std::vector<std::optional<std::size_t>> lids_;
};

} // namespace tuckwright::stacking
