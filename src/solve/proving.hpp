// SPDX-License-Identifier: GPL-3.0-or-later
/// From a proposal to a bundle that the exact check has no objection to.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "nesting/search.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright {

/// How a proposal is pushed together. Unless things are let turn, their turns are those of whole numbers already.
enum class Pushing { freely, as_turned, only_down };

/// Gaps in mm for the first try and for each further one, if rounding to the grid should spoil a contact. Rounding a
/// turn may move a corner by `for_turns`: the first compaction leaves so much more room, where there is room.
struct Gaps {
    double curved, flat, for_turns;
    Pushing pushing = Pushing::freely;
};
inline constexpr Gaps tries[] = {
    {1.2e-3, 0, 1e-3}, {1.2e-3, 0, 0}, {1.5e-3, 0, 1e-3}, {2e-3, 2e-6, 1e-3}, {3e-3, 2e-4, 1e-3}};

/// An item that bears more than it may, and one that lies on it, by their ids.
struct TooMuch {
    std::string item, upper;
};

/// What other gaps between the same places would not mend.
struct Hopeless {
    std::vector<TooMuch> too_much;
    bool no_order = false;
    bool is_objected_to = false; ///< by the exact check
    std::vector<std::size_t> misplaced; ///< of many things, those that had better lie elsewhere

    explicit operator bool() const { return no_order || !too_much.empty(); }
};

/// Items that would bear too much in some of the bundles that were found.
using Refused = std::vector<TooMuch>;

/// A bundle made from a proposal with these gaps, proved; or nothing, and what is hopeless about it.
std::optional<Bundle> proved(const Kit& kit, const nesting::Proposal& proposal, const Gaps& gaps, Hopeless& hopeless);

/// The first of the tries that can be proved.
std::optional<Bundle> proved(const Kit& kit, const nesting::Proposal& proposal, Refused& refused);

} // namespace tuckwright
