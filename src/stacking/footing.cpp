// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. The lowest face of an item's solids is an outline in plan (a disc as a polygon, a box's rectangle, the line on
// which a cylinder lies). Where that face is as low as a floor, or as the top face of another item, the points of both
// outlines that lie in the other one carry it, less those over an open mouth. The item stands if the centre of its
// weight, with all that it holds, lies within the convex hull of these points. What is pressed into a vessel is held.
#include "tuckwright/footing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "tuckwright/geometry.hpp"

namespace tuckwright {

namespace {

using PlanPoint = std::array<double, 2>;

constexpr double same_level = 0.02;      ///< mm: surfaces that far apart in height touch
constexpr double seated_gap = 0.05;      ///< mm to a tapering wall that count as touching it
constexpr double square_cosine = 0.9999; ///< an axis along which a solid stands or lies
constexpr double seam = 1e-6;            ///< mm: what lies that far outside an outline still counts as on it
constexpr int disc_corners = 48;
constexpr int edge_parts = 12; ///< edges are looked at in so many parts, for mouths that cut them

/// A face seen from above: its height, and corners of a convex outline in order; two corners for a line.
struct Face {
    double z = 0;
    std::vector<PlanPoint> corners;
};

/// The highest (way 1) or lowest (way -1) face of a solid, or the one point where it slants.
Face end_face(const Shape& shape, const Pose& pose, double way)
{
    const Hull hull = hull_of({shape, pose});
    const Matrix3& m = hull.rotation;
    Face face{way * support(hull, {0, 0, way}), {}};
    std::array<double, 3> half{};
    const auto* cylinder = std::get_if<Cylinder>(&shape);
    if (cylinder != nullptr) {
        half = {0, 0, cylinder->height / 2};
        if (std::abs(m[2][2]) > square_cosine) {
            for (int k = 0; k < disc_corners; ++k) {
                const double angle = 2 * std::numbers::pi * k / disc_corners, r = cylinder->diameter / 2;
                face.corners.push_back({pose.center.x + r * std::cos(angle), pose.center.y + r * std::sin(angle)});
            }
            return face;
        }
    } else {
        const auto& box = std::get<Box>(shape);
        half = {box.length / 2, box.width / 2, box.height / 2};
    }
    std::vector<std::size_t> level;
    for (std::size_t k = 0; k < 3; ++k) {
        if (std::abs(m[2][k]) < 1 - square_cosine && half[k] > 0) {
            level.push_back(k);
        }
    }
    if (level.size() == (cylinder != nullptr ? 1 : 2)) {
        const std::size_t i = level.front(), j = level.back();
        for (const auto& [u, v] : {PlanPoint{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}) {
            if (i == j && v > 0) {
                break; // a line has two corners
            }
            const double a = u * half[i], b = i == j ? 0 : v * half[j];
            face.corners.push_back(
                {pose.center.x + a * m[0][i] + b * m[0][j], pose.center.y + a * m[1][i] + b * m[1][j]});
        }
        return face;
    }
    const Vec3 tip = support_point(hull, {0, 0, way});
    face.corners.push_back({tip.x, tip.y});
    return face;
}

/// Whether a point lies in a convex outline, or on it.
bool within(const std::vector<PlanPoint>& outline, PlanPoint p)
{
    bool left = false, right = false;
    for (std::size_t k = 0; k < outline.size(); ++k) {
        const PlanPoint a = outline[k], b = outline[(k + 1) % outline.size()];
        const double dx = b[0] - a[0], dy = b[1] - a[1], length = std::hypot(dx, dy);
        if (length < seam) {
            continue;
        }
        const double aside = (dx * (p[1] - a[1]) - dy * (p[0] - a[0])) / length;
        const double along = (dx * (p[0] - a[0]) + dy * (p[1] - a[1])) / length;
        left = left || aside > seam;
        right = right || aside < -seam;
        if (std::abs(aside) <= seam && (along < -seam || along > length + seam)) {
            return false; // in line with an edge, but beyond its ends
        }
    }
    return !(left && right) && (outline.size() > 1 || std::hypot(p[0] - outline[0][0], p[1] - outline[0][1]) <= seam);
}

/// Corners and points along the edges of an outline.
std::vector<PlanPoint> boundary(const std::vector<PlanPoint>& outline)
{
    std::vector<PlanPoint> points;
    for (std::size_t k = 0; k < outline.size(); ++k) {
        const PlanPoint a = outline[k], b = outline[(k + 1) % outline.size()];
        for (int part = 0; part < (outline.size() < disc_corners ? edge_parts : 1); ++part) {
            const double t = static_cast<double>(part) / edge_parts;
            points.push_back({a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])});
        }
    }
    return points;
}

/// The open mouth in the top face of a solid, if it has one there: the cavity's outline.
std::optional<std::vector<PlanPoint>> mouth_at(const PlacedItem& item, double top)
{
    for (const PlacedCavity& cavity : item.cavities) {
        const Matrix3 m = rotation_matrix(cavity.pose.turn);
        const bool stands = m[2][2] > square_cosine || (cavity.opens == Opening::both && m[2][2] < -square_cosine);
        if (cavity.opens != Opening::closed && stands) {
            const Solid mouth = cavity.neck ? neck_of(cavity) : Solid{cavity.shape, cavity.pose};
            const Face face = end_face(mouth.shape, mouth.pose, 1);
            if (std::abs(face.z - top) < same_level) {
                return face.corners;
            }
        }
    }
    return std::nullopt;
}

/// The point in which two segments cross, if they do: a rod lies on another one there.
std::optional<PlanPoint> crossing(const std::vector<PlanPoint>& a, const std::vector<PlanPoint>& b)
{
    const double ux = a[1][0] - a[0][0], uy = a[1][1] - a[0][1], vx = b[1][0] - b[0][0], vy = b[1][1] - b[0][1];
    const double wx = b[0][0] - a[0][0], wy = b[0][1] - a[0][1], area = ux * vy - uy * vx;
    if (std::abs(area) < seam) {
        return std::nullopt;
    }
    const double s = (wx * vy - wy * vx) / area, t = (wx * uy - wy * ux) / area;
    constexpr double hair = 1e-9;
    const bool within_both = s > -hair && s < 1 + hair && t > -hair && t < 1 + hair;
    return within_both ? std::optional(PlanPoint{a[0][0] + s * ux, a[0][1] + s * uy}) : std::nullopt;
}

/// Points at which a lower face is carried by the top of another item's solid: those of each outline in the other one,
/// and of the mouth's rim in the lower face, but none over the mouth.
void add_contacts(const Face& lower, const Face& top, const std::optional<std::vector<PlanPoint>>& mouth,
                  std::vector<PlanPoint>& points)
{
    const auto offer = [&](const std::vector<PlanPoint>& from, const std::vector<PlanPoint>& in, bool rim) {
        for (const PlanPoint& p : boundary(from)) {
            if (within(in, p) && (rim || !mouth || !within(*mouth, p))) {
                points.push_back(p);
            }
        }
    };
    offer(lower.corners, top.corners, false);
    offer(top.corners, lower.corners, false);
    if (lower.corners.size() == 2 && top.corners.size() == 2) {
        if (const auto point = crossing(lower.corners, top.corners)) {
            points.push_back(*point);
        }
    }
    if (mouth) {
        offer(*mouth, lower.corners, true);
    }
}

/// Degrees of tilt that bring a centre of weight over the edge of the hull of these points, the nearest way; 90 for
/// points on a line, or nearly.
double tilt(const std::vector<PlanPoint>& points, Vec3 center, double height)
{
    constexpr int directions = 180;
    constexpr double line = 1.0; // mm
    double room = 1e9, width = 1e9;
    for (int k = 0; k < 2 * directions; ++k) {
        const double angle = std::numbers::pi * k / directions, u = std::cos(angle), v = std::sin(angle);
        double most = -1e9, least = 1e9;
        for (const PlanPoint& p : points) {
            const double along = (p[0] - center.x) * u + (p[1] - center.y) * v;
            most = std::max(most, along);
            least = std::min(least, along);
        }
        room = std::min(room, most);
        width = std::min(width, most - least);
    }
    return width < line ? 90 : std::atan2(std::max(0.0, room), std::max(height, seam)) * 180 / std::numbers::pi;
}

class Footings {
public:
    explicit Footings(const Bundle& bundle) : bundle_(bundle) {}

