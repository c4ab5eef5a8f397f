// SPDX-License-Identifier: GPL-3.0-or-later
/// A draft grown until it is stuck.
#pragma once
#include "advice/room_draft.hpp"
#include "advice/room_space.hpp"

namespace tuckwright::advice {

struct Growth {
    double begin = 0;       ///< mm that sizes and place may change at first
    double end = 0;         ///< mm below which no change is worth while
    int rounds = 0;         ///< at most
    bool turns = true;      ///< whether the angle may change
};

/// Whether it keeps within everything, up to a nanometre.
bool keeps_within(const Draft& draft, const Space& space);

/// Makes a draft smaller on all sides until it keeps within everything. Returns whether anything is left of it.
bool made_to_fit(Draft& draft, const Space& space);

/// Moves, turns and grows a draft, one linear program after the other between the planes that part it from its
/// neighbours, while its volume grows. Requires: keeps_within(). Ensures: the same, and no smaller volume.
Draft grown(Draft draft, const Space& space, const Growth& growth);

/// Lets it down straight, by the bundle's upright, as far as it goes. Requires, ensures: keeps_within().
Draft let_down(Draft draft, const Space& space);

} // namespace tuckwright::advice
