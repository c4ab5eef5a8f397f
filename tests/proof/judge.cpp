// SPDX-License-Identifier: GPL-3.0-or-later
#include "judge.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "tuckwright/tolerance.hpp"

namespace judge {

using namespace tuckwright;

namespace {

constexpr Real pi = std::numbers::pi_v<Real>;

/// Points all over the body; `fine` levels along each edge, radius and height. Corners and rims are among them.
std::vector<Point> points_of(const Body& body, int fine)
{
    std::vector<Point> result;
    const auto level = [&](int i) { return 2 * static_cast<Real>(i) / fine - 1; };
    for (int k = 0; k <= fine; ++k) {
        const Real z = body.half[2] * level(k);
        if (!body.round) {
            for (int i = 0; i <= fine; ++i) {
                for (int j = 0; j <= fine; ++j) {
                    result.push_back(body.world({body.half[0] * level(i), body.half[1] * level(j), z}));
                }
            }
            continue;
        }
        result.push_back(body.world({0, 0, z}));
        for (int ring = 1; ring <= fine / 2; ++ring) {
            const Real r = body.half[0] * 2 * ring / (fine / 2 * 2);
            for (int turn = 0; turn < 4 * fine; ++turn) {
                const Real angle = 2 * pi * turn / (4 * fine);
                result.push_back(body.world({r * std::cos(angle), r * std::sin(angle), z}));
            }
        }
    }
    return result;
}

} // namespace

Real common_depth(const Body& a, const Body& b, int fine)
{
    Real deepest = -std::numeric_limits<Real>::infinity();
    const Point between = minus(a.center, b.center);
    if (std::sqrt(dot(between, between)) > a.radius() + b.radius()) {
        return deepest;
    }
    const auto look = [&](const Body& from, const Body& other) {
        for (const auto& point : points_of(from, fine)) {
            // A little towards the body's own middle, so that points of its surface become inner ones.
            for (const Real shrink : {Real{1}, Real{0.98L}}) {
                Point p{};
                for (std::size_t k = 0; k < 3; ++k) {
                    p[k] = from.center[k] + shrink * (point[k] - from.center[k]);
                }
                deepest = std::max(deepest, std::min(from.depth(p), other.depth(p)));
            }
        }
    };
    look(a, b);
    look(b, a);
    return deepest;
}

namespace {

/// The largest value of a function of an angle: many samples, then a search about the best.
template <class Function> Real largest_on_circle(Function function)
{
    constexpr int count = 120;
    const auto at = [&](int i) { return 2 * pi * i / count; };
    int best = 0;
    Real highest = function(at(0));
    for (int i = 1; i < count; ++i) {
        if (const Real value = function(at(i)); value > highest) {
            best = i;
            highest = value;
        }
    }
    Real low = at(best - 1), high = at(best + 1);
    for (int i = 0; i < 60; ++i) {
        const Real a = low + (high - low) / 3, b = high - (high - low) / 3;
        const bool rising = function(a) < function(b);
        (rising ? low : high) = rising ? a : b;
    }
    return std::max(highest, function((low + high) / 2));
}

/// The largest value of a convex function over a body: on the corners of a box, on the rims of a cylinder.
template <class Function> Real largest_on(const Body& body, Function function)
{
    Real largest = -std::numeric_limits<Real>::infinity();
    for (const int up : {-1, 1}) {
        if (body.round) {
            largest = std::max(largest, largest_on_circle([&](Real angle) {
                                   return function(body.world({body.half[0] * std::cos(angle),
                                                               body.half[0] * std::sin(angle), up * body.half[2]}));
                               }));
            continue;
        }
        for (int corner = 0; corner < 4; ++corner) {
            largest =
                std::max(largest, function(body.world({(corner % 2 == 0 ? 1 : -1) * body.half[0],
                                                       (corner < 2 ? 1 : -1) * body.half[1], up * body.half[2]})));
        }
    }
    return largest;
}

} // namespace

Real farthest_from_axis(const Body& body, const Body& room)
{
    return largest_on(body, [&](const Point& p) {
        const Point q = room.local(p);
        return std::hypot(q[0], q[1]);
    });
}

Real farthest_along(const Body& body, const Body& room, std::size_t k)
{
    return largest_on(body, [&](const Point& p) { return std::abs(room.local(p)[k]); });
}

namespace {

/// A bundle as the judge sees it.
class Court {
public:
    Court(const Bundle& bundle, Real margin) : bundle_(bundle), margin_(margin)
    {
        for (const auto& item : bundle.items) {
            auto& solids = solids_.emplace_back();
            for (const auto& solid : item.solids) {
                solids.push_back(body_of(solid.shape, solid.pose));
            }
        }
        envelope_ = body_of(bundle.envelope, {});
        envelope_.center = envelope_.round ? Point{0, 0, envelope_.half[2]} : envelope_.half;
    }

