// SPDX-License-Identifier: GPL-3.0-or-later
/// What the exact check needs to be shown of a bundle whose rests and steps are there.
#pragma once
#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// Gives the bundle its planes, for pairs, steps, loads and ways out, and tells for each item with a reach after how many
/// things it comes out. Requires: steps in order, in a bundle whose items are apart.
void certify(Bundle& bundle);

} // namespace tuckwright
