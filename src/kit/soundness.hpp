// SPDX-License-Identifier: GPL-3.0-or-later
/// What keeps a kit from being packed at all, without what only makes it unsafe to carry.
#pragma once
#include <vector>

#include "tuckwright/kit.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright::reading
{

/// The part of problems_of() that solve() asks for, of the kits too that are made of a part of another.
/// Complexity: near-linear in items and rules.
std::vector<Problem> structural_problems(const Kit& kit);

} // namespace tuckwright::reading
