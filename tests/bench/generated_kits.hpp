// SPDX-License-Identifier: GPL-3.0-or-later
/// Random kits of a given number of items, the same on every machine: one pot and a few more vessels, and what goes
/// into, round and on top of them.
#pragma once
#include <cstdint>
#include <string>

namespace tuckwright::bench {

/// The text of a kit file. 18 to 30 % of the items (or one, where that is more) are pots, tins, cases and sleeves with
/// cavities, the first of them a pot; the rest are cans, boxes and thin rods in turns at random. Sizes are whole
/// millimetres; the bundle is round for even seeds, a box for odd ones. Requires: items >= 1.
std::string generated_kit(int items, std::uint64_t seed);

} // namespace tuckwright::bench
