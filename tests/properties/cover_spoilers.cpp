// SPDX-License-Identifier: GPL-3.0-or-later
/// Faults of bags and bands: too tight or too short, over no lid, limits without the bag's wall.
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

/// The first band that holds a lid, or that goes round everything.
Band* band_that(Bundle& bundle, bool holds)
{
    const auto found = std::find_if(bundle.bands.begin(), bundle.bands.end(),
                                    [&](const Band& band) { return band.over.empty() != holds; });
    return found == bundle.bands.end() ? nullptr : &*found;
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
    Band* level = band_that(bundle, false);
    if (level == nullptr) {
        return std::nullopt;
    }
    level->girth = snap_down(girth_needed(bundle) - dice.between(0.05, 40));
    return to_json(bundle);
}

/// From end to end along a direction.
double span(const std::vector<std::array<double, 3>>& points, const std::array<double, 3>& along)
{
    double low = 1e300, high = -1e300;
    for (const auto& p : points) {
        const double at = p[0] * along[0] + p[1] * along[1] + p[2] * along[2];
        low = std::min(low, at);
        high = std::max(high, at);
    }
    return high - low;
}

/// Never more than what the band that holds a lid is proved to need: points of lid and vessel, seen along the vessel's
/// axes.
double way_over(const Bundle& bundle, std::size_t lid)
{
    const PlacedItem& vessel = bundle.items[*bundle.items[lid].closes];
    const Matrix3 m = rotation_matrix(vessel.solids.front().pose.turn);
    std::vector<std::array<double, 3>> points;
    const auto add = [&](const Solid& solid) {
        constexpr int around = 64;
        const Matrix3 own = rotation_matrix(solid.pose.turn);
        const auto* box = std::get_if<Box>(&solid.shape);
        const auto* c = std::get_if<Cylinder>(&solid.shape);
        for (int k = 0; k < 2 * around; ++k) {
            const double angle = 2 * std::numbers::pi * (k / 2) / around, up = k % 2 == 0 ? 0.5 : -0.5;
            const double x = box ? (k & 2 ? 0.5 : -0.5) * box->length : c->diameter / 2 * std::cos(angle);
            const double y = box ? (k & 4 ? 0.5 : -0.5) * box->width : c->diameter / 2 * std::sin(angle);
            const double z = up * height_of(solid.shape);
            points.push_back({solid.pose.center.x + own[0][0] * x + own[0][1] * y + own[0][2] * z,
                              solid.pose.center.y + own[1][0] * x + own[1][1] * y + own[1][2] * z,
                              solid.pose.center.z + own[2][0] * x + own[2][1] * y + own[2][2] * z});
        }
    };
    std::for_each(vessel.solids.begin(), vessel.solids.end(), add);
    add(bundle.items[lid].solids.front());
    const auto along = [&](std::size_t k) { return span(points, {m[0][k], m[1][k], m[2][k]}); };
    return 2 * (std::min(along(0), along(1)) + along(2));
}

/// A band on some shut lid, other than those that are there.
Spoiled add_short_lid_band(Bundle bundle, Dice& dice)
{
    std::vector<std::size_t> lids;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        if (bundle.items[item].closes) {
            lids.push_back(item);
        }
    }
    if (lids.empty()) {
        return std::nullopt;
    }
    const std::size_t lid = lids[any(dice, lids.size())];
    Band band{"a-band", "A band", 3, snap_down(way_over(bundle, lid) - dice.between(0.05, 40)), bundle.items[lid].id};
    bundle.bands.push_back(band);
    for (Step& step : bundle.steps) {
        step.text += step.item == lid ? " " + lid_band_step(bundle, band) : "";
    }
    return to_json(bundle);
}

/// A band that holds what is no shut lid.
Spoiled hold_no_lid(Bundle bundle, Dice& dice)
{
    Band* held = band_that(bundle, true);
    const PlacedItem& item = bundle.items[any(dice, bundle.items.size())];
    if (held == nullptr || item.closes) {
        return std::nullopt;
    }
    held->over = dice.between(0, 1) < 0.3 ? "nothing-of-that-name" : item.id;
    const auto texts = step_texts(bundle);
    for (std::size_t k = 0; k < texts.size(); ++k) {
        bundle.steps[k].text = texts[k];
    }
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
            {"a band too short for its lid", add_short_lid_band},
            {"a band over no lid", hold_no_lid},
            {"a bag too short", shorten_bag},
            {"limits without the bag's wall", forget_wall},
            {"a thing too wide for the bag", fatten_item}};
}

} // namespace properties