    Footing of(std::size_t item) const
    {
        const PlacedItem& placed = bundle_.items[item];
        if (placed.closes || placed.pressed || lies_in_a_lying_vessel(placed)) {
            return {true, 0, 90};
        }
        double lowest = 1e9;
        std::vector<PlanPoint> points;
        for (const Solid& solid : solids_with_lid(item)) {
            const Face lower = end_face(solid.shape, solid.pose, -1);
            lowest = std::min(lowest, lower.z);
            add_floor(placed, lower, points);
            add_tapering_wall(placed, solid, points);
            add_rims(placed, solid, lower, points);
            for (std::size_t other = 0; other < bundle_.items.size(); ++other) {
                if (other != item && !holds(item, other) && !holds(other, item) &&
                    bundle_.items[other].closes != item) {
                    add_item(solid, lower, other, points);
                }
            }
        }
        if (!points.empty() && leans(placed)) {
            return {true, 0, 90}; // what it leans on holds it
        }
        if (points.empty()) {
            return {false, std::numeric_limits<double>::infinity(), 0};
        }
        const Vec3 center = center_of_weight(item);
        return {true, distance_outside(points, {center.x, center.y}), tilt(points, center, center.z - lowest)};
    }

private:
    /// Whether `vessel` is a container of `item`, however far out, or a shut lid or vessel hangs on it.
    bool holds(std::size_t vessel, std::size_t item) const
    {
        for (auto in = bundle_.items[item].in; in; in = bundle_.items[in->item].in) {
            if (in->item == vessel) {
                return true;
            }
        }
        const auto& closes = bundle_.items[item].closes;
        return closes && (*closes == vessel || holds(vessel, *closes));
    }

