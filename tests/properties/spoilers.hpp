// SPDX-License-Identifier: GPL-3.0-or-later
/// Faults put into proved bundles. Each returns the JSON of a bundle that is wrong for certain, by construction or by
/// the sampling judge; or nothing where the draw did not make one.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "support/random_solids.hpp"
#include "tuckwright/bundle.hpp"

namespace properties {

using Spoiled = std::optional<std::string>;

struct Spoiler {
    const char* name;
    Spoiled (*spoil)(tuckwright::Bundle bundle, tuckwright::test::Dice& dice);
};

/// Faults of places: what overlaps, stands out, or is held by the wrong thing.
std::vector<Spoiler> place_spoilers();
/// Faults of steps and planes.
std::vector<Spoiler> handling_spoilers();
/// Faults of narrow openings and of the ways through them.
std::vector<Spoiler> narrow_spoilers();
/// Faults of what is pressed into a vessel.
std::vector<Spoiler> pressed_spoilers();
/// Faults of bags and bands.
std::vector<Spoiler> cover_spoilers();
/// Rules of carrying that the bundle does not keep.
std::vector<Spoiler> carrying_spoilers();
/// Loads that are not borne, and numbers of things before another that are not so.
std::vector<Spoiler> load_spoilers();
/// Faults of the file: figures, turns, items missing or doubled.
std::vector<Spoiler> file_spoilers();

/// mm by which the judge must see something wrong.
inline constexpr long double clear = 0.05L;

/// Whether one of the two holds the other, at any depth.
bool related(const tuckwright::Bundle& bundle, std::size_t a, std::size_t b);

inline std::size_t any(tuckwright::test::Dice& dice, std::size_t count)
{
    return static_cast<std::size_t>(dice.below(static_cast<int>(count)));
}

} // namespace properties
