// SPDX-License-Identifier: GPL-3.0-or-later
/// What the kits of a comparison have in common, and what only some of them have.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/compare.hpp"

namespace tuckwright {

/// A thing, or a wish, as it stands in at least one kit.
struct SharedThing {
    std::string words;             ///< "2 x Cup (cup), 78 mm across, 40 mm high, 62 g"
    std::vector<std::size_t> kits; ///< indices of those that have it, all alike
};

/// The things of these kits, each once, in the order in which they first come. Two are one thing if they have the same
/// id, name, number, sizes, weight and contents.
std::vector<SharedThing> things_of(const std::vector<const Kit*>& kits);

/// What the kits ask for, each wish once: "a box at most 240 mm long, with 0.5 mm of clearance".
std::vector<SharedThing> wishes_of(const std::vector<const Kit*>& kits);

/// Numbers from 1 for indices: "1, 3 to 6 and 9".
std::string numbers_in_words(const std::vector<std::size_t>& indices);

} // namespace tuckwright
