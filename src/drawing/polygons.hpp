// SPDX-License-Identifier: GPL-3.0-or-later
/// Areas bounded by straight lines: convex outlines, and areas put together and taken from one another.
#pragma once
#include <memory>
#include <vector>

#include "tuckwright/canvas.hpp"

namespace tuckwright::drawing {

/// Corners of the convex hull, in order, the first not repeated; fewer than three where it has no area.
std::vector<Spot> convex_outline(const std::vector<Spot>& points);

/// How much two outlines, neither of which crosses itself, have in common: mm^2.
double common_area(const std::vector<Spot>& one, const std::vector<Spot>& other);

/// An area that may have holes and several parts.
class Area {
public:
    Area();
    ~Area();
    Area(const Area&) = delete;
    Area& operator=(const Area&) = delete;

    void add(const std::vector<Spot>& outline);    ///< Requires: at least three corners.
    void remove(const std::vector<Spot>& outline); ///< the same
    Path path() const;

private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

} // namespace tuckwright::drawing
