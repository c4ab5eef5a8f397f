// SPDX-License-Identifier: GPL-3.0-or-later
// A cylinder of diameter d and height h whose unit axis has the component t = sin(a) along some direction reaches
//     h sin(a) + d cos(a) = D cos(a - a0),  D = hypot(h, d),  tan(a0) = h / d
// along it. So a limit L < D leaves out an open interval of angles about a0, |a - a0| < arccos(L / D), and two closed
// intervals may remain, of the angle and of its sine's square. In a box the three squares sum to 1, and any three that
// do are those of some axis: a turn within the limits exists if and only if, for some choice of one interval for each
// axis, the sum of the lower ends is at most 1 and that of the upper ends at least 1.
//
// In a round bundle the angle a is that between the axis and the level. Seen from above, the outline is the hull of two
// congruent ellipses, whose smallest enclosing circle is about its middle, for it is its own mirror image through that.
// Its diameter comes out as D while tan(a) <= d / h, and as h cos(a) + d sin(a) from there on: never rising with a. So
// a limit of the diameter asks for a least angle, and one of the height leaves out an interval as above.
#include "nesting/misfit.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <vector>

namespace tuckwright::nesting {

namespace {

/// Relative: limits are taken as so much wider, which is far more than rounding can matter, and far less than the grid.
constexpr double safety = 1e-9;
constexpr double quarter_turn = std::numbers::pi / 2;
/// Radians, and squares of sines: what angles may be off by rounding, widely.
constexpr double rounding = 1e-12;

/// The least dimension of an item, the diameter of the largest flat disc that it holds, and its longest line.
struct Sizes {
    double least, disc, diagonal;
};

Sizes sizes(const Shape& shape)
{
    if (const auto* c = std::get_if<Cylinder>(&shape)) {
        return {std::min(c->diameter, c->height), c->diameter, std::hypot(c->diameter, c->height)};
    }
    const auto& b = std::get<Box>(shape);
    std::array<double, 3> d{b.length, b.width, b.height};
    std::sort(d.begin(), d.end());
    return {d[0], d[1], std::hypot(b.length, b.width, b.height)};
}

/// A cylinder that lies within an item, and whether its axis is the item's own upright one.
struct Inscribed {
    double diameter, height;
    bool along_upright;
};

/// A cylinder itself; for a box, the widest along each edge.
std::vector<Inscribed> inscribed(const Shape& shape)
{
    if (const auto* c = std::get_if<Cylinder>(&shape)) {
        return {{c->diameter, c->height, true}};
    }
    const auto& b = std::get<Box>(shape);
    return {{std::min(b.length, b.width), b.height, true},
            {std::min(b.length, b.height), b.width, false},
            {std::min(b.width, b.height), b.length, false}};
}

struct Interval {
    double low, high;
};

/// Angles from 0 to a quarter turn between a cylinder's axis and a plane, at which it reaches no further than the limit
/// along the plane's normal.
std::vector<Interval> angles_within(const Inscribed& c, const std::optional<double>& limit)
{
    const double longest = std::hypot(c.height, c.diameter);
    const double ratio = limit ? *limit * (1 + safety) / longest : 1;
    if (ratio >= 1) {
        return {{0, quarter_turn}};
    }
    const double worst = std::atan2(c.height, c.diameter), left_out = std::acos(ratio);
    std::vector<Interval> found;
    if (worst - left_out >= -rounding) {
        found.push_back({0, std::max(0.0, worst - left_out)});
    }
    if (worst + left_out <= quarter_turn + rounding) {
        found.push_back({std::min(worst + left_out, quarter_turn), quarter_turn});
    }
    return found;
}

/// The same, of an upright item: its own axis has only a quarter turn, what is across to it none.
std::vector<Interval> upright_only(const std::vector<Interval>& angles, bool along_upright)
{
    const double angle = along_upright ? quarter_turn : 0;
    for (const Interval& i : angles) {
        if (i.low <= angle && angle <= i.high) {
            return {{angle, angle}};
        }
    }
    return {};
}

double square_of_sine(double angle) { return std::sin(angle) * std::sin(angle); }

/// Whether one square out of an interval of each axis can be chosen so that they sum to 1.
bool can_sum_to_one(const std::array<std::vector<Interval>, 3>& axes)
{
    for (const Interval& x : axes[0]) {
        for (const Interval& y : axes[1]) {
            for (const Interval& z : axes[2]) {
                const double least = square_of_sine(x.low) + square_of_sine(y.low) + square_of_sine(z.low);
                const double most = square_of_sine(x.high) + square_of_sine(y.high) + square_of_sine(z.high);
                if (least <= 1 + rounding && most >= 1 - rounding) {
                    return true;
                }
            }
        }
    }
    return false;
}

bool box_has_room(const Inscribed& c, const BundleRule& rule, bool upright)
{
    std::array<std::vector<Interval>, 3> axes{angles_within(c, rule.length), angles_within(c, rule.width),
                                              angles_within(c, rule.height)};
    if (upright) {
        axes[2] = upright_only(axes[2], c.along_upright);
    }
    return can_sum_to_one(axes);
}

/// The least angle between the axis and the level at which the cylinder, seen from above, is within the diameter.
std::optional<double> least_angle_within(const Inscribed& c, const std::optional<double>& diameter)
{
    const double longest = std::hypot(c.height, c.diameter);
    const double ratio = diameter ? *diameter * (1 + safety) / longest : 1;
    if (ratio >= 1) {
        return 0;
    }
    const double least = std::atan2(c.diameter, c.height) + std::acos(ratio);
    return least <= quarter_turn + rounding ? std::optional(least) : std::nullopt;
}

bool round_bundle_has_room(const Inscribed& c, const BundleRule& rule, bool upright)
{
    const auto least = least_angle_within(c, rule.diameter);
    std::vector<Interval> angles = angles_within(c, rule.height);
    if (upright) {
        angles = upright_only(angles, c.along_upright);
    }
    return least &&
           std::any_of(angles.begin(), angles.end(), [&](const Interval& i) { return i.high >= *least - rounding; });
}

std::string mm(double value) { return fmt::format("{:g} mm", std::round(value * 1000) / 1000); }

/// "the pump, 186 mm long": by its longest dimension.
std::string with_size(const Item& item)
{
    if (const auto* c = std::get_if<Cylinder>(&item.outside)) {
        return c->height > c->diameter ? fmt::format("the {}, {} long,", item.id, mm(c->height))
                                       : fmt::format("the {}, {} across,", item.id, mm(c->diameter));
    }
    const auto& b = std::get<Box>(item.outside);
    return fmt::format("the {}, {} long,", item.id, mm(std::max({b.length, b.width, b.height})));
}

/// Whatever its turn: no item is flatter than its least dimension, and a disc is as wide as itself seen from any side.
std::optional<std::string> too_thick(const Item& item, const BundleRule& rule)
{
    const Sizes s = sizes(item.outside);
    const bool round = rule.shape == BundleShape::cylinder;
    const std::array<std::pair<std::optional<double>, const char*>, 3> sides{
        {{rule.length, "length"}, {rule.width, "width"}, {round ? std::nullopt : rule.height, "height"}}};
    for (const auto& [limit, name] : sides) {
        if (limit && s.least > *limit) {
            return fmt::format("the {} alone is at least {} thick however it lies, the limit of the {} is {}", item.id,
                               mm(s.least), name, mm(*limit));
        }
    }
    if (rule.diameter && s.disc > *rule.diameter) {
        return fmt::format("the {} alone is {} across, the limit is {}", item.id, mm(s.disc), mm(*rule.diameter));
    }
    if (rule.height && item.upright && height_of(item.outside) > *rule.height) {
        return fmt::format("the {} must stand upright and is {} high, the limit is {}", item.id,
                           mm(height_of(item.outside)), mm(*rule.height));
    }
    if (rule.height && s.least > *rule.height) {
        return fmt::format("the {} alone is at least {} high however it lies, the limit is {}", item.id, mm(s.least),
                           mm(*rule.height));
    }
    return std::nullopt;
}

/// No line in an item is longer than the longest within the limits.
std::optional<std::string> too_long(const Item& item, const BundleRule& rule)
{
    std::optional<double> longest;
    if (rule.shape == BundleShape::cylinder && rule.diameter && rule.height) {
        longest = std::hypot(*rule.diameter, *rule.height);
    } else if (rule.shape == BundleShape::box && rule.length && rule.width && rule.height) {
        longest = std::hypot(*rule.length, *rule.width, *rule.height);
    }
    const double diagonal = sizes(item.outside).diagonal;
    if (longest && diagonal > *longest * (1 + safety)) {
        return fmt::format("the {} alone measures {} from corner to corner, the limits only {}", item.id, mm(diagonal),
                           mm(*longest));
    }
    return std::nullopt;
}

} // namespace

std::optional<std::string> misfit(const Item& given, const BundleRule& rule)
{
    Item item = given;
    if (auto* c = std::get_if<Cylinder>(&item.outside); c != nullptr && c->foot != 0) {
        *c = {c->foot, c->height}; // the cylinder that is in it from end to end
    }
    if (auto proof = too_thick(item, rule)) {
        return proof;
    }
    if (auto proof = too_long(item, rule)) {
        return proof;
    }
    const auto cylinders = inscribed(item.outside);
    const bool has_room = std::all_of(cylinders.begin(), cylinders.end(), [&](const Inscribed& c) {
        return rule.shape == BundleShape::box ? box_has_room(c, rule, item.upright)
                                              : round_bundle_has_room(c, rule, item.upright);
    });
    if (has_room) {
        return std::nullopt;
    }
    return item.upright ? with_size(item) + " must stand upright, and so does not fit the limits in any turn"
                        : with_size(item) + " fits the limits in no turn, even aslant";
}

bool could_enter(const Item& item, const Shape& cavity, bool closed)
{
    BundleRule room;
    if (const auto* c = std::get_if<Cylinder>(&cavity)) {
        room.diameter = c->diameter;
    } else {
        const auto& b = std::get<Box>(cavity);
        room.shape = BundleShape::box;
        room.length = b.length;
        room.width = b.width;
    }
    if (closed) {
        room.height = height_of(cavity);
    }
    return !misfit(item, room);
}

} // namespace tuckwright::nesting