    bool lies_in_a_lying_vessel(const PlacedItem& placed) const
    {
        for (auto in = placed.in; in; in = bundle_.items[in->item].in) {
            const PlacedCavity& cavity = bundle_.items[in->item].cavities[in->cavity];
            if (std::abs(rotation_matrix(cavity.pose.turn)[2][2]) < square_cosine) {
                return true;
            }
        }
        return false;
    }

    /// An item's solids and those of the lid that is shut on it: lying, it may rest on the lid's edge.
    std::vector<Solid> solids_with_lid(std::size_t item) const
    {
        std::vector<Solid> solids = bundle_.items[item].solids;
        for (const PlacedItem& other : bundle_.items) {
            if (other.closes == item) {
                solids.insert(solids.end(), other.solids.begin(), other.solids.end());
            }
        }
        return solids;
    }

    /// Whether an item of one piece stands neither straight nor lies level.
    static bool leans(const PlacedItem& placed)
    {
        const Matrix3 m = rotation_matrix(placed.solids.front().pose.turn);
        const bool round = std::holds_alternative<Cylinder>(placed.solids.front().shape);
        const double most =
            round ? std::abs(m[2][2]) : std::max({std::abs(m[2][0]), std::abs(m[2][1]), std::abs(m[2][2])});
        return most < square_cosine && (!round || most > 1 - square_cosine);
    }

    /// The first floor outward: a sleeve has none.
    void add_floor(const PlacedItem& placed, const Face& lower, std::vector<PlanPoint>& points) const
    {
        double floor = 0;
        for (auto in = placed.in; in; in = bundle_.items[in->item].in) {
            const PlacedCavity& cavity = bundle_.items[in->item].cavities[in->cavity];
            if (cavity.opens != Opening::both) {
                floor = end_face(cavity.shape, cavity.pose, -1).z;
                break;
            }
        }
        if (std::abs(lower.z - floor) < same_level) {
            points.insert(points.end(), lower.corners.begin(), lower.corners.end());
        }
    }

