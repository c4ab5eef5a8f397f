// SPDX-License-Identifier: GPL-3.0-or-later
/// Proposals of many things put right without a search.
#pragma once
#include <cstddef>
#include <vector>

#include "nesting/search.hpp"
#include "packing/construct.hpp"
#include "packing/random.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/kit.hpp"
#include "tuckwright/proof.hpp"

namespace tuckwright {

/// Whether a proposal is of so many things that rearranging it at random would take too long.
bool has_many(const nesting::Proposal& proposal);

/// Items of a bundle for which the certificate tells no rest, and none is needless.
std::vector<std::size_t> without_rest(const Bundle& bundle);

/// Items that objections of the exact check begin with.
std::vector<std::size_t> objected_to(const Bundle& bundle, const std::vector<Objection>& objections);

/// Puts items of the bundle that comes of a proposal elsewhere, where they are carried and bar no way.
/// Requires: has_many(). Ensures: a layout free of overlap and within the limits, maybe a larger one; or as it was.
void put_elsewhere(const Kit& kit, nesting::Proposal& proposal, const std::vector<std::size_t>& items,
                   packing::Random& random, packing::Going going);

} // namespace tuckwright
