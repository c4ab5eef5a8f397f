// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <numbers>

#include "tuckwright/canvas.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright {

namespace {

/// The parameters strictly within a cubic Bézier curve at which one of its coordinates turns round.
std::vector<double> turning_points(double p0, double p1, double p2, double p3)
{
    const double a = -p0 + 3 * p1 - 3 * p2 + p3, b = 2 * (p0 - 2 * p1 + p2), c = p1 - p0; // a t^2 + b t + c
    std::vector<double> found;
    const auto add = [&](double t) {
        if (t > 0 && t < 1) {
            found.push_back(t);
        }
    };
    if (const double disc = b * b - 4 * a * c; disc >= 0) {
        const double q = -0.5 * (b + std::copysign(std::sqrt(disc), b)); // no cancellation
        if (a != 0) {
            add(q / a);
        }
        if (q != 0) {
            add(c / q);
        }
    }
    return found;
}

double bezier(double p0, double p1, double p2, double p3, double t)
{
    const double u = 1 - t;
    return u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3;
}

} // namespace

Path& Path::move_to(Spot to)
{
    segments_.push_back({Kind::move, to});
    return *this;
}

Path& Path::line_to(Spot to)
{
    segments_.push_back({segments_.empty() ? Kind::move : Kind::line, to});
    return *this;
}

Path& Path::curve_to(Spot first, Spot second, Spot to)
{
    require(!segments_.empty(), "a curve starts where something is already");
    segments_.push_back({Kind::curve, to, first, second});
    return *this;
}

Path& Path::close()
{
    segments_.push_back({Kind::close});
    return *this;
}

Path& Path::arc(Spot middle, Spot first, Spot second, double from, double to)
{
    // Four curves a turn, each with its control points 4/3 tan(angle / 4) along the tangents.
    const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(to - from) / (std::numbers::pi / 2) - 1e-9)));
    const double step = (to - from) / pieces, reach = 4.0 / 3 * std::tan(step / 4);
    const auto at = [&](double t, double along) {
        const double c = std::cos(t) - along * std::sin(t), s = std::sin(t) + along * std::cos(t);
        return Spot{middle.x + c * first.x + s * second.x, middle.y + c * first.y + s * second.y};
    };
    line_to(at(from, 0));
    for (int k = 0; k < pieces; ++k) {
        const double t = from + k * step;
        curve_to(at(t, reach), at(t + step, -reach), at(t + step, 0));
    }
    return *this;
}

Path& Path::add(const Path& other)
{
    segments_.insert(segments_.end(), other.segments_.begin(), other.segments_.end());
    return *this;
}

Path Path::placed(double scale, Spot by) const
{
    Path path = *this;
    for (Segment& s : path.segments_) {
        for (Spot* spot : {&s.to, &s.first, &s.second}) {
            *spot = {scale * spot->x + by.x, scale * spot->y + by.y};
        }
    }
    return path;
}

Path Path::line(Spot from, Spot to) { return polyline({from, to}); }

Path Path::polyline(const std::vector<Spot>& corners)
{
    Path path;
    for (const Spot& corner : corners) {
        path.line_to(corner);
    }
    return path;
}

Path Path::polygon(const std::vector<Spot>& corners)
{
    Path path = polyline(corners);
    path.close();
    return path;
}

Path Path::rectangle(const Frame& f)
{
    return polygon({{f.x, f.y}, {f.right(), f.y}, {f.right(), f.bottom()}, {f.x, f.bottom()}});
}

Path Path::ellipse(Spot middle, Spot first, Spot second)
{
    Path path;
    path.arc(middle, first, second, 0, 2 * std::numbers::pi).close();
    return path;
}

Path Path::circle(Spot middle, double radius) { return ellipse(middle, {radius, 0}, {0, radius}); }

Frame Path::bounds() const
{
    require(!segments_.empty(), "only what holds something has bounds");
    Spot low = segments_.front().to, high = low, at = low;
    const auto take = [&](Spot s) {
        low = {std::min(low.x, s.x), std::min(low.y, s.y)};
        high = {std::max(high.x, s.x), std::max(high.y, s.y)};
    };
    for (const Segment& s : segments_) {
        if (s.kind == Kind::close) {
            continue;
        }
        take(s.to);
        if (s.kind == Kind::curve) {
            for (const double t : turning_points(at.x, s.first.x, s.second.x, s.to.x)) {
                take({bezier(at.x, s.first.x, s.second.x, s.to.x, t), at.y});
            }
            for (const double t : turning_points(at.y, s.first.y, s.second.y, s.to.y)) {
                take({at.x, bezier(at.y, s.first.y, s.second.y, s.to.y, t)});
            }
        }
        at = s.to;
    }
    return {low.x, low.y, high.x - low.x, high.y - low.y};
}

} // namespace tuckwright
