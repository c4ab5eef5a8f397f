// SPDX-License-Identifier: GPL-3.0-or-later
/// Of bundles of the same size, the one that people would rather build and carry.
#pragma once
#include <compare>
#include <functional>
#include <vector>

#include "nesting/search.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// What people mind in a bundle, the worst first; less is better.
struct Discomfort {
    int blocked = 0;        ///< 1: there is no order in which things could be put in
    int overloading = 0;    ///< things on what may not bear them, through others too
    int dropping = 0;       ///< items with nothing under them
    int toppling = 0;       ///< items that do not stand by themselves
    int out_of_reach = 0;   ///< things in the way of those wanted first, twice, and of those wanted early
    int at_hand = 0;        ///< things that are not in the way of those wanted last
    int loose_lids = 0;     ///< lids that are not shut on their vessels
    long play = 0;          ///< mm by which all items can still move, added up
    long center_height = 0; ///< mm from the table to the centre of all weight
    friend auto operator<=>(const Discomfort&, const Discomfort&) = default;
};
/// It can be put together, and nothing is overloaded, drops, topples or lies loose, and what is wanted soon is at hand.
bool at_ease(const Discomfort& discomfort);
Discomfort discomfort(const Kit& kit, const Bundle& bundle);
/// The same with the bundle's plays at hand.
Discomfort discomfort(const Kit& kit, const Bundle& bundle, const std::vector<Play>& free);

struct ComfortOptions {
    double spare = 0;       ///< share by which the sides of the envelope may grow
    int lanes = 4;          ///< independent walks, the best of which wins
    std::uint64_t work = 0; ///< pairs of pieces measured for each
    std::uint64_t calm = 0; ///< so many of them at least, though nothing topples, drops or lies loose: for less play
    std::uint64_t seed = 1;
    unsigned threads = 1;
    std::function<bool()> stop;
};

/// Rearranges a layout within its own envelope, but for the spare, until at_ease() and the calm part of the work is done,
/// or all of it is.
/// Requires: no overlap. Ensures: a layout free of overlap in an envelope no larger in any dimension, with no more
/// discomfort than before; the same for any number of threads unless stop() said so.
nesting::Proposal comfortable(const Kit& kit, const nesting::Proposal& from, const ComfortOptions& options);

} // namespace tuckwright
