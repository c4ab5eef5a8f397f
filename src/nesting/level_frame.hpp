// SPDX-License-Identifier: GPL-3.0-or-later
/// Things whose cells and forms are decided, on one common scale of levels, and how far apart two of them must begin.
#pragma once
#include <limits>
#include <optional>
#include <vector>

#include "nesting/height_program.hpp"

namespace tuckwright::nesting {

/// The levels that a slab of a thing crosses, in mm above the thing's lowest.
struct Zone {
    std::size_t slab = 0;
    double from = 0, to = 0;
};

/// A thing whose cell and form are decided. What leans is told as low as it can be; it may be higher at both ends.
struct LevelJob {
    int body = 0;
    double height = 0;
    bool lies_round = false;                     ///< a lying cylinder
    double along = 0, across = 0, most_tilt = 0; ///< of what leans, see Stance
    std::vector<Zone> zones;                     ///< from the innermost, which is the widest
    std::vector<std::size_t> cells;              ///< that it lies in, from its own to the frame's
    std::vector<std::size_t> holders;            ///< the jobs whose cells these are
    bool leans() const { return along > 0; }
};

/// A cell by whose floor its contents are measured: the bundle, or a cavity that nothing stands out of. Levels of what
/// stands in open vessels within it are levels of it, too.
class LevelFrame {
public:
    /// With all things that have one choice left, in cells that hold still within `root`.
    LevelFrame(const LevelModel& model, const LevelState& state, const ChoicesLeft& left, std::size_t root);

    const std::vector<LevelJob>& jobs() const { return jobs_; }
    bool holds(std::size_t vessel, std::size_t job) const;
    static bool is_in(const LevelJob& job, std::size_t cell);

    /// At which height above the beginning of one of its holders a job begins at least; nothing for an end without floor.
    std::optional<double> floor(const LevelJob& job, std::size_t holder) const;
    /// The cell of a holder in which the job lies, directly or not.
    std::size_t cell_of(const LevelJob& job, std::size_t holder) const;

    /// How far above where i begins j has to begin, if it is the one above, in a frame so high; -infinite if they may be
    /// side by side.
    double distance_apart(std::size_t i, std::size_t j, double height) const;

private:
    enum class Rim { closed, open, unknown };
    Rim rim(std::size_t cell) const;
    void add_job(int body);
    std::optional<std::size_t> common_cell(std::size_t i, std::size_t j) const;
    double least_tilt(const LevelJob& rod, double height) const;
    double distance_of_leaning(std::size_t i, std::size_t j, std::size_t cell, double height) const;
    double distance_of_round(const LevelJob& one, const LevelJob& other, const LevelRules& rules) const;
    Lying outline(const LevelJob& job, double share, const LevelRules& rules) const;

    const LevelModel& model_;
    const LevelState& state_;
    const ChoicesLeft& left_;
    std::size_t root_;
    std::vector<LevelJob> jobs_;
};

} // namespace tuckwright::nesting