    std::optional<std::string> fault() const
    {
        for (std::size_t i = 0; i < bundle_.items.size(); ++i) {
            for (const auto& found : {bad_cavity(i), bad_container(i), bad_lid(i), bad_stand(i), bad_rest(i)}) {
                if (found) {
                    return bundle_.items[i].id + ": " + *found;
                }
            }
            for (std::size_t j = 0; j < i; ++j) {
                if (!holds(i, j) && !holds(j, i) && overlap(i, j)) {
                    return bundle_.items[i].id + " overlaps " + bundle_.items[j].id;
                }
            }
        }
        return std::nullopt;
    }

private:
    using Found = std::optional<std::string>;

    bool holds(std::size_t outer, std::size_t inner) const
    {
        for (auto in = bundle_.items[inner].in; in; in = bundle_.items[in->item].in) {
            if (in->item == outer) {
                return true;
            }
        }
        return false;
    }

    bool overlap(std::size_t i, std::size_t j) const
    {
        return std::any_of(solids_[i].begin(), solids_[i].end(), [&](const Body& a) {
            return std::any_of(solids_[j].begin(), solids_[j].end(),
                               [&](const Body& b) { return common_depth(a, b, 6) > margin_; });
        });
    }

    /// How far a body reaches beyond walls, and the ends that are closed; negative: room left.
    Real beyond(const Body& body, const Body& room, Real clearance, bool bottom, bool top) const
    {
        Real most = -std::numeric_limits<Real>::infinity();
        if (room.round) {
            most = farthest_from_axis(body, room) - (room.half[0] - clearance);
        } else {
            for (std::size_t k = 0; k < 2; ++k) {
                most = std::max(most, farthest_along(body, room, k) - (room.half[k] - clearance));
            }
        }
        if (bottom) {
            most = std::max(most, largest_on(body, [&](const Point& p) { return -room.local(p)[2]; }) - room.half[2]);
        }
        if (top) {
            most = std::max(most, largest_on(body, [&](const Point& p) { return room.local(p)[2]; }) - room.half[2]);
        }
        return most;
    }

    /// The same for every container of an item, the envelope last.
    std::vector<Real> beyond_containers(std::size_t item, const Body& body) const
    {
        std::vector<Real> result;
        for (auto in = bundle_.items[item].in; in; in = bundle_.items[in->item].in) {
            const auto& cavity = bundle_.items[in->item].cavities[in->cavity];
            const bool pressed = bundle_.items[item].pressed && in == bundle_.items[item].in;
            result.push_back(beyond(body, body_of(cavity.shape, cavity.pose), pressed ? 0 : bundle_.clearance,
                                    cavity.opens != Opening::both,
                                    pressed || cavity.opens == Opening::closed || cavity.neck));
        }
        result.push_back(beyond(body, envelope_, 0, true, true));
        return result;
    }

    Found bad_container(std::size_t item) const
    {
        for (const auto& body : solids_[item]) {
            const auto all = beyond_containers(item, body);
            if (std::any_of(all.begin(), all.end(), [&](Real b) { return b > margin_; })) {
                return "stands out";
            }
        }
        return std::nullopt;
    }

    Found bad_cavity(std::size_t item) const
    {
        const Body& body = solids_[item].front();
        for (const auto& placed : bundle_.items[item].cavities) {
            const Body cavity = body_of(placed.shape, placed.pose);
            if (beyond(cavity, body, 0, true, true) > margin_) {
                return "its cavity stands out";
            }
            const Real neck = placed.neck ? height_of(*placed.neck) : 0;
            const Real top = body.local(cavity.world({0, 0, cavity.half[2] + neck}))[2];
            const Real bottom = body.local(cavity.world({0, 0, -cavity.half[2]}))[2];
            if (placed.opens != Opening::closed && std::abs(top - body.half[2]) > margin_) {
                return "its mouth is not in its top face";
            }
            if (placed.opens == Opening::both && std::abs(bottom + body.half[2]) > margin_) {
                return "its lower mouth is not in its bottom";
            }
        }
        return std::nullopt;
    }

