// SPDX-License-Identifier: GPL-3.0-or-later
/// The `inside` of an item: its cavity.
#pragma once
#include <optional>

#include "kit/sized_shape.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::reading
{

/// Reads a cavity, from inner dimensions or from wall and base, and checks that it lies within the outside. `outside`
/// is missing where it is faulty itself; then only what can be checked alone is checked, and there is no cavity.
std::optional<Cavity> read_cavity(Reading& reading, const Node& node, const std::optional<SizedShape>& outside);

} // namespace tuckwright::reading
