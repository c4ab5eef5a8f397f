// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/room_rows.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "advice/upright_pair.hpp"

namespace tuckwright::advice {

namespace {

constexpr double square_to = 1e-9; ///< how far a cosine may be from 0 or 1 by rounding

double gap(double low, double high, double other_low, double other_high)
{
    return std::max(other_low - high, low - other_high);
}

bool far_apart(const Extent& a, const Extent& b, double near)
{
    return gap(a.low.x, a.high.x, b.low.x, b.high.x) > near || gap(a.low.y, a.high.y, b.low.y, b.high.y) > near ||
           gap(a.low.z, a.high.z, b.low.z, b.high.z) > near;
}

/// The vector without its part along a unit axis.
Vec3 flat(Vec3 v, Vec3 axis) { return v - dot(v, axis) * axis; }

/// Directions evenly all round an upright.
void add_round(const Axes& frame, int count, std::vector<Vec3>& directions)
{
    for (int k = 0; k < count; ++k) {
        const double angle = 2 * std::numbers::pi * k / count;
        directions.push_back(std::cos(angle) * frame.axis(0) + std::sin(angle) * frame.axis(1));
    }
}

/// Where the outline seen along a round wall's axis is farthest from its middle may be: corners as vectors across the
/// axis. A disc counts with its middle and `radius`. Nothing where it is neither a disc nor has corners.
struct Seen {
    std::vector<Vec3> corners;
    double radius = 0;
    bool known = true;
};

Seen seen_along(const Draft& draft, const Axes& frame, const Walls& walls, Vec3 center)
{
    const Vec3 up = walls.frame.axis(2), middle = flat(center, up);
    const auto axes = axes_of(draft, frame);
    Seen seen;
    if (draft.posing == Posing::box) {
        for (unsigned corner = 0; corner < 8; ++corner) {
            Vec3 at = middle;
            for (std::size_t k = 0; k < 3; ++k) {
                at = at + ((corner >> k) % 2 == 0 ? draft.half[k] : -draft.half[k]) * flat(axes[k], up);
            }
            seen.corners.push_back(at);
        }
        return seen;
    }
    const Vec3 axis = draft.posing == Posing::standing ? axes[2] : axes[0];
    const double slope = std::abs(dot(axis, up));
    if (slope > 1 - square_to) {
        seen.corners = {middle};
        seen.radius = draft.half[0];
    } else if (slope < square_to) {
        const Vec3 side = cross(up, axis);
        for (const double along : {draft.half[1], -draft.half[1]}) {
            for (const double aside : {draft.half[0], -draft.half[0]}) {
                seen.corners.push_back(middle + along * axis + aside * side);
            }
        }
    } else {
        seen.known = false;
    }
    return seen;
}

/// Directions across the axis of a round wall in which the thing may come near it.
std::vector<Vec3> towards_wall(const Draft& draft, const Axes& frame, const Walls& walls, Vec3 center)
{
    const Seen seen = seen_along(draft, frame, walls, center);
    std::vector<Vec3> directions;
    if (!seen.known || seen.radius > 0) {
        add_round(walls.frame, seen.known ? 24 : 96, directions);
    }
    for (const Vec3 corner : seen.corners) {
        if (const double off = norm(corner); off > 1e-7) {
            directions.push_back((1 / off) * corner);
        }
    }
    return directions;
}

/// How far the outline reaches from the axis of a round wall.
double reach_from_axis(const Draft& draft, const Axes& frame, const Walls& walls, Vec3 center)
{
    const Seen seen = seen_along(draft, frame, walls, center);
    double most = 0;
    for (const Vec3 corner : seen.corners) {
        most = std::max(most, norm(corner) + seen.radius);
    }
    if (!seen.known) {
        std::vector<Vec3> directions;
        add_round(walls.frame, 720, directions);
        for (const Vec3 n : directions) {
            most = std::max(most, dot(n, center) + reach_along(draft, frame, n));
        }
    }
    return most;
}

/// Gathers rows at a draft.
class Rows {
public:
    Rows(const Draft& draft, const Space& space, double turn) : draft_(draft), space_(space), turn_(turn) {}

    /// The thing reaches no farther along the direction. Where a side may turn either way, each way has its row.
    void reach(Vec3 n, double limit, bool from_middle = false)
    {
        const auto axes = axes_of(draft_, space_.frame);
        const unsigned either = draft_.posing == Posing::standing ? 0U
                                : (std::abs(dot(n, axes[0])) <= turn_ ? 1U : 0U) |
                                      (draft_.posing == Posing::box && std::abs(dot(n, axes[1])) <= turn_ ? 2U : 0U);
        for (unsigned signs = 0; signs < 4; ++signs) {
            if ((signs & ~either) == 0) {
                add(n, limit, from_middle, signs);
            }
        }
    }

