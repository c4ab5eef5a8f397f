// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/covers.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/polygons.hpp"
#include "drawing/section.hpp"

namespace tuckwright::drawing {

namespace {

/// Where a plane meets solids, as its camera sees it: the convex outline of all of them.
std::vector<Spot> outline_in_plane(const std::vector<Solid>& solids, const Cut& plane)
{
    std::vector<Spot> points;
    for (const Solid& solid : solids) {
        const auto section = section_of(solid, plane);
        points.insert(points.end(), section.begin(), section.end());
    }
    return points.size() < 3 ? std::vector<Spot>() : convex_outline(points);
}

std::vector<Vec3> in_space(const std::vector<Spot>& outline, const Cut& plane)
{
    std::vector<Vec3> loop;
    for (const Spot& spot : outline) {
        loop.push_back(spot.x * plane.camera.right + -spot.y * plane.camera.up + plane.level * plane.camera.toward);
    }
    return loop;
}

double length_of(const std::vector<Spot>& outline)
{
    double length = 0;
    for (std::size_t k = 0; k < outline.size(); ++k) {
        const Spot &a = outline[k], &b = outline[(k + 1) % outline.size()];
        length += std::hypot(b.x - a.x, b.y - a.y);
    }
    return length;
}

std::vector<Vec3> over_a_lid(const Bundle& bundle, std::size_t lid)
{
    const PlacedItem& vessel = bundle.items[*bundle.items[lid].closes];
    std::vector<Solid> solids = vessel.solids;
    solids.insert(solids.end(), bundle.items[lid].solids.begin(), bundle.items[lid].solids.end());
    const Pose& pose = vessel.solids.front().pose;
    std::vector<Vec3> shortest;
    double least = 1e9;
    for (const std::size_t k : {std::size_t{1}, std::size_t{0}}) {
        const Vec3 right = own_axis(pose, k), up = own_axis(pose, 2);
        const Camera camera{right, up, cross(right, up)};
        const Cut plane{camera, camera.depth(pose.center), 0};
        const auto outline = outline_in_plane(solids, plane);
        if (!outline.empty() && length_of(outline) < least - 1e-6) {
            least = length_of(outline);
            shortest = in_space(outline, plane);
        }
    }
    return shortest;
}

struct Level {
    double z;
    std::size_t things; ///< that it meets
    double off;         ///< mm from half the height
};

/// The heights half way up each of the things in the bundle, with how many of these each meets.
std::vector<Level> levels_of(const Bundle& bundle)
{
    std::vector<Extent> extents;
    for (const PlacedItem& item : bundle.items) {
        if (!item.in && !item.closes) {
            extents.push_back(extent(hull_of(item.solids.front())));
        }
    }
    const double half = height_of(bundle.envelope) / 2;
    std::vector<Level> levels;
    const auto add = [&](double z) {
        const auto meets = [z](const Extent& e) { return e.low.z < z - 1 && e.high.z > z + 1; };
        const auto things = static_cast<std::size_t>(std::count_if(extents.begin(), extents.end(), meets));
        levels.push_back({z, things, std::abs(z - half)});
    };
    add(half);
    for (const Extent& e : extents) {
        add((e.low.z + e.high.z) / 2);
    }
    return levels;
}

std::vector<Vec3> round_everything(const Bundle& bundle)
{
    const auto levels = levels_of(bundle);
    const auto best = std::min_element(levels.begin(), levels.end(), [](const Level& a, const Level& b) {
        return a.things != b.things ? a.things > b.things : a.off < b.off;
    });
    std::vector<Solid> solids;
    for (const PlacedItem& item : bundle.items) {
        solids.insert(solids.end(), item.solids.begin(), item.solids.end());
    }
    const Cut plane{from_above(), best->z, 0};
    return in_space(outline_in_plane(solids, plane), plane);
}

} // namespace

std::optional<std::size_t> held_lid(const Bundle& bundle, const Band& band)
{
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        if (!band.over.empty() && bundle.items[i].id == band.over && bundle.items[i].closes) {
            return i;
        }
    }
    return std::nullopt;
}

std::vector<Vec3> loop_of(const Bundle& bundle, const Band& band)
{
    if (band.over.empty()) {
        return round_everything(bundle);
    }
    const auto lid = held_lid(bundle, band);
    return lid ? over_a_lid(bundle, *lid) : std::vector<Vec3>();
}

Solid envelope_solid(const Bundle& bundle)
{
    if (const auto* box = std::get_if<Box>(&bundle.envelope)) {
        return {bundle.envelope, {{box->length / 2, box->width / 2, box->height / 2}, {}}};
    }
    return {bundle.envelope, {{0, 0, height_of(bundle.envelope) / 2}, {}}};
}

Solid bag_solid(const Bundle& bundle)
{
    return {outer_envelope(bundle), envelope_solid(bundle).pose}; // as thick on every side: the middle stays
}

} // namespace tuckwright::drawing
