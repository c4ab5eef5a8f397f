// SPDX-License-Identifier: GPL-3.0-or-later
/// Large layouts in which everything lies on something.
#pragma once
#include <functional>

#include "packing/polish.hpp"
#include "packing/random.hpp"

namespace tuckwright::packing {

/// Lowers everything straight down, and puts what lies over an empty mouth elsewhere, until all is carried or many rounds
/// have gone by; then fits the envelope round it. Requires: a large scene; next to no overlap. Returns whether the layout is
/// free of overlap in the end and within the limits; else it is as it was. Once stop() says so, what is left is put on top
/// of all, which is soon done.
bool steady(Layout& layout, Random& random, const EnvelopeLimits& limits, const std::function<bool()>& stop = nullptr);

} // namespace tuckwright::packing
