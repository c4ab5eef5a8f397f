// SPDX-License-Identifier: GPL-3.0-or-later
/// A known arrangement with other sizes.
#pragma once
#include <cstddef>
#include <cstdint>
#include <optional>

#include "tuckwright/bundle.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright {

/// The kit's things as they lie in a bundle of a kit that is alike but for its sizes, pushed together again and proved;
/// no search. The lower bound is left at 0. Nothing where that arrangement cannot be had with these sizes, or not be
/// proved. Requires: a sound kit, at its measured sizes; a bundle to which check() has no objection.
/// Ensures: check() has no objection to it, and it is a bundle of this kit. The same input gives the same bundle.
/// Complexity: that of some tens of linear programs, as many times as it takes to prove it, five at most.
std::optional<Bundle> compacted(const Kit& kit, const Bundle& pattern);

/// The same where things of the kit are missing in the pattern: each is put where it raises the bundle least, the best of
/// some ten trials by chance, before all is pushed together.
std::optional<Bundle> completed(const Kit& kit, const Bundle& pattern, std::uint64_t seed);

/// A bundle less one of its things, and a lid that is shut on that: what the thing held lies in the same place, in what
/// the thing itself lay in. Copies behind it count down. Only the items; no steps, no certificate.
/// Requires: an item of the bundle that is no shut lid, or a shut lid, whose vessel is then open.
Bundle without(const Bundle& bundle, std::size_t item);

} // namespace tuckwright
