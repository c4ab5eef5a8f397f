// SPDX-License-Identifier: GPL-3.0-or-later
/// A field of a page with two scales.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/canvas.hpp"

namespace tuckwright::advice {

/// The numbers from one to another, on a scale with round marks.
struct Scale {
    double low = 0, high = 1; ///< what the field shows
    double step = 1;          ///< from mark to mark
};

/// A scale that shows all these numbers with some room beside them. Requires: at least one, finite.
Scale scale_for(const std::vector<double>& numbers);

/// Where numbers lie in a field, and what is taken in it already.
class Plot {
public:
    Plot(Canvas& canvas, const Frame& field, const Scale& across, const Scale& up)
        : canvas_(canvas), field_(field), across_(across), up_(up)
    {
    }

    Spot at(double x, double y) const;
    /// The marks with their numbers, and what they count.
    void draw_scales(const std::string& across, const std::string& up);
    void take(const Frame& frame) { taken_.push_back(frame); }
    /// Writes beside a spot where nothing is taken, as near as may be, with a line to it where that is not close. Nothing is
    /// written where there is no room.
    void label(const std::string& text, Spot beside, const TextStyle& style);

private:
    bool is_free(const Frame& frame) const;

    Canvas& canvas_;
    Frame field_;
    Scale across_, up_;
    std::vector<Frame> taken_;
};

} // namespace tuckwright::advice
