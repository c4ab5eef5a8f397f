// SPDX-License-Identifier: GPL-3.0-or-later
/// What hangs on what in a packed bundle: a shut lid on its vessel, an item on its container.
#pragma once
#include <optional>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright::stacking
{

class Hanging
{
public:
    explicit Hanging(const Bundle& bundle);

    /// What it hangs on; nothing for what lies directly in the bundle.
    std::optional<std::size_t> next(std::size_t item) const;
    /// Whether the item is the other one or hangs on it, however far.
    bool on(std::size_t item, std::size_t other) const { return on_[item][other]; }
    /// Whether the other one is among the vessels that the item lies in; the vessel of a shut lid is not.
    bool in(std::size_t item, std::size_t vessel) const;
    /// The vessel at the end of a row of shut lids: itself for all but lids.
    std::size_t unit(std::size_t item) const;
    std::size_t size() const { return on_.size(); }

private:
    const Bundle& bundle_;
    std::vector<std::vector<bool>> on_;
};

} // namespace tuckwright::stacking
