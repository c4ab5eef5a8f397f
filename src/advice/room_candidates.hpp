// SPDX-License-Identifier: GPL-3.0-or-later
/// Things that might be the largest in a place, by floating point.
#pragma once
#include <vector>

#include "advice/room_draft.hpp"
#include "advice/room_space.hpp"

namespace tuckwright::advice {

inline constexpr double thinnest_told = 1; ///< mm

struct Amounts {
    int points;         ///< of the grid across a place
    std::size_t seeds;  ///< that things are grown from
    int turns;          ///< in which they begin, in half a turn
    std::size_t grown;  ///< that are grown on at least, of those begun
    int finished;       ///< that are grown to the end at most
};

Amounts counts_of(Effort effort);

/// Whether they are much the same, up to a share of their size.
bool alike(const Draft& a, const Draft& b, double share);

/// Grown nearly as far as they go, the largest first, no two alike.
std::vector<Draft> candidates(const Space& space, Posing posing, const Amounts& counts);

/// Grows a draft as far as it goes, turned as whole numbers can say it, and lets it down. Returns whether enough is left of
/// it to be told.
bool complete(Draft& draft, const Space& space);

} // namespace tuckwright::advice
