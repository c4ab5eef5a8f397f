// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/pictures.hpp"

#include "tuckwright/drawing.hpp"

namespace tuckwright::card {

void draw_step(Canvas& canvas, const Frame& frame, const Bundle& bundle, std::optional<std::size_t> step)
{
    const std::size_t shown = step.value_or(bundle.steps.size());
    const double scale = fitting_scale(bundle, View::cutaway, {frame.width, frame.height}, shown);
    draw_view(canvas, frame, bundle, shown, View::cutaway, {.scale = scale, .dimensions = false, .cut_marks = false});
}

void draw_whole(Canvas& canvas, const Frame& frame, const Bundle& bundle)
{
    const std::size_t whole = bundle.steps.size();
    const double scale = fitting_scale(bundle, View::slanted, {frame.width, frame.height}, whole);
    draw_view(canvas, frame, bundle, whole, View::slanted, {.scale = scale});
}

} // namespace tuckwright::card
