// SPDX-License-Identifier: GPL-3.0-or-later
/// What sets the size of a bundle: for each of its dimensions a chain of touching things from wall to wall.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// A dimension of a bundle: the first two are those of a round one, the last three those of a box.
enum class Dimension { diameter, height, length, width };

/// "diameter", "height", "length", "width".
const char* to_string(Dimension dimension);

/// What of a thing lies between one contact and the next.
enum class StretchPart {
    whole, ///< the thing itself, from contact to contact
    base,  ///< a vessel, from its outside to the floor of its cavity
    top,   ///< a vessel, from the top of its cavity to its outside: its own lid, or a shoulder
    wall,  ///< a vessel's side wall
    lid,   ///< a shut lid: what it adds above the rim, or what is between the cavity and its top
    air,   ///< the clearance of a vessel, the hair that the search keeps at curved contacts, or slack
    bulge, ///< from the last contact to where the round wall is farthest along the chain
    bag    ///< the wall of the bag round the bundle
};

/// A part of a chain.
struct Stretch {
    StretchPart part = StretchPart::whole;
    std::optional<std::size_t> item; ///< index into Bundle::items; nothing for air, bulge and bag
    double mm = 0;                   ///< along the chain
};

/// Things that take as much as one in a chain, so that nothing is won if only that one gets smaller.
struct Rival {
    std::size_t of = 0; ///< index into Bundle::items: a thing of the chain; a vessel stands for its shut lid too
    std::vector<std::size_t> items; ///< what else the other chain goes through; never empty
};

/// Things that touch one another from one wall of the envelope to the opposite one. A straight chain cannot get shorter
/// unless something in it does. In another things touch aslant, and count with what they take along the chain's direction.
struct Chain {
    Dimension dimension = Dimension::height;
    double mm = 0;                  ///< the dimension, with the bag where there is one
    Vec3 along;                     ///< unit vector from the first wall to the last
    std::vector<Stretch> stretches; ///< in order; they add up to `mm`
    bool straight = true;           ///< whether all contacts face along it
    std::vector<Rival> rivals;      ///< where another straight chain does without something of this one
    std::vector<std::size_t>
        others; ///< further items that other chains between these walls go through, or that prop one
};

/// A chain for each dimension of the envelope: through few things, and as straight as there is one.
/// Things touch if they are within four micrometres of what they have to keep; where no chain of such is found, nearer
/// ones come first, and what is between them is a stretch of air. Requires: a bundle to which check() has no objection.
/// Ensures: in the order diameter, height, or length, width, height. The stretches add up to the dimension within 1e-9 mm.
/// The first and the last thing reach a wall. The same bundle, the same chains.
/// Complexity: quadratic in the solids, and in the contacts for each direction that is tried, of a round bundle one for
/// each contact with its wall.
std::vector<Chain> chains(const Bundle& bundle);

/// Every item that some chain of the bundle goes through, its others included, in rising order.
std::vector<std::size_t> in_chains(const std::vector<Chain>& chains);

/// What is wrong with a chain, worked out anew from the solids of the bundle: stretches that do not add up to the
/// dimension, a thing where it does not lie, is not so large or does not touch the next, an end that does not reach the
/// wall, air told as none. Nothing if it holds, to a nanometre in its sum.
/// Requires: a bundle to which check() has no objection.
std::vector<std::string> chain_faults(const Bundle& bundle, const Chain& chain);

} // namespace tuckwright
