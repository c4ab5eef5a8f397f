// SPDX-License-Identifier: GPL-3.0-or-later
/// A kit as its lower bound sees it: which levels of which cells each thing must cross, and with what outline.
#pragma once
#include <cstdint>
#include <vector>

#include "nesting/plan_sets.hpp"
#include "packing/scene.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::nesting {

/// A slab of a thing as it lies in one form: so high, and at each of its levels with that outline or more.
struct Slab {
    int body = 0;
    bool nested = false; ///< of a thing in a vessel; else of one that lies directly in the bundle
    Footprint footprint;
    double height = 0; ///< mm
    Footprint whole;   ///< the outline of all of the thing, seen from above
};

/// A form in which a thing lies, directly in the bundle or in some vessel: its slabs, and the volume that they miss.
struct Stance {
    int body = 0;
    bool nested = false;
    packing::Form form = packing::Form::standing;
    int first = 0, slabs = 0;
    double missed = 0; ///< mm^3; of what counts with nothing but its volume, all of it
    double along = 0, across = 0, most_tilt = 0; ///< of what leans: half sizes in the plane it leans in, radians
};

/// Where a thing lies, and how.
struct Choice {
    int cell = 0; ///< `vague`: somewhere, of which nothing is known
    int stance = 0;
};
inline constexpr int vague = -1;

/// The bundle (cell 0, of no plan and depth of its own) or a vessel's cavity.
struct LevelCell {
    int body = -1;
    Plan plan;
    double depth = 0; ///< mm
    bool open = false, open_below = false;
    double outside = 0; ///< radius of a round vessel with a round cavity, mm; else 0
};

struct LevelModel {
    bool round = true;
    std::vector<LevelCell> cells;
    std::vector<Slab> slabs;
    std::vector<Stance> stances;
    std::vector<std::vector<Choice>> choices; ///< of each body; at most 64
    std::vector<double> volume;               ///< mm^3 of each body
    double missed_always = 0; ///< mm^3 of what counts with its volume wherever it is
    double vague_room = 0;    ///< mm^3 of cavities of which nothing but the volume is known
};

/// Builds the model for everything standing, lying or on its side. Things in several forms, sheets, cloth, lids and what
/// is pressed into a vessel count with their volume, pouches with nothing; what leans counts at the slant at which it is
/// lowest in its cell.
LevelModel level_model(const Kit& kit);

/// Radii, or half sides, of a bundle in which something begins to fit, alone or beside another thing.
std::vector<double> critical_lengths(const LevelModel& model);

} // namespace tuckwright::nesting
