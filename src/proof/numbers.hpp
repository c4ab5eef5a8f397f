// SPDX-License-Identifier: GPL-3.0-or-later
/// Whether every number of a bundle is one that can be proved with.
#pragma once
#include "proof/findings.hpp"

namespace tuckwright::proof {

/// Objects to lengths that are not finite, off the grid of whole nanometres or beyond the longest one, dimensions that
/// are not positive, rotations of nothing, items without a solid, weights that are not finite or negative, and
/// certificates that name what is not there. Afterwards all numbers can be made exact.
void check_numbers(const Bundle& bundle, Findings& findings);

} // namespace tuckwright::proof