    /// What is seated in a vessel that tapers stands on the ring where it touches the wall all round; what only one side
    /// of the wall holds, on the few points there.
    void add_tapering_wall(const PlacedItem& placed, const Solid& solid, std::vector<PlanPoint>& points) const
    {
        const auto* round = std::get_if<Cylinder>(&solid.shape);
        if (!placed.in || round == nullptr || rotation_matrix(solid.pose.turn)[2][2] < square_cosine) {
            return;
        }
        const PlacedCavity& cavity = bundle_.items[placed.in->item].cavities[placed.in->cavity];
        const auto* room = std::get_if<Cylinder>(&cavity.shape);
        if (room == nullptr || room->foot == 0 || rotation_matrix(cavity.pose.turn)[2][2] < square_cosine) {
            return;
        }
        const double dx = solid.pose.center.x - cavity.pose.center.x, dy = solid.pose.center.y - cavity.pose.center.y;
        const double low = solid.pose.center.z - round->height / 2, rim = cavity.pose.center.z + room->height / 2;
        const double share = std::clamp((rim - low) / round->height, 0.0, 1.0); // beyond the rim it may be wider
        for (const bool top : {false, true}) {
            const double z = top ? low + share * round->height : low;
            const double width = foot_of(*round) + (top ? share : 0) * (round->diameter - foot_of(*round));
            const double up = std::clamp((z - cavity.pose.center.z) / room->height + 0.5, 0.0, 1.0);
            const double wall = (room->foot + (room->diameter - room->foot) * up) / 2;
            const double off = std::hypot(dx, dy);
            if (off + width / 2 > wall - seated_gap) {
                add_ring({dx, dy}, width / 2, wall - seated_gap, cavity.pose.center, points);
            }
        }
    }

    /// Those points of a circle, `from` a vessel's axis, that are as far from the axis as its wall.
    static void add_ring(PlanPoint from, double radius, double wall, Vec3 axis, std::vector<PlanPoint>& points)
    {
        const double outward = std::atan2(from[1], from[0]); // the farthest point is the first
        for (int k = 0; k < disc_corners; ++k) {
            const double angle = outward + 2 * std::numbers::pi * k / disc_corners;
            const double x = from[0] + radius * std::cos(angle), y = from[1] + radius * std::sin(angle);
            if (std::hypot(x, y) > wall) {
                points.push_back({axis.x + x, axis.y + y});
            }
        }
    }

    /// The rims of its containers, for a further solid that lies beyond them.
    void add_rims(const PlacedItem& placed, const Solid& solid, const Face& lower, std::vector<PlanPoint>& points) const
    {
        for (auto in = placed.in; in && !(solid == placed.solids.front()); in = bundle_.items[in->item].in) {
            const PlacedItem& vessel = bundle_.items[in->item];
            const Face top = end_face(vessel.solids.front().shape, vessel.solids.front().pose, 1);
            if (std::abs(lower.z - top.z) < same_level) {
                add_contacts(lower, top, mouth_at(vessel, top.z), points);
            }
        }
    }

    void add_item(const Solid& solid, const Face& lower, std::size_t other, std::vector<PlanPoint>& points) const
    {
        for (const Solid& under : bundle_.items[other].solids) {
            const Face top = end_face(under.shape, under.pose, 1);
            const auto mouth = mouth_at(bundle_.items[other], top.z);
            if (std::abs(lower.z - top.z) < same_level) {
                add_contacts(lower, top, mouth, points);
            } else if (lower.z < top.z) { // on a slope: the point that a small drop would press in
                Hull lowered = hull_of(solid);
                lowered.center.z -= same_level;
                const Separation apart = separation(lowered, hull_of(under));
                if (apart.distance < -seam && apart.normal.z < -0.1) {
                    points.push_back({apart.point.x, apart.point.y});
                }
            }
        }
    }

    Vec3 center_of_weight(std::size_t item) const
    {
        double weight = 0;
        Vec3 moment;
        for (std::size_t k = 0; k < bundle_.items.size(); ++k) {
            if (k == item || holds(item, k)) {
                const PlacedItem& part = bundle_.items[k];
                const double grams = part.weight_g + part.contents_g + 1e-9; // weightless things still have a middle
                weight += grams;
                moment = moment + grams * part.solids.front().pose.center;
            }
        }
        return 1 / weight * moment;
    }

    const Bundle& bundle_;
};

} // namespace

std::vector<Footing> footings(const Bundle& bundle)
{
    const Footings all(bundle);
    std::vector<Footing> found;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        found.push_back(all.of(item));
    }
    return found;
}

std::vector<std::size_t> toppling(const Bundle& bundle)
{
    std::vector<std::size_t> found;
    const std::vector<Footing> all = footings(bundle);
    for (std::size_t item = 0; item < all.size(); ++item) {
        if (topples(all[item])) {
            found.push_back(item);
        }
    }
    return found;
}

} // namespace tuckwright
