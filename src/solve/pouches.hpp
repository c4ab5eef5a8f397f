// SPDX-License-Identifier: GPL-3.0-or-later
/// Pouches that something must lie in: what they could look like, and what cannot go in.
#pragma once
#include <optional>
#include <string>

#include "nesting/search.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright {

/// A proof in words that something is too far round for the pouch that it must lie in, however it is turned, or that all
/// of it is too much. It holds for whatever form the pouch may take: only its girth and length count. Nothing means that
/// nothing is proved.
std::optional<std::string> pouch_misfit(const Kit& kit);

/// " with all that must lie in the ditty and the sack", or nothing where no pouch must hold something.
std::string filling_in_words(const Kit& kit);

/// The kit with further forms for each pouch that something must lie in, before those that it has: those that just hold
/// small bundles of its contents, searched on their own, and the same with a little room. Requires: a kit with all its
/// stowages. Ensures: the same kit, seed and counts, the same forms; a kit without such pouches stays as it is.
Kit with_packed_pouches(Kit kit, const nesting::SearchOptions& options);

} // namespace tuckwright
