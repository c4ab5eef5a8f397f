// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles to be drawn, and what may be wrong with their pictures.
#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "support/svg.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/canvas.hpp"

namespace drawing_test {

/// A tower by chance with its steps, in an envelope that just holds it. Ensures: the same seed, the same bundle.
tuckwright::Bundle random_bundle(std::uint64_t seed, int items);

/// A pot of 100 by 80 mm, 4 mm thick, a tin in it, and a box beside it.
tuckwright::Bundle pot_with_tin();

/// What is drawn outside a frame, by more than its lines are wide, and which lines of text lie on one another.
std::vector<std::string> faults_of(const tuckwright::svg::Picture& picture, const tuckwright::Frame& frame);

} // namespace drawing_test
