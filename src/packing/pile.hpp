// SPDX-License-Identifier: GPL-3.0-or-later
/// Places found by letting a body fall: how large kits are built up.
#pragma once
#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include "packing/drop.hpp"
#include "packing/random.hpp"
#include "packing/separation.hpp"

namespace tuckwright::packing {

/// Scenes of so many bodies and more are handled by means that grow about as fast as their number: falling instead of
/// sampled heights, relaxation instead of linear programs.
inline constexpr std::size_t many_bodies = 48;
inline bool is_large(const Scene& scene) { return scene.bodies.size() >= many_bodies; }

/// Air kept while building, so that rounding turns to the grid afterwards needs no more room.
inline constexpr Air building_air{2.4e-3, 0, 1.1e-3};

/// Where a body might go, and how good that is: less is better.
struct ScoredPlace {
    Place place;
    double score = 1e300;
};

/// How good a place is; see ScoredPlace.
using Score = std::function<double(const Place&)>;

/// The best place, if better than the one given, of `samples` at which a hidden body ends when it falls from above through
/// one of the doors, beside what is there; it keeps the air there and is carried.
ScoredPlace best_fall(const Layout& layout, int body, const std::vector<Door>& open, Random& random, int samples,
                      const Score& score, ScoredPlace best = {});

/// A place near that of a hidden body where it is carried, moved straight along some level direction and down from there.
std::optional<Place> carried_nearby(const Layout& layout, int body);

/// A place in a gap where a hidden body is carried, the first met of `samples` anywhere within the envelope.
std::optional<Place> carried_in_a_gap(const Layout& layout, int body, Random& random, int samples);

} // namespace tuckwright::packing