    Found bad_lid(std::size_t item) const
    {
        const auto vessel = bundle_.items[item].closes;
        if (!vessel) {
            return std::nullopt;
        }
        const Body &plate = solids_[item].front(), &body = solids_[*vessel].front();
        const Point middle = body.local(plate.world({0, 0, -plate.half[2]}));
        if (std::hypot(middle[0], middle[1], middle[2] - body.half[2]) > margin_) {
            return "its lid is not on the rim";
        }
        const auto& cavities = bundle_.items[*vessel].cavities;
        if (cavities.empty() || cavities.front().opens != Opening::closed ||
            bundle_.items[item].in != bundle_.items[*vessel].in || dot(plate.axis[2], body.axis[2]) < 0.99L) {
            return "it shuts nothing";
        }
        return std::nullopt;
    }

    Found bad_stand(std::size_t item) const
    {
        return bundle_.items[item].upright && solids_[item].front().axis[2][2] < 0.9999L ? Found("not upright")
                                                                                         : std::nullopt;
    }

    /// Depth of a point in any of an item's solids, raised by the drop.
    Real depth_in(std::size_t item, Point point, Real raised) const
    {
        point[2] += raised;
        Real deepest = -std::numeric_limits<Real>::infinity();
        for (const auto& body : solids_[item]) {
            deepest = std::max(deepest, body.depth(point));
        }
        return deepest;
    }

    /// Whether a point, raised, is clearly in the air of one of the item's cavities, or of its mouth.
    bool in_cavity(std::size_t item, Point point, Real raised) const
    {
        point[2] += raised;
        const auto& cavities = bundle_.items[item].cavities;
        return std::any_of(cavities.begin(), cavities.end(), [&](const PlacedCavity& cavity) {
            const Body air = body_of(cavity.shape, cavity.pose);
            Point own = air.local(point);
            const bool above = own[2] > 0;
            if (cavity.neck) {
                Body neck = body_of(*cavity.neck, cavity.pose);
                const Real high = air.half[2] + 2 * neck.half[2];
                neck.half[2] = cavity.opens == Opening::closed ? high : 1e5L;
                return air.depth(point) > margin_ || (above && neck.depth(point) > margin_);
            }
            if (cavity.opens == Opening::both || (cavity.opens == Opening::top && above)) {
                own[2] = 0;
            }
            return air.depth(air.world(own)) > margin_;
        });
    }

    bool leaves(std::size_t item) const
    {
        for (Body body : solids_[item]) {
            body.center[2] -= tolerance::rest_drop;
            const auto all = beyond_containers(item, body);
            if (std::any_of(all.begin(), all.end(), [&](Real b) { return b > -margin_; })) {
                return true;
            }
        }
        return false;
    }

    Found bad_rest(std::size_t item) const
    {
        if (bundle_.items[item].closes) {
            return std::nullopt;
        }
        for (const auto& rest : bundle_.certificate.rests) {
            if (rest.item != item) {
                continue;
            }
            const Point point{rest.point.x, rest.point.y, rest.point.z};
            const auto lid = std::find_if(bundle_.items.begin(), bundle_.items.end(),
                                          [&](const PlacedItem& other) { return other.closes == item; });
            Real lowered = depth_in(item, point, tolerance::rest_drop);
            if (lid != bundle_.items.end()) { // a vessel may rest by its lid
                lowered = std::max(lowered, depth_in(static_cast<std::size_t>(lid - bundle_.items.begin()), point,
                                                     tolerance::rest_drop));
            }
            if (rest.on && (depth_in(*rest.on, point, 0) < -margin_ || lowered < -margin_)) {
                return "rests on a point that is elsewhere";
            }
            if (rest.on && (in_cavity(*rest.on, point, 0) || in_cavity(item, point, tolerance::rest_drop))) {
                return "rests on air";
            }
            if (!rest.on && !leaves(item) &&
                (lid == bundle_.items.end() || !leaves(static_cast<std::size_t>(lid - bundle_.items.begin())))) {
                return "hangs in the air";
            }
            return std::nullopt;
        }
        return "has no rest";
    }

    const Bundle& bundle_;
    Real margin_;
    std::vector<std::vector<Body>> solids_;
    Body envelope_;
};

} // namespace

std::optional<std::string> clear_fault(const Bundle& bundle, Real margin) { return Court(bundle, margin).fault(); }

} // namespace judge
