// SPDX-License-Identifier: GPL-3.0-or-later
/// Words for the place to which a step leads.
#pragma once
#include <string>

#include "stacking/surroundings.hpp"

namespace tuckwright::stacking {

/// Whole tenths of a millimetre, rounded down: "no air", "0.8 mm of air".
std::string air(double mm);

/// Where in its container, on whatever it stands. In a box bundle: by the sides ("in the left back corner, long side
/// from left to right"). In a round bundle: "at 4 o'clock, 38 mm off the middle", "in the middle", and beside or opposite
/// what. In a vessel: "against the wall at 4 o'clock", "in the middle", and beside what. Hours are those of a clock seen
/// from above with 12 at the back, and tell where long sides point, too. What leans: where its foot and head are. Nothing
/// where there is nothing to tell.
std::string spot(const Replay& before, std::size_t item, const Surroundings& seen);

/// Where an item hangs in a vessel that tapers, held by its walls: "as far down as it goes", "held between the wall at 4
/// o'clock and Box, 12 mm above the bottom", "held by one side of the wall at 4 o'clock, 12 mm above the bottom".
std::string hanging_words(const Replay& before, std::size_t item, const Surroundings& seen);

/// "in from the left": for a way into the bundle that is not straight down.
std::string way_in_words(const Bundle& bundle, const Step& step);

} // namespace tuckwright::stacking
