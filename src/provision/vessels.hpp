// SPDX-License-Identifier: GPL-3.0-or-later
/// Which of the vessels offered comes along.
#pragma once
#include <vector>

#include "tuckwright/provision.hpp"

namespace tuckwright::provisioning {

/// How a vessel is filled: loose goods and liquids are shared evenly, cartridges and packets come as they are sold.
enum class Filling { shared, whole };

/// Looks at every vessel offered for the need, and chooses; an amount is in the need's ml where it has them and filling is
/// shared, else in grams. Without offers nothing is chosen.
void choose_vessel(Need& need, const std::vector<Offer>& offers, double headspace, Filling filling);

} // namespace tuckwright::provisioning
