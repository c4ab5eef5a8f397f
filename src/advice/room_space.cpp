// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/room_space.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "tuckwright/handling.hpp"
#include "tuckwright/tolerance.hpp"

namespace tuckwright::advice {

namespace {

Walls walls_of(const Shape& shape, const Pose& pose, double clearance)
{
    Walls walls;
    walls.center = pose.center;
    walls.frame = Axes(pose.turn);
    if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
        const bool tapers = foot_of(*cylinder) < cylinder->diameter; // it takes no clearance then
        const double radius = cylinder->diameter / 2 - (tapers ? 0 : clearance);
        walls.half = {radius, radius, cylinder->height / 2};
        walls.foot = tapers ? cylinder->foot / 2 : radius;
        return walls;
    }
    const auto& box = std::get<Box>(shape);
    walls.round = false;
    walls.half = {box.length / 2 - clearance, box.width / 2 - clearance, box.height / 2};
    walls.foot = walls.half[0];
    return walls;
}

Walls envelope_walls(const Shape& envelope)
{
    Vec3 center{0, 0, height_of(envelope) / 2};
    if (const auto* box = std::get_if<Box>(&envelope)) {
        center = {box->length / 2, box->width / 2, box->height / 2};
    }
    return walls_of(envelope, {center, {}}, 0);
}

/// Whether the one lies in the other, however deep. A shut lid lies beside its vessel.
bool lies_in(const Bundle& bundle, const std::optional<Lodging>& in, std::size_t vessel)
{
    for (auto at = in; at; at = bundle.items[at->item].in) {
        if (at->item == vessel) {
            return true;
        }
    }
    return false;
}

/// Whether an item lies in that place, however deep within something there, or is the lid of what does.
bool lies_beside(const Bundle& bundle, std::size_t item, const std::optional<Lodging>& in)
{
    if (!in) {
        return true;
    }
    for (auto at = bundle.items[item].in; at; at = bundle.items[at->item].in) {
        if (*at == *in) {
            return true;
        }
    }
    return false;
}

/// Items that nothing of unknown weight may press on: those that bear little or nothing, and all that presses on them.
std::vector<bool> not_to_be_loaded(const Bundle& bundle, const std::optional<Lodging>& in)
{
    std::vector<bool> marked(bundle.items.size());
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        const PlacedItem& placed = bundle.items[item];
        if ((!placed.nothing_on_top && !placed.bears_g) || lies_in(bundle, in, item)) {
            continue;
        }
        marked[item] = true;
        for (const std::size_t upper : load_on(bundle, item)) {
            marked[upper] = true;
        }
        for (std::size_t other = 0; other < bundle.items.size(); ++other) {
            const PlacedItem& it = bundle.items[other];
            marked[other] = marked[other] || it.closes == item || lies_in(bundle, it.in, item);
        }
    }
    return marked;
}

std::vector<Obstacle> obstacles_of(const Bundle& bundle, const std::optional<Lodging>& in)
{
    constexpr double well_off = 1.1 * tolerance::rest_drop;
    const std::vector<bool> spared = not_to_be_loaded(bundle, in);
    std::vector<Obstacle> found;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        if (lies_in(bundle, in, item)) {
            continue;
        }
        for (const Solid& solid : bundle.items[item].solids) {
            Hull hull = tuckwright::hull_of(solid, {0, 0, spared[item] ? well_off : 0});
            if (auto* round = std::get_if<Cylinder>(&hull.shape)) {
                round->foot = 0; // what tapers counts as straight outside
            }
            found.push_back({hull, extent(hull), lies_beside(bundle, item, in)});
        }
    }
    return found;
}

/// The least way round that the bag and the bands round everything allow.
std::optional<Girth> girth_of(const Bundle& bundle)
{
    double most = bundle.bag ? bundle.bag->girth : std::numeric_limits<double>::infinity();
    for (const Band& band : bundle.bands) {
        most = band.over.empty() ? std::min(most, band.girth) : most;
    }
    if (std::isinf(most)) {
        return std::nullopt;
    }
    Girth girth{most, {}, std::vector<double>(girth_directions, -std::numeric_limits<double>::infinity())};
    for (const PlacedItem& item : bundle.items) {
        girth.others.insert(girth.others.end(), item.solids.begin(), item.solids.end());
    }
    for (const Solid& solid : girth.others) {
        const Hull hull = tuckwright::hull_of(solid);
        for (std::size_t k = 0; k < girth_directions; ++k) {
            girth.reach[k] = std::max(girth.reach[k], support(hull, girth_direction(k)));
        }
    }
    return girth;
}

} // namespace

Vec3 girth_direction(std::size_t k)
{
    const double angle = 2 * std::numbers::pi * static_cast<double>(k) / static_cast<double>(girth_directions);
    return {std::cos(angle), std::sin(angle), 0};
}

Space space_of(const Bundle& bundle, const std::optional<Lodging>& in)
{
    Space space;
    for (auto at = in; at; at = bundle.items[at->item].in) {
        const PlacedCavity& cavity = bundle.items[at->item].cavities[at->cavity];
        Walls walls = walls_of(cavity.shape, cavity.pose, bundle.clearance);
        walls.floor = cavity.opens != Opening::both;
        walls.top = cavity.opens == Opening::closed || cavity.neck;
        if (space.around.empty()) {
            space.frame = walls.frame;
            space.enters_top = !walls.top;
            space.enters_bottom = !walls.floor;
            if (cavity.neck) {
                space.neck = walls_of(*cavity.neck, cavity.pose, bundle.clearance);
            }
        }
        space.around.push_back(walls);
    }
    space.around.push_back(envelope_walls(bundle.envelope));
    space.obstacles = obstacles_of(bundle, in);
    space.girth = girth_of(bundle);
    return space;
}

Space under_nothing(Space space)
{
    constexpr double far = 1e3; // mm, more than any bundle is high but for the largest
    const Vec3 down = -1.0 * space.frame.axis(2);
    for (Obstacle& obstacle : space.obstacles) {
        if (obstacle.beside) {
            const Vec3 lifted = obstacle.hull.sweep;
            obstacle.hull.center = obstacle.hull.center + lifted;
            obstacle.hull.sweep = far * down - dot(lifted, down) * down;
            obstacle.box = extent(obstacle.hull);
        }
    }
    return space;
}

std::vector<Lodging> cavities_of(const Bundle& bundle)
{
    std::vector<Lodging> found;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        for (std::size_t cavity = 0; !bundle.items[item].full && cavity < bundle.items[item].cavities.size(); ++cavity) {
            found.push_back({item, cavity});
        }
    }
    return found;
}

} // namespace tuckwright::advice
