// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Flat walls touch where a support reaches them, round ones where the circles of an outline do; other things
// where their distance is next to nothing, along the normal of the nearest points. What only meets at an edge, side by
// side and one above the other, touches nowhere: pressed together a little, two things that touch overlap.
#include "play/contacts.hpp"

#include <algorithm>
#include <cmath>

namespace tuckwright::play {

namespace {

constexpr double press = 0.02;      ///< mm by which things are pressed together to see whether they overlap then
constexpr double deepest = 0.1;     ///< mm that what touches may seem to overlap, by rounding
constexpr double centred = 1e-9;    ///< mm off the axis up to which a circle has no direction of its own
constexpr double beyond_rim = 1e-3; ///< mm above the rim from which a solid keeps off no side wall

Extent widened(Extent e, double by) { return {e.low - Vec3{by, by, by}, e.high + Vec3{by, by, by}}; }

bool meet(const Extent& a, const Extent& b)
{
    return a.low.x <= b.high.x && b.low.x <= a.high.x && a.low.y <= b.high.y && b.low.y <= a.high.y &&
           a.low.z <= b.high.z && b.low.z <= a.high.z;
}

/// Whether two hulls overlap once the second is pressed against the first; meeting at an edge is no touching.
bool really_meet(const Hull& first, Hull second, const Separation& apart)
{
    second.center = second.center - (std::max(0.0, apart.distance) + press) * apart.normal;
    return separation(first, second).distance < -0.3 * press;
}

PlacedCavity envelope_as_cavity(const Bundle& bundle)
{
    return {bundle.envelope, {{0, 0, height_of(bundle.envelope) / 2}, {}}, Opening::closed};
}

} // namespace

Contacts::Contacts(const Bundle& bundle, double within) : bundle_(bundle), within_(within), holders_(holders(bundle))
{
    add_envelope();
    add_cavities();
    add_pairs();
}

Touching Contacts::of(std::size_t item, Face face, Vec3 point) const { return {body_of(item), item, face, point}; }

void Contacts::add_pairs()
{
    for (std::size_t first = 0; first < bundle_.items.size(); ++first) {
        for (std::size_t second = first + 1; second < bundle_.items.size(); ++second) {
            if (body_of(first) != body_of(second)) {
                add_pair(first, second);
            }
        }
    }
}

void Contacts::add_pair(std::size_t first, std::size_t second)
{
    // What lies in a vessel keeps to its cavity; only what lies beyond the rim may touch the vessel's outside.
    const bool holds = hangs_on(holders_, second, body_of(first)) || hangs_on(holders_, first, body_of(second));
    for (const Solid& a : bundle_.items[first].solids) {
        for (const Solid& b : bundle_.items[second].solids) {
            add_solids(first, a, second, b, holds);
        }
    }
}

void Contacts::add_solids(std::size_t first, const Solid& a, std::size_t second, const Solid& b, bool may_overlap)
{
    const Hull one = hull_of(a), other = hull_of(b);
    if (!meet(widened(extent(one), within_), extent(other))) {
        return;
    }
    const Separation apart = separation(one, other);
    if (apart.distance > within_ || (may_overlap && apart.distance < -deepest) || !really_meet(one, other, apart)) {
        return;
    }
    Contact made{of(first, Face::outside, apart.point),
                 of(second, Face::outside, apart.point + apart.distance * apart.normal), apart.normal, apart.distance};
    found_.push_back(made);
}

void Contacts::add_flat(const Touching& wall, Vec3 wall_point, Vec3 outward, double keep, std::size_t item,
                        const Solid& solid)
{
    const Hull hull = hull_of(solid);
    const Vec3 point = support_point(hull, outward);
    const double air = dot(wall_point - point, outward);
    if (air - keep > within_) {
        return;
    }
    Contact made{of(item, Face::outside, point), wall, outward, air - keep};
    made.second.point = point + air * outward;
    found_.push_back(made);
}

std::optional<Contact> Contacts::against(const Beside& b, double u, double v) const
{
    // (u, v) is a unit vector in the plan of the frame; the circle's farthest point along it, and the wall's beyond.
    const Matrix3 m = rotation_matrix(b.frame.turn);
    const Vec3 out = u * axis_of(m, 0) + v * axis_of(m, 1), up = axis_of(m, 2);
    const double x = b.circle.x + b.circle.r * u, y = b.circle.y + b.circle.r * v, reach = std::hypot(x, y);
    const double steep = std::sqrt(1 + b.slope * b.slope);
    const double gap = (b.radius - reach) / steep - b.keep;
    if (gap > within_) {
        return std::nullopt;
    }
    Contact made{b.thing, b.wall, (1 / steep) * (out - b.slope * up), gap};
    const Vec3 point = b.frame.center + x * axis_of(m, 0) + y * axis_of(m, 1) + b.height * up;
    made.first.point = point;
    made.second.point = point + (gap + b.keep) * made.normal;
    return made;
}

void Contacts::add_round(const Touching& wall, const PlacedCavity& cavity, double keep, std::size_t item,
                         const Solid& solid)
{
    const auto& round = std::get<Cylinder>(cavity.shape);
    std::vector<PlanCircle> circles;
    add_outline(solid, cavity.pose, circles);
    const Vec3 up = axis_of(rotation_matrix(cavity.pose.turn), 2);
    const Hull hull = hull_of(solid);
    const double middle = dot(up, cavity.pose.center), rim = round.height / 2;
    const double low = -support(hull, -1.0 * up) - middle, high = support(hull, up) - middle;
    const auto add = [&](PlanCircle circle, double height, double slope) {
        const double share = std::clamp(height / round.height + 0.5, 0.0, 1.0);
        const double radius = (foot_of(round) + (round.diameter - foot_of(round)) * share) / 2;
        beside_.push_back({of(item), wall, circle, cavity.pose, radius, keep, height, slope});
        const double off = std::hypot(circle.x, circle.y);
        const auto made =
            off > centred ? against(beside_.back(), circle.x / off, circle.y / off) : against(beside_.back(), 1, 0);
        if (made) {
            found_.push_back(*made);
        } else {
            beside_.pop_back();
        }
    };
    if (round.foot == 0) {
        for (const PlanCircle& circle : circles) {
            add(circle, (low + std::min(high, rim)) / 2, 0);
        }
        return;
    }
    const double slope = (round.diameter - round.foot) / (2 * round.height);
    const auto* disc = std::get_if<Cylinder>(&solid.shape);
    if (disc == nullptr || circles.size() != 1) {
        for (const PlanCircle& circle : circles) {
            add(circle, low, slope);
        }
        return;
    }
    PlanCircle circle = circles.front();
    const double foot = foot_of(*disc) / 2, share = std::clamp((rim - low) / (high - low), 0.0, 1.0);
    circle.r = foot;
    add(circle, low, slope);
    circle.r = foot + share * (disc->diameter / 2 - foot);
    add(circle, std::min(high, rim), slope);
}

void Contacts::add_envelope()
{
    const PlacedCavity room = envelope_as_cavity(bundle_);
    const auto* box = std::get_if<Box>(&bundle_.envelope);
    const double height = height_of(bundle_.envelope);
    for (std::size_t item = 0; item < bundle_.items.size(); ++item) {
        for (const Solid& solid : bundle_.items[item].solids) {
            add_flat({}, {0, 0, 0}, {0, 0, -1}, 0, item, solid);
            add_flat({}, {0, 0, height}, {0, 0, 1}, 0, item, solid);
            if (box == nullptr) {
                add_round({}, room, 0, item, solid);
                continue;
            }
            add_flat({}, {0, 0, 0}, {-1, 0, 0}, 0, item, solid);
            add_flat({}, {0, 0, 0}, {0, -1, 0}, 0, item, solid);
            add_flat({}, {box->length, 0, 0}, {1, 0, 0}, 0, item, solid);
            add_flat({}, {0, box->width, 0}, {0, 1, 0}, 0, item, solid);
        }
    }
}

void Contacts::add_cavities()
{
    for (std::size_t item = 0; item < bundle_.items.size(); ++item) {
        for (auto in = bundle_.items[item].in; in; in = bundle_.items[in->item].in) {
            const auto& closes = bundle_.items[item].closes;
            if (!closes || *closes != in->item) {
                add_cavity(item, *in);
            }
        }
    }
}

void Contacts::add_cavity(std::size_t item, const Lodging& in)
{
    const PlacedCavity& cavity = bundle_.items[in.item].cavities[in.cavity];
    const Matrix3 m = rotation_matrix(cavity.pose.turn);
    const Vec3 up = axis_of(m, 2), middle = cavity.pose.center;
    const double half = height_of(cavity.shape) / 2;
    const auto* round = std::get_if<Cylinder>(&cavity.shape);
    const bool is_pressed = bundle_.items[item].pressed && bundle_.items[item].in == in;
    const double keep = is_pressed || (round != nullptr && round->foot != 0) ? 0 : bundle_.clearance;
    const Touching side = of(in.item, Face::side);
    for (const Solid& solid : bundle_.items[item].solids) {
        const Hull hull = hull_of(solid);
        if (cavity.opens != Opening::both) {
            add_flat(of(in.item, Face::floor), middle - half * up, -1.0 * up, 0, item, solid);
        }
        if (cavity.opens == Opening::closed || cavity.neck) {
            add_flat(of(in.item, Face::ceiling), middle + half * up, up, 0, item, solid);
        }
        const double low = -support(hull, -1.0 * up) - dot(up, middle), high = support(hull, up) - dot(up, middle);
        if (low > half - beyond_rim || high < beyond_rim - half) {
            continue;
        }
        if (round != nullptr) {
            add_round(side, cavity, keep, item, solid);
            continue;
        }
        const auto& box = std::get<Box>(cavity.shape);
        for (const double sign : {-1.0, 1.0}) {
            const Vec3 x = sign * axis_of(m, 0), y = sign * axis_of(m, 1);
            add_flat(side, middle + box.length / 2 * x, x, keep, item, solid);
            add_flat(side, middle + box.width / 2 * y, y, keep, item, solid);
        }
    }
}

std::vector<Contact> Contacts::along(Vec3 direction) const
{
    std::vector<Contact> all = found_;
    for (const Beside& beside : beside_) {
        const Matrix3 m = rotation_matrix(beside.frame.turn);
        const double u = dot(direction, axis_of(m, 0)), v = dot(direction, axis_of(m, 1)), level = std::hypot(u, v);
        if (level < 1e-6 || beside.circle.r == 0) {
            continue; // a corner touches where it is
        }
        for (const double sign : {1.0, -1.0}) {
            if (const auto made = against(beside, sign * u / level, sign * v / level)) {
                all.push_back(*made);
            }
        }
    }
    return all;
}

std::vector<Vec3> Contacts::ways_across() const
{
    constexpr double alike = 1e-6;
    std::vector<Vec3> ways;
    for (const Beside& beside : beside_) {
        if (beside.wall.body != outer_wall) {
            continue;
        }
        const double off = std::hypot(beside.circle.x, beside.circle.y);
        const bool fills = beside.radius - beside.circle.r + off <= within_; // it reaches the wall on all sides
        const Vec3 way =
            fills || off <= centred ? Vec3{1, 0, 0} : Vec3{beside.circle.x / off, beside.circle.y / off, 0};
        const bool is_new =
            std::none_of(ways.begin(), ways.end(), [&](const Vec3& other) { return norm(cross(way, other)) < alike; });
        if (is_new) {
            ways.push_back(way);
        }
    }
    return ways;
}

} // namespace tuckwright::play
