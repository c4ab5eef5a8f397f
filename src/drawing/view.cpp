// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "drawing/covers.hpp"
#include "drawing/faces.hpp"
#include "drawing/handled.hpp"
#include "drawing/palette.hpp"
#include "drawing/stage.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright {

namespace drawing {

namespace {

constexpr double yaw = 25, pitch = 32; ///< degrees: how far the slanted view is turned and raised

std::optional<double> usual_scale(double least)
{
    for (const double decade : {1.0, 10.0, 100.0}) {
        for (const double step : {1.0, 1.2, 1.5, 1.8, 2.0, 2.2, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 6.0, 7.0, 8.0, 9.0}) {
            if (decade * step >= least) {
                return decade * step;
            }
        }
    }
    return std::nullopt;
}

double least_scale(const Bundle& bundle, View view, PageSize frame, std::size_t step, const ViewOptions& options)
{
    const Shown shown = shown_at(bundle, step, options.covers);
    const Margins m = margins_of(bundle, shown, view, options);
    const Frame content = content_of(bundle, shown, camera_of(view, cut_for(bundle, shown)));
    const double width = frame.width - m.left - m.right, height = frame.height - m.top - m.bottom;
    require(width > 1 && height > 1, "a frame has room for labels and dimensions");
    return std::max(content.width / width, content.height / height);
}

} // namespace

Frame content_of(const Bundle& bundle, const Shown& shown, const Camera& camera)
{
    Spot low{1e9, 1e9}, high{-1e9, -1e9};
    const auto take = [&](const Solid& solid) {
        const Hull hull = hull_of(solid);
        low.x = std::min(low.x, -support(hull, -1.0 * camera.right));
        high.x = std::max(high.x, support(hull, camera.right));
        low.y = std::min(low.y, -support(hull, camera.up));
        high.y = std::max(high.y, support(hull, -1.0 * camera.up));
    };
    if (!shown.root) {
        take(shown.bag ? bag_solid(bundle) : envelope_solid(bundle));
    }
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        if (shown.there[i]) {
            std::for_each(bundle.items[i].solids.begin(), bundle.items[i].solids.end(), take);
        }
    }
    return {low.x, low.y, high.x - low.x, high.y - low.y};
}

Camera camera_of(View view, const Cut& cut)
{
    return view == View::above ? from_above() : view == View::slanted ? from_the_side(yaw, pitch) : cut.camera;
}

Margins margins_of(const Bundle& bundle, const Shown& shown, View view, const ViewOptions& options)
{
    const double label = options.labels ? 5.2 : 1, dimension = options.dimensions && view != View::slanted ? 7 : 1;
    const bool cut_marks = options.cut_marks && view == View::above;
    const bool sides = view == View::cutaway || std::holds_alternative<Box>(bundle.envelope);
    const double arrow = shown.item && view != View::above ? 10 : 1;
    Margins m{label, arrow, label, dimension};
    if (sides && dimension > 1) { // its words stand above its upper end
        m.right = std::max(label, 8.5);
        m.top = std::max(m.top, 4.5);
    }
    if (options.labels && (shown.bag || !shown.bands.empty())) { // names of covers stand above
        m.top = std::max(m.top, 8.5);
    }
    if (cut_marks) {
        m = {std::max(m.left, cut_mark), std::max(m.top, cut_mark), m.right > label ? m.right + cut_mark - 1 : cut_mark,
             m.bottom + cut_mark};
    }
    return m;
}

Stage::Stage(Canvas& to, const Frame& where, const Bundle& of, std::size_t at, View as, const ViewOptions& how)
    : canvas(to), bundle(of), step(at), view(as), options(how), frame(where), shown(shown_at(of, at, how.covers)),
      cut(cut_for(of, shown)), camera(camera_of(as, cut)), content(content_of(of, shown, camera)), seen(where)
{
    const Margins m = margins_of(bundle, shown, view, options);
    const double width = content.width / options.scale, height = content.height / options.scale;
    const double spare_x = frame.width - m.left - m.right - width, spare_y = frame.height - m.top - m.bottom - height;
    require(spare_x > -1e-6 && spare_y > -1e-6, "a view's scale lets it fit into its frame");
    window = {frame.x + m.left + spare_x / 2, frame.y + m.top + spare_y / 2, width, height};
    if (options.keep_clear) {
        taken.push_back(*options.keep_clear);
    }
    offset = {window.x - content.x / options.scale, window.y - content.y / options.scale};
}

Spot Stage::on_paper(Vec3 p) const
{
    const Spot s = camera.project(p);
    return {s.x / options.scale + offset.x, s.y / options.scale + offset.y};
}

bool Stage::is_free(const Frame& place) const
{
    constexpr double air = 0.3;
    if (place.x < frame.x || place.y < frame.y || place.right() > frame.right() || place.bottom() > frame.bottom()) {
        return false;
    }
    return std::none_of(taken.begin(), taken.end(), [&](const Frame& other) {
        return place.x < other.right() + air && other.x < place.right() + air && place.y < other.bottom() + air &&
               other.y < place.bottom() + air;
    });
}

void paint_room(Stage& stage)
{
    if (stage.shown.root || stage.shown.bag) {
        return;
    }
    const Pen pen{palette::faint, 0.2, 1.2, 0.8};
    const Solid outline = envelope_solid(stage.bundle);
    if (stage.view == View::slanted) {
        const Hollow floor{outline, true, false, {}, {}};
        stage.canvas.draw(stage.on_paper(inner_faces(floor, stage.camera).back().area), pen);
    } else {
        stage.canvas.draw(stage.on_paper(Path::polygon(outline_behind(outline, stage.camera, std::nullopt))), pen);
    }
}

} // namespace drawing

double fitting_scale(const Bundle& bundle, View view, PageSize frame, std::size_t step, const ViewOptions& options)
{
    const auto scale =
        drawing::usual_scale(drawing::least_scale(drawing::as_handled(bundle, step), view, frame, step, options));
    require(scale.has_value(), "things are no longer than the longest length");
    return *scale;
}

double fitting_scale(const Bundle& bundle, View view, PageSize frame)
{
    double scale = 1;
    for (std::size_t step = 0; step <= bundle.steps.size(); ++step) {
        scale = std::max(scale, fitting_scale(bundle, view, frame, step));
    }
    return scale;
}

void draw_view(Canvas& canvas, const Frame& frame, const Bundle& bundle, std::size_t step, View view,
               const ViewOptions& options)
{
    require(has_bundle(bundle.status), "there is a bundle to be drawn");
    const Bundle handled = drawing::as_handled(bundle, step);
    drawing::Stage stage(canvas, frame, handled, step, view, options);
    drawing::paint_room(stage);
    drawing::paint_things(stage);
    drawing::paint_covers(stage);
    drawing::paint_way(stage);
    if (options.cut_marks && view == View::above) {
        drawing::paint_cut_marks(stage);
    }
    if (options.dimensions) {
        drawing::paint_dimensions(stage);
    }
    drawing::paint_tip(stage);
    if (options.labels) {
        drawing::paint_labels(stage);
        drawing::paint_cover_names(stage);
    }
}

} // namespace tuckwright
