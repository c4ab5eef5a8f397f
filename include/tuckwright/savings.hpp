// SPDX-License-Identifier: GPL-3.0-or-later
/// What sets the size of a kit's bundle, and what one would save with smaller things or fewer.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/chains.hpp"
#include "tuckwright/kit.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright {

/// What is asked of a thing in a chain.
enum class Change {
    a_millimetre, ///< it is a millimetre smaller
    a_tenth,      ///< it is a tenth smaller
    left_out      ///< it stays at home, or one of its copies
};

/// "a-millimetre-smaller", "a-tenth-smaller", "left-at-home".
const char* to_string(Change change);

/// Why there is no bundle where the search was stopped before.
inline constexpr const char* given_up = "the search was stopped";

/// One change of a kit, and the bundle that comes of it.
struct WhatIf {
    std::size_t item = 0; ///< index into Kit::items; all its copies get smaller
    Change change = Change::a_millimetre;
    std::optional<Dimension> side;   ///< of the thing: which of its own dimensions gets smaller
    double mm = 0;                   ///< by how much
    std::string form;                ///< the form in which it is carried, which gets smaller; empty for its own
    bool shut = false;               ///< of a lid: whether it is shut, so that what it adds gets less
    std::optional<std::size_t> also; ///< index into Kit::items: the vessel or lid that changes with it
    std::optional<Bundle> bundle;    ///< the smallest that was found, proved
    bool kept = false;               ///< whether the arrangement of the bundle can be kept then
    bool searched = false;           ///< whether that was sought anew too, not only by pushing the known together
    std::string why_not;             ///< why there is none, in words; else empty
};

/// Volume of a bundle in its bag, ml.
double packed_volume_ml(const Bundle& bundle);

/// ml by which the change makes the answer's bundle smaller; 0 where it does not. Requires: a bundle in it.
double saved_ml(const Bundle& bundle, const WhatIf& what_if);

/// The answer of `size`.
struct SizeAnswer {
    Bundle bundle;                ///< as solve() gives it, or a smaller one
    bool bettered = false;        ///< whether a what-if led to a smaller bundle of the very kit, which is told then
    bool stopped = false;         ///< whether some of the what-ifs were given up when the search was stopped
    std::vector<Chain> chains;    ///< of that bundle; none where there is none
    std::vector<WhatIf> what_ifs; ///< what saves most first; then what cannot be
};

/// Packs a kit, tells the chain for each dimension and, for each thing that counts in one, what the bundle would be if that
/// were smaller along the chain, or not there. A change is tried on the arrangement of the bundle, which is pushed together
/// again, and, as far as the work allows, by a search of its own with less effort; the smaller bundle counts. Where such a
/// search finds an arrangement that is smaller with the thing as it is, or put back, too, that becomes the bundle: what
/// chance alone has found is no saving.
/// Requires: as solve(). Ensures: check() has no objection to any of the bundles; without `seconds` or `stop` the same kit,
/// seed and effort give the same answer on any number of threads.
/// Complexity: at most fourteen searches of quick effort for up to fifteen things; for more, fewer.
SizeAnswer what_sets_the_size(const Kit& kit, const SolveOptions& options = {});

/// The kit after a change, in the what-if's words of item, side and mm; nothing where that makes no sense, and why.
std::optional<Kit> changed(const Kit& kit, WhatIf& what_if);

/// The answer for a person at the table.
std::string size_text(const Kit& kit, const SizeAnswer& answer);

/// The chains alone, of a bundle that was packed before.
std::string chains_text(const Bundle& bundle, const std::vector<Chain>& chains);

/// The answer as one JSON object ("tuckwright-size", version 1), ending in a newline; `kit` gives the words of the
/// what-ifs, of which there are none where it is not there.
std::string size_json(const Kit* kit, const SizeAnswer& answer);

} // namespace tuckwright
