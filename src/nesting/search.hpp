// SPDX-License-Identifier: GPL-3.0-or-later
/// The search for the smallest bundle.
#pragma once
#include <atomic>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "nesting/kit_scene.hpp"
#include "packing/layout.hpp"

namespace tuckwright::nesting {

/// How much the search does, in counts that do not depend on the machine.
struct SearchEffort {
    int starts = 24;               ///< first layouts, spread over widths from tower to flat
    int deepened = 6;              ///< how many of the best the first round works on; each further one on half as many
    int rounds = 2;                ///< rounds of that work, each on the best so far
    std::uint64_t start_work = 0;  ///< pairs of pieces measured for each start, for fifteen bodies; others in proportion
    std::uint64_t deepen_work = 0; ///< and for each layout of the first round; then for each twice as many
    std::uint64_t fill_work = 0;   ///< before the starts, for kits of boxes: see exact_fill()
    std::uint64_t box_work = 0;    ///< and of a few boxes: see least_box()
};

struct Proposal;

struct SearchOptions {
    SearchEffort effort;
    /// Whether a proposal meets what the search itself knows nothing of: that it can be put together, say. Asked of the
    /// smallest ones, from any thread; what does not is not deepened much. Nothing: all do.
    std::function<bool(const Proposal&)> accepts;
    /// Whether nothing is smaller than a volume in mm^3. Asked between rounds, of the smallest proposal; then the
    /// search ends. Nothing: it never does.
    std::function<bool(double)> is_least;
    bool aims_low = true;                    ///< whether some starts try to be no higher than some body is
    std::uint64_t seed = 1;
    unsigned threads = 1;
    std::function<void(double)> progress;    ///< each smaller volume in ml, from any thread, one at a time
    std::function<bool()> stop;              ///< asked often, from any thread
};

/// A layout free of overlap (to the polish's accuracy) within the limits.
struct Proposal {
    std::shared_ptr<const KitScene> scene;
    packing::Layout layout;
    double volume = 0; ///< mm^3
    bool is_least = false; ///< whether an exact search proved that no other can be smaller
    std::optional<bool> accepted = std::nullopt; ///< what SearchOptions::accepts() said, where it was asked
};

/// Runs the search. Ensures: proposals in rising volume, none if nothing was found within the limits; the same for any
/// number of threads unless stop() said so.
std::vector<Proposal> search(const Kit& kit, const SearchOptions& options);

} // namespace tuckwright::nesting
