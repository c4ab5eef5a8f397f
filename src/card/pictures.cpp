// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/pictures.hpp"

#include "tuckwright/drawing.hpp"

namespace tuckwright::card {

namespace {

/// As large as it goes into the frame.
void fit(Canvas& canvas, const Frame& frame, const Bundle& bundle, std::size_t step, View view, ViewOptions options)
{
    options.scale = fitting_scale(bundle, view, {frame.width, frame.height}, step, options);
    draw_view(canvas, frame, bundle, step, view, options);
}

} // namespace

void draw_step(Canvas& canvas, const Frame& frame, const Bundle& bundle, const Step& step)
{
    constexpr double share = 0.6, gap = 1; // of the width, for the slanted view; mm
    const ViewOptions plain{.labels = false, .dimensions = false, .cut_marks = false, .covers = step.covers};
    const ViewOptions named{.labels = true,
                            .dimensions = false,
                            .cut_marks = false,
                            .keep_clear = Frame{frame.x, frame.y, 2 * badge, 2 * badge},
                            .covers = step.covers};
    const double slanted = share * frame.width;
    fit(canvas, {frame.x, frame.y, slanted, frame.height}, bundle, step.step, View::slanted, named);
    fit(canvas, {frame.x + slanted + gap, frame.y, frame.width - slanted - gap, frame.height}, bundle, step.step,
        View::above, plain);
}

void draw_whole(Canvas& canvas, const Frame& frame, const Bundle& bundle)
{
    fit(canvas, frame, bundle, bundle.steps.size(), View::slanted, {});
}

} // namespace tuckwright::card