    void walls(const Walls& walls)
    {
        const Vec3 up = walls.frame.axis(2);
        if (walls.round) {
            for (const Vec3 n : towards_wall(draft_, space_.frame, walls, draft_.center - walls.center)) {
                reach(n, dot(n, walls.center) + walls.half[0]);
                if (walls.tapers()) {
                    taper(n, walls);
                }
            }
        } else {
            for (std::size_t k = 0; k < 2; ++k) {
                for (const double sign : {1.0, -1.0}) {
                    const Vec3 n = sign * walls.frame.axis(k);
                    reach(n, dot(n, walls.center) + walls.half[k]);
                }
            }
        }
        if (walls.floor) {
            reach(-1.0 * up, -dot(up, walls.center) + walls.half[2]);
        }
        if (walls.top) {
            reach(up, dot(up, walls.center) + walls.half[2]);
        }
    }

    void neck(const Walls& neck)
    {
        if (neck.round) {
            for (const Vec3 n : towards_wall(draft_, space_.frame, neck, {})) {
                reach(n, neck.half[0], true);
            }
            return;
        }
        for (std::size_t k = 0; k < 2; ++k) {
            reach(neck.frame.axis(k), neck.half[k], true);
        }
    }

    /// It reaches in at an open end, whose outward direction is given: its inner end is at least so deep below the rim.
    void enters(Vec3 outward, const Walls& walls)
    {
        const Reach parts = reach_parts(draft_, space_.frame, outward, 0, 0);
        Row row{outward, {}, -parts.by_angle, 0};
        row.slack = dot(outward, walls.center) + walls.half[2] - least_depth - dot(outward, draft_.center);
        for (std::size_t k = 0; k < 3; ++k) {
            row.size[k] = -parts.factor[k];
            row.slack += parts.factor[k] * draft_.half[k];
        }
        rows_.push_back(row);
    }

    void girth(const Girth& girth)
    {
        const double width = 2 * std::numbers::pi / static_cast<double>(girth_directions);
        Row sum{{}, {}, 0, girth.most};
        for (std::size_t k = 0; k < girth_directions; ++k) {
            const Vec3 n = girth_direction(k);
            const Reach parts = reach_parts(draft_, space_.frame, n, 0, 0);
            double own = dot(n, draft_.center);
            for (std::size_t j = 0; j < 3; ++j) {
                own += parts.factor[j] * draft_.half[j];
            }
            sum.slack -= width * std::max(own, girth.reach[k]);
            if (own > girth.reach[k]) {
                sum.place = sum.place + width * n;
                sum.angle += width * parts.by_angle;
                for (std::size_t j = 0; j < 3; ++j) {
                    sum.size[j] += width * parts.factor[j];
                }
            }
        }
        rows_.push_back(sum);
    }

    std::vector<Row> take() { return std::move(rows_); }

private:
    void add(Vec3 n, double limit, bool from_middle, unsigned signs)
    {
        const Reach parts = reach_parts(draft_, space_.frame, n, turn_, signs);
        Row row{from_middle ? Vec3{} : n, parts.factor, parts.by_angle, limit};
        row.slack -= from_middle ? 0 : dot(n, draft_.center);
        for (std::size_t k = 0; k < 3; ++k) {
            row.slack -= parts.factor[k] * draft_.half[k];
        }
        rows_.push_back(row);
    }

    /// The lower it goes, the narrower the wall: two reaches at once.
    void taper(Vec3 n, const Walls& walls)
    {
        const Vec3 down = -1.0 * walls.frame.axis(2);
        const double slope = walls.slope();
        add(n, dot(n, walls.center) + walls.foot, false, 0);
        const Row side = rows_.back();
        rows_.pop_back();
        add(down, dot(down, walls.center) + walls.half[2], false, 0);
        Row& both = rows_.back();
        both.place = side.place + slope * both.place;
        for (std::size_t k = 0; k < 3; ++k) {
            both.size[k] = side.size[k] + slope * both.size[k];
        }
        both.angle = side.angle + slope * both.angle;
        both.slack = side.slack + slope * both.slack;
    }

