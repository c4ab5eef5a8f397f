// SPDX-License-Identifier: GPL-3.0-or-later
/// Pictures of a packed bundle, step by step: cut open, from above, and slanted with vessels that one can see through.
/// In all of them an item has the number of its place in Bundle::items, from 1.
#pragma once
#include <cstddef>
#include <optional>
#include <string>

#include "tuckwright/bundle.hpp"
#include "tuckwright/canvas.hpp"

namespace tuckwright {

enum class View {
    cutaway, ///< cut along an upright plane, through the axis of what is filled where that meets the item of the step
    above,   ///< straight from above, the front below
    slanted  ///< from the front, a little from the right and from above; vessels and shut lids can be seen through
};

/// All bands and the bag that go round the finished bundle.
inline constexpr std::size_t all_covers = static_cast<std::size_t>(-1);

struct ViewOptions {
    double scale = 2;       ///< mm of the things in one mm of paper
    bool labels = true;     ///< each item's name where it fits in, else its number
    bool dimensions = true; ///< of what is filled: the bundle, or the vessel on the table
    bool cut_marks = true;  ///< in the view from above, the ends of the line along which the cutaway is cut
    std::optional<Frame> keep_clear = std::nullopt; ///< of the page: no label goes there
    std::size_t covers = all_covers; ///< of the finished bundle: how many are round it, bands in their order, then the bag
};

/// Draws the bundle at a step, in the middle of a frame: the vessel that is filled on the table, or the bundle, with all
/// that lies in it by then, and the item of this step, hatched and in heavy lines, in its place with an arrow along its
/// way. A vessel on the table stands with its mouth up, however it ends; where it is put in otherwise, a sign says so. The
/// step behind the last is the finished bundle, with its bands and its bag: a band over a lid is a loop in an upright plane
/// through the middle of its vessel, one round it all a loop at the height at which most things are, and the bag a ring as
/// thick as its wall round the whole outline. Where the item of the step is hidden, or cut away, its outline is drawn in
/// dashes; all else that is hidden or cut away is left out.
/// Requires: a bundle with its steps, a step up to their number, and a scale that lets it fit into the frame (contract).
/// Ensures: nothing is drawn outside the frame, and no label on another. Complexity: quadratic in the solids.
void draw_view(Canvas& canvas, const Frame& frame, const Bundle& bundle, std::size_t step, View view,
               const ViewOptions& options = {});

/// The largest usual scale (1, 1.2, 1.5, 1.8, 2, 2.2, 2.5, 3 and so on mm in one) at which a view of every step, or of the one
/// given, fits into a frame of that size with its labels and dimensions, or with those that the options ask for. Requires: a
/// frame of 30 mm by 30 mm at least; of 15 mm by 15 mm without labels, dimensions and marks.
double fitting_scale(const Bundle& bundle, View view, PageSize frame);
double fitting_scale(const Bundle& bundle, View view, PageSize frame, std::size_t step, const ViewOptions& options = {});

/// A line of so many mm of the things, with its length above it and the scale behind: what takes 45 mm by 7 mm of paper.
void draw_scale_bar(Canvas& canvas, Spot corner, double scale);

/// What the signs of a step mean, in one line: what takes 98 mm by 5 mm of paper.
void draw_legend(Canvas& canvas, Spot corner);

/// "Tea on the pier: step 3 of 6", and "Tea on the pier: packed" of the finished bundle.
std::string step_title(const Bundle& bundle, std::size_t step);

/// One page for each step, and a last one for the finished bundle: its words, the three views, the scale, and the list of
/// what can be seen. Requires: a bundle to which check() has no objection. Ensures: the same bundle, the same pages.
Canvas step_pictures(const Bundle& bundle);

} // namespace tuckwright
