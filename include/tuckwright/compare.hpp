// SPDX-License-Identifier: GPL-3.0-or-later
/// Which of several kits packs best: each one packed, and told side by side.
#pragma once
#include <cstddef>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright {

/// One of the kits to compare.
struct Contender {
    std::string file; ///< where it comes from, for people
    ChosenKit chosen;
};

/// Whether a kit was packed, or why not.
enum class Trial {
    packed,    ///< it was searched; the bundle says what came of it
    ruled_out, ///< another was found that is no larger than this can be, and no heavier: it would not be marked
    left_out   ///< there were too many, or the search was stopped
};

/// One kit of a comparison.
struct Compared {
    Contender contender;
    Trial trial = Trial::left_out;
    Bundle bundle;             ///< as solve() gives it by itself; empty where it was not packed
    double lower_bound_ml = 0; ///< that of the bundle; where there is none, for any turn of anything
    double empty_g = 0;        ///< all things, bag and bands, without contents
    double contents_g = 0;
    bool unbeaten = false; ///< packed, and none that is packed is as small and as light, and better in one of them
};

struct CompareOptions {
    SolveOptions search;                                            ///< for each kit
    std::size_t most = 64;                                          ///< kits to be packed
    std::function<void(std::size_t done, std::size_t of)> progress; ///< before each kit that is packed, one call at a time
};

struct Comparison {
    std::uint64_t seed = 1;
    std::string effort;
    std::size_t most = 64;
    bool stopped = false; ///< by SolveOptions::stop
    std::vector<Compared>
        kits; ///< those with a bundle by volume, then those packed in vain, then the others by their bound
};

/// Packs each kit by itself, all if there are no more than `most`, else those that hope for most: in the order of how many
/// others have both a smaller bound and less weight, and none that is ruled out by what has been found.
/// Requires: at least one kit, each sound. Ensures: same kits, seed, effort and `most` give the same comparison unless
/// `seconds` or `stop` cut in; a volume counts as larger than another from 0.01 % on. Complexity: `most` searches.
Comparison compare(std::vector<Contender> contenders, const CompareOptions& options = {});

/// For a person at the table: one table, what differs, and what follows from it, at 100 columns.
/// Requires: at least one kit.
std::string text_report(const Comparison& comparison);

/// One JSON object ("tuckwright-comparison", version 1), ending in a newline.
/// Requires: the same.
std::string to_json(const Comparison& comparison);

} // namespace tuckwright