    const Draft& draft_;
    const Space& space_;
    double turn_;
    std::vector<Row> rows_;
};

double beyond(const Draft& draft, const Axes& frame, const Walls& walls)
{
    const Vec3 up = walls.frame.axis(2), from = draft.center - walls.center;
    const double height = dot(up, from), upward = reach_along(draft, frame, up);
    double worst = -1e9;
    if (walls.round) {
        const double from_floor = std::clamp(height - upward + walls.half[2], 0.0, 2 * walls.half[2]);
        const double radius = walls.tapers() ? walls.foot + walls.slope() * from_floor : walls.half[0];
        worst = reach_from_axis(draft, frame, walls, from) - radius;
    } else {
        for (std::size_t k = 0; k < 2; ++k) {
            const Vec3 n = walls.frame.axis(k);
            worst = std::max(worst, std::abs(dot(n, from)) + reach_along(draft, frame, n) - walls.half[k]);
        }
    }
    worst = walls.floor ? std::max(worst, upward - height - walls.half[2]) : worst;
    return walls.top ? std::max(worst, upward + height - walls.half[2]) : worst;
}

double beyond_neck(const Draft& draft, const Axes& frame, const Walls& neck)
{
    if (neck.round) {
        return reach_from_axis(draft, frame, neck, {}) - neck.half[0];
    }
    return std::max(reach_along(draft, frame, neck.frame.axis(0)) - neck.half[0],
                    reach_along(draft, frame, neck.frame.axis(1)) - neck.half[1]);
}

double beyond_girth(const Draft& draft, const Axes& frame, const Girth& girth)
{
    const double width = 2 * std::numbers::pi / static_cast<double>(girth_directions);
    double rough = 0, outer = 0; // where no direction leads out of the others' outline there is no need to look closely
    for (std::size_t k = 0; k < girth_directions; ++k) {
        const Vec3 n = girth_direction(k);
        const double own = dot(n, draft.center) + reach_along(draft, frame, n);
        rough += width * std::max(own, girth.reach[k]);
        outer += own > girth.reach[k] ? width : 0;
    }
    if (outer == 0) {
        return -1e9;
    }
    double round = rough;
    if (std::abs(rough - girth.most) < 0.01 * girth.most) {
        auto all = girth.others;
        Draft rounded = draft;
        rounded.angle = rounded_angle(draft.angle);
        all.push_back(solid_of(rounded, frame));
        round = outline_girth(all);
    }
    return (round - girth.most) / outer;
}

} // namespace

std::vector<Contact> contacts_of(const Draft& draft, const Space& space, double near)
{
    const Hull hull = hull_of(draft, space.frame);
    const Extent box = extent(hull);
    std::vector<Contact> contacts;
    for (const Obstacle& obstacle : space.obstacles) {
        if (!far_apart(box, obstacle.box, near)) {
            const auto quick = upright_normal(hull, obstacle.hull);
            const Vec3 normal = quick ? *quick : separation(hull, obstacle.hull).normal;
            contacts.push_back({normal, -support(obstacle.hull, -1.0 * normal)});
        }
    }
    return contacts;
}

std::vector<Row> rows_of(const Draft& draft, const Space& space, const std::vector<Contact>& contacts, double turn)
{
    Rows rows(draft, space, turn);
    for (const Walls& walls : space.around) {
        rows.walls(walls);
    }
    if (space.neck) {
        rows.neck(*space.neck);
    }
    const Walls& own = space.around.front();
    if (space.enters_top) {
        rows.enters(own.frame.axis(2), own);
    }
    if (space.enters_bottom) {
        rows.enters(-1.0 * own.frame.axis(2), own);
    }
    for (const Contact& contact : contacts) {
        rows.reach(contact.normal, contact.limit);
    }
    if (space.girth) {
        rows.girth(*space.girth);
    }
    return rows.take();
}

double beyond_walls(const Draft& draft, const Space& space)
{
    double worst = -1e9;
    for (const Walls& walls : space.around) {
        worst = std::max(worst, beyond(draft, space.frame, walls));
    }
    if (space.neck) {
        worst = std::max(worst, beyond_neck(draft, space.frame, *space.neck));
    }
    const Walls& own = space.around.front();
    const Vec3 up = own.frame.axis(2);
    const double height = dot(up, draft.center - own.center), upward = reach_along(draft, space.frame, up);
    if (space.enters_top) {
        worst = std::max(worst, height - upward - own.half[2] + least_depth);
    }
    if (space.enters_bottom) {
        worst = std::max(worst, -height - upward - own.half[2] + least_depth);
    }
    return space.girth ? std::max(worst, beyond_girth(draft, space.frame, *space.girth)) : worst;
}

double beyond_contacts(const Draft& draft, const Axes& frame, const std::vector<Contact>& contacts)
{
    double worst = -1e9;
    for (const Contact& contact : contacts) {
        const double reach = dot(contact.normal, draft.center) + reach_along(draft, frame, contact.normal);
        worst = std::max(worst, reach - contact.limit);
    }
    return worst;
}

} // namespace tuckwright::advice
