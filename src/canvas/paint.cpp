// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/paint.hpp"

#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tuckwright/contract.hpp"

namespace tuckwright::canvas {

namespace {

void lay(cairo_t* to, const Path& path)
{
    cairo_new_path(to);
    for (const auto& s : path.segments()) {
        switch (s.kind) {
        case Path::Kind::move: cairo_move_to(to, s.to.x, s.to.y); break;
        case Path::Kind::line: cairo_line_to(to, s.to.x, s.to.y); break;
        case Path::Kind::curve: cairo_curve_to(to, s.first.x, s.first.y, s.second.x, s.second.y, s.to.x, s.to.y); break;
        case Path::Kind::close: cairo_close_path(to); break;
        }
    }
}

void set_color(cairo_t* to, const Color& color, double opacity)
{
    if (opacity < 1) {
        cairo_set_source_rgba(to, color.red, color.green, color.blue, opacity);
    } else {
        cairo_set_source_rgb(to, color.red, color.green, color.blue);
    }
}

/// The part of a line (a point and a unit vector) within a frame, laid as a piece of the path; nothing if there is none.
void lay_within(cairo_t* to, Spot point, Spot along, const Frame& frame)
{
    double from = -1e9, until = 1e9;
    const auto cut = [&](double at, double slope, double low, double high) {
        if (std::abs(slope) < 1e-12) {
            until = at < low || at > high ? from : until;
            return;
        }
        const double a = (low - at) / slope, b = (high - at) / slope;
        from = std::max(from, std::min(a, b));
        until = std::min(until, std::max(a, b));
    };
    cut(point.x, along.x, frame.x, frame.right());
    cut(point.y, along.y, frame.y, frame.bottom());
    if (from < until) {
        cairo_move_to(to, point.x + from * along.x, point.y + from * along.y);
        cairo_line_to(to, point.x + until * along.x, point.y + until * along.y);
    }
}

/// The lines of a hatch are those of the whole page, so that neighbouring areas fit together.
void hatch(cairo_t* to, const Path& path, const Hatch& hatch)
{
    require(hatch.spacing > 0.05, "hatch lines lie apart");
    const double angle = hatch.angle * std::numbers::pi / 180;
    const Spot along{std::cos(angle), -std::sin(angle)}, across{std::sin(angle), std::cos(angle)};
    const Frame f = path.bounds();
    double low = 1e9, high = -1e9;
    for (const Spot corner : {Spot{f.x, f.y}, {f.right(), f.y}, {f.x, f.bottom()}, {f.right(), f.bottom()}}) {
        const double level = corner.x * across.x + corner.y * across.y;
        low = std::min(low, level);
        high = std::max(high, level);
    }
    cairo_save(to);
    lay(to, path);
    cairo_clip(to);
    cairo_new_path(to);
    for (double k = std::ceil(low / hatch.spacing); k * hatch.spacing < high; ++k) {
        lay_within(to, {k * hatch.spacing * across.x, k * hatch.spacing * across.y}, along, f);
    }
    set_color(to, hatch.color, hatch.opacity);
    cairo_set_line_width(to, hatch.width);
    cairo_set_dash(to, nullptr, 0, 0);
    cairo_stroke(to);
    cairo_restore(to);
}

void draw(cairo_t* to, const Stroke& mark)
{
    if (mark.fill && mark.fill->color) {
        lay(to, mark.path);
        set_color(to, *mark.fill->color, mark.fill->opacity);
        cairo_fill(to);
    }
    if (mark.fill && mark.fill->hatch) {
        hatch(to, mark.path, *mark.fill->hatch);
    }
    if (mark.pen) {
        lay(to, mark.path);
        set_color(to, mark.pen->color, mark.pen->opacity);
        cairo_set_line_width(to, mark.pen->width);
        const double dashes[] = {mark.pen->dash, mark.pen->gap};
        cairo_set_dash(to, dashes, mark.pen->dash > 0 ? 2 : 0, 0);
        cairo_stroke(to);
    }
}

void draw(cairo_t* to, const Writing& mark)
{
    cairo_save(to);
    set_color(to, mark.color, 1);
    cairo_translate(to, mark.corner.x + mark.layout.origin.x, mark.corner.y + mark.layout.origin.y);
    cairo_scale(to, 1 / text_units, 1 / text_units);
    cairo_move_to(to, 0, 0);
    pango_cairo_show_layout(to, mark.layout.lines.get());
    cairo_restore(to);
}

void draw(cairo_t* to, const ClipBegin& mark)
{
    cairo_save(to);
    lay(to, mark.path);
    cairo_clip(to);
}

void draw(cairo_t* to, const ClipEnd& /*mark*/) { cairo_restore(to); }

} // namespace

void paint(cairo_t* to, const Page& page)
{
    cairo_set_line_join(to, CAIRO_LINE_JOIN_ROUND);
    cairo_set_line_cap(to, CAIRO_LINE_CAP_ROUND);
    cairo_set_fill_rule(to, CAIRO_FILL_RULE_EVEN_ODD);
    for (const Mark& mark : page) {
        std::visit([to](const auto& one) { draw(to, one); }, mark);
    }
}

} // namespace tuckwright::canvas
