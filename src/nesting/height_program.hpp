// SPDX-License-Identifier: GPL-3.0-or-later
/// A lower bound of a bundle's height in a given plan: what crosses one level must lie side by side.
#pragma once
#include <cstdint>
#include <limits>
#include <memory>
#include <vector>

#include "nesting/heaviest_set.hpp"

namespace tuckwright::nesting {

/// Which choices are left to each body: bit k for its k-th.
using ChoicesLeft = std::vector<std::uint64_t>;

/// Of each cell; many nodes have the same.
using SharedRules = std::vector<std::shared_ptr<const LevelRules>>;

/// How each slab may lie in a cell: what stands out into it from another may be turned anyhow even between the walls of
/// a box.
std::vector<Turned> turned_in(const LevelModel& model, std::size_t cell, const ChoicesLeft& left);

/// The levels of all cells as they may be crossed while these choices are left.
class LevelState {
public:
    /// `cells[0]` holds for the bundle's plan; the others for the cavities.
    LevelState(const LevelModel& model, const SharedRules& cells, const ChoicesLeft& left);

    const std::vector<LevelRules>& cells() const { return cells_; }
    /// Whether a stance is one of the choices left.
    bool has_stance(int stance) const { return stance_left_[static_cast<std::size_t>(stance)]; }
    /// Whether what counts with its volume may lie in the cell.
    bool takes_fluid(std::size_t cell) const { return takes_fluid_[cell]; }

private:
    void allow_slabs(const LevelModel& model, const ChoicesLeft& left);
    void keep_off_vessels(const LevelModel& model, const ChoicesLeft& left);
    void keep_near_vessel(const LevelModel& model, std::size_t vessel, const SlabSet& contents,
                          const std::vector<SlabSet>& direct);

    std::vector<LevelRules> cells_;
    std::vector<std::uint64_t> reach_; ///< [cell]: the set of cells whose levels its contents may cross
    std::vector<bool> stance_left_;
    std::vector<bool> takes_fluid_;
};

/// What each mm of each slab, and each mm^3 of what counts with its volume, is worth.
struct LevelWeights {
    std::vector<double> slab;
    double fluid = 0;
};

/// A set that may share a level of a cell.
struct LevelColumn {
    std::size_t cell = 0;
    SlabSet set;
};

struct HeightBound {
    double height = 0; ///< mm; infinite where nothing fits
    LevelWeights weights;
    std::vector<LevelColumn> columns;
};

/// The bound that weights prove, whatever they are, in plain arithmetic: a level of cell c crosses no more than M_c of
/// worth, so H M_0 + sum depth_c M_c is at least what the bodies are worth in their cheapest stances.
double height_by_weights(const LevelModel& model, const LevelState& state, const LevelWeights& weights,
                         std::uint64_t& work);

/// The best weights, by a linear program whose columns are found one after the other. Starts with the given columns; ends
/// once `enough` mm are proved. Source: column generation, P. C. Gilmore and R. E. Gomory, Operations Research 9 (1961);
/// bounds on the way, A. A. Farley, Operations Research 38 (1990).
HeightBound height_by_program(const LevelModel& model, const LevelState& state, const std::vector<LevelColumn>& columns,
                              double enough, std::uint64_t& work);

} // namespace tuckwright::nesting
