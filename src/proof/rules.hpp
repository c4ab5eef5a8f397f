// SPDX-License-Identifier: GPL-3.0-or-later
/// The rules of a bundle, one check each; DEVELOPERS.md states them. Each stops early when no more objections are kept.
#pragma once
#include "proof/findings.hpp"
#include "proof/scene.hpp"

namespace tuckwright::proof {

/// Rule 1b. What keeps apart, within or out does so, by the items' names and the forest. Requires: a sound forest.
void check_carrying(const Bundle& bundle, Findings& findings);

/// Rule 2. A cavity lies in its item's first solid, its mouths in that solid's end faces, and no further solid of the
/// item stands before a mouth.
void check_cavities(const Scene& scene, Findings& findings);

/// Rule 4. Every solid keeps to the prism of every container it is in, and above its floor.
void check_inside(const Scene& scene, Findings& findings);

/// Rule 5. A plane parts every two items of which neither holds the other.
void check_apart(const Scene& scene, Findings& findings);

/// Rule 3. A shut lid stands on its vessel's rim, over its first cavity, which is closed.
void check_lids(const Scene& scene, Findings& findings);

/// Rule 6.
void check_upright(const Scene& scene, Findings& findings);

/// Rule 7. Every item but a shut lid has one rest: lowered, its material or its shut lid's would meet the material of
/// what it rests on (solids less cavities and mouths), or would leave one of the containers it is in (within a sleeve,
/// things stand on what is below the sleeve). What is pressed into its container may be held by that alone.
void check_rests(const Scene& scene, Findings& findings);

/// Rule 7b. On what may bear nothing, or so much only, no more lies, however indirectly.
void check_loads(const Scene& scene, Findings& findings);

/// Rule 8b. What is wanted soon, or last, comes out after as many things as are told. Says nothing where steps are missing.
void check_reach(const Scene& scene, Findings& findings);

/// Rule 8. The steps are carried out one after the other.
void check_steps(const Scene& scene, Findings& findings);

/// An upper bound of the way round the convex outline of all pieces seen from above, in nanometres. Ensures: at most a
/// share of 3e-5 above it.
Rational girth_above(const std::vector<Piece>& pieces);

/// Rule 8c. Everything together passes through the bag and the bands, and is no higher than the bag closes over.
void check_girth(const Scene& scene, Findings& findings);

/// Rule 8c, a band over a lid. The lid is there once, shut before its vessel goes to its place, and the way over it and
/// under the vessel no longer than the band.
void check_hold(const Scene& scene, const Band& band, Findings& findings);

/// Rule 9.
void check_limits(const Bundle& bundle, Findings& findings);

} // namespace tuckwright::proof
