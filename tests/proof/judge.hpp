// SPDX-License-Identifier: GPL-3.0-or-later
/// A judge of bundles that shares nothing with the check: points by the hundred, in long double. It only says that
/// something is wrong where it is wrong by a margin.
#pragma once
#include <optional>
#include <string>

#include "support/sampled_body.hpp"
#include "tuckwright/bundle.hpp"

namespace judge {

using namespace tuckwright::sampled;

/// The largest depth that a sampled point has in both bodies at once.
Real common_depth(const Body& a, const Body& b, int fine);

/// The farthest that the body reaches from the axis of `room` (round), by a search along rims and corners.
Real farthest_from_axis(const Body& body, const Body& room);
/// The farthest that it reaches from the room's centre along the room's own axis k.
Real farthest_along(const Body& body, const Body& room, std::size_t k);

/// What is wrong with the bundle by more than `margin` mm; nothing when the judge sees no clear fault.
std::optional<std::string> clear_fault(const tuckwright::Bundle& bundle, Real margin);

} // namespace judge
