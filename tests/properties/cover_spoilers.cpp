// SPDX-License-Identifier: GPL-3.0-or-later
/// Faults of what goes round everything: bags and bands too tight, bags too short, limits without the bag's wall.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "properties/spoilers.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/units.hpp"

namespace properties {

using namespace tuckwright;
using test::Dice;

namespace {

using Point = std::array<double, 2>;

/// Points of a solid's outline seen from above: a box's corners, or many on a cylinder's rims.
void add_points(const Solid& solid, std::vector<Point>& points)
{
    const Matrix3 m = rotation_matrix(solid.pose.turn);
    const auto add = [&](double x, double y, double z) {
        points.push_back({solid.pose.center.x + m[0][0] * x + m[0][1] * y + m[0][2] * z,
                          solid.pose.center.y + m[1][0] * x + m[1][1] * y + m[1][2] * z});
    };
    if (const auto* box = std::get_if<Box>(&solid.shape)) {
        for (int k = 0; k < 8; ++k) {
            add((k & 1 ? 1 : -1) * box->length / 2, (k & 2 ? 1 : -1) * box->width / 2, (k & 4 ? 1 : -1) * box->height / 2);
        }
        return;
    }
    const auto& cylinder = std::get<Cylinder>(solid.shape);
    constexpr int around = 400;
    for (int k = 0; k < around; ++k) {
        const double angle = 2 * std::numbers::pi * k / around, r = cylinder.diameter / 2;
        add(r * std::cos(angle), r * std::sin(angle), cylinder.height / 2);
        add(r * std::cos(angle), r * std::sin(angle), -cylinder.height / 2);
    }
}

/// The way round the convex hull of points, mm. Source: A. M. Andrew's monotone chain, Inf. Process. Lett. 9(5), 1979.
double way_round(std::vector<Point> points)
{
    std::sort(points.begin(), points.end());
    std::vector<Point> hull;
    const auto right_turn = [&](const Point& c) {
        const Point &a = hull[hull.size() - 2], &b = hull.back();
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) <= 0;
    };
    for (const int pass : {0, 1}) {
        const std::size_t start = hull.size();
        for (const Point& p : points) {
            while (hull.size() >= start + 2 && right_turn(p)) {
                hull.pop_back();
            }
            hull.push_back(p);
        }
        hull.pop_back();
        if (pass == 0) {
            std::reverse(points.begin(), points.end());
        }
    }
    double sum = 0;
    for (std::size_t k = 0; k < hull.size(); ++k) {
        const Point &a = hull[k], &b = hull[(k + 1) % hull.size()];
        sum += std::hypot(b[0] - a[0], b[1] - a[1]);
    }
    return sum;
}

/// Never more than what it takes: points lie in the outline.
double girth_needed(const Bundle& bundle)
{
    std::vector<Point> points;
    for (const PlacedItem& item : bundle.items) {
        for (const Solid& solid : item.solids) {
            add_points(solid, points);
        }
    }
    return way_round(std::move(points));
}

Spoiled tighten_bag(Bundle bundle, Dice& dice)
{
    if (!bundle.bag) {
        return std::nullopt;
    }
    bundle.bag->girth = snap_down(girth_needed(bundle) - dice.between(0.05, 40));
    return to_json(bundle);
}

Spoiled tighten_band(Bundle bundle, Dice& dice)
{
    if (bundle.bands.empty()) {
        return std::nullopt;
    }
    bundle.bands[any(dice, bundle.bands.size())].girth = snap_down(girth_needed(bundle) - dice.between(0.05, 40));
    return to_json(bundle);
}

Spoiled shorten_bag(Bundle bundle, Dice& dice)
{
    if (!bundle.bag) {
        return std::nullopt;
    }
    bundle.bag->length = snap_down(height_of(bundle.envelope) - dice.between(0.001, 40));
    return to_json(bundle);
}

/// Limits that hold what is in the bag, but not the bag.
Spoiled forget_wall(Bundle bundle, Dice& dice)
{
    if (!bundle.bag) {
        return std::nullopt;
    }
    bundle.rule.height = snap(height_of(bundle.envelope) + dice.between(0, 1.9) * bundle.bag->thickness);
    return to_json(bundle);
}

/// A wider thing in a bag that is all but full.
Spoiled fatten_item(Bundle bundle, Dice& dice)
{
    if (!bundle.bag) {
        return std::nullopt;
    }
    bundle.bag->girth = snap_up(girth_needed(bundle) + 0.05);
    PlacedItem& item = bundle.items[any(dice, bundle.items.size())];
    if (auto* c = std::get_if<Cylinder>(&item.solids.front().shape)) {
        c->diameter = snap(c->diameter + dice.between(0.5, 20));
    }
    return girth_needed(bundle) > bundle.bag->girth + 0.05 ? Spoiled(to_json(bundle)) : std::nullopt;
}

} // namespace

std::vector<Spoiler> cover_spoilers()
{
    return {{"a bag too tight", tighten_bag},
            {"a band too tight", tighten_band},
            {"a bag too short", shorten_bag},
            {"limits without the bag's wall", forget_wall},
            {"a thing too wide for the bag", fatten_item}};
}

} // namespace properties
