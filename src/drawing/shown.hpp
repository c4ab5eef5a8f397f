// SPDX-License-Identifier: GPL-3.0-or-later
/// What lies together at a step: the vessel on the table, or the bundle, that is filled, and what is in it by then.
#pragma once
#include <optional>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/drawing.hpp"

namespace tuckwright::drawing {

/// A cavity as it is at the step: one that a lid closes later on is still open up to the rim.
struct Hollow {
    Solid room;
    bool open_top = true, open_bottom = false;
    std::optional<Solid> neck;
    std::optional<Solid> plug; ///< what the shut lid takes of it, up to the rim
};

struct Shown {
    std::optional<std::size_t> root;          ///< the vessel on the table; nothing: the bundle itself
    std::vector<bool> there;                  ///< for each item, whether it is drawn: root, what lies in it, what moves
    std::vector<bool> moving;                 ///< the item of the step, with all that it holds and its shut lid
    std::optional<std::size_t> item;          ///< of the step; nothing when all is done
    std::vector<std::vector<Hollow>> hollows; ///< of each item; none where its contents fill it
    std::vector<std::size_t> bands; ///< of Bundle::bands: over shut lids, and of the finished bundle round it all
    bool bag = false;               ///< whether the bag is pulled over it all
};

/// Of the finished bundle with so many of the covers that go round it all: bands in their order, then the bag.
/// Requires: a step up to the number of steps.
Shown shown_at(const Bundle& bundle, std::size_t step, std::size_t covers = all_covers);

/// The lid that is shut on a vessel in the end.
std::optional<std::size_t> lid_of(const Bundle& bundle, std::size_t item);

/// Which of a vessel's solids is the edge of its shut lid that goes down round it: that belongs to the lid.
std::optional<std::size_t> skirt_of(const Bundle& bundle, std::size_t item);

/// Whose a solid is: the lid's, if it is the edge of one, else its item's.
std::size_t owner_of(const Bundle& bundle, std::size_t item, std::size_t solid);

/// The solids of an item: without the edge of a lid if it is a vessel, with it if it is that lid.
std::vector<Solid> own_solids(const Bundle& bundle, std::size_t item);

/// What holds an item, or the vessel that it closes.
std::optional<std::size_t> parent_of(const Bundle& bundle, std::size_t item);

/// Whether an item has room for others in any step, or holds some: it is drawn so that one sees into it.
bool is_vessel(const Bundle& bundle, std::size_t item);

} // namespace tuckwright::drawing
