// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Walls stop a thing where its outline reaches them: in closed form. Against another thing it goes on by the
// distance to it, measured along the normal of the nearest points, as long as that leads anywhere; each such step ends
// before the plane between the two, so that no figure is too large, but for what rounded turns slant. Source: conservative advancement, Mirtich 1996,
// Impulse-based dynamic simulation of rigid body systems (thesis, Berkeley), chapter 2; cited from memory.
#include "tuckwright/play.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "play/group.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

using namespace play;

constexpr double touching = 2e-3; ///< mm between things that count as touching
constexpr double sliding = 5e-5;  ///< rad by which a face along the way may slant, for turns are rounded by that
constexpr int most_advances = 60;

/// A room whose walls hold what is in it.
struct Room {
    Shape shape;
    Pose pose;
    bool floor = true, top = true;
};

Room envelope_room(const Bundle& bundle)
{
    if (const auto* cylinder = std::get_if<Cylinder>(&bundle.envelope)) {
        return {bundle.envelope, {{0, 0, cylinder->height / 2}, {}}};
    }
    const auto& box = std::get<Box>(bundle.envelope);
    return {bundle.envelope, {{box.length / 2, box.width / 2, box.height / 2}, {}}};
}

/// How far a circle in the plan goes along (u, v) before it reaches a round wall.
double way_to_round_wall(const PlanCircle& c, double u, double v, double radius)
{
    const double speed = u * u + v * v, room = std::max(0.0, radius - c.r);
    if (speed < 1e-18) {
        return 1e9;
    }
    const double along = c.x * u + c.y * v, left = room * room - c.x * c.x - c.y * c.y;
    const double root = along * along + speed * std::max(0.0, left);
    return std::max(0.0, (std::sqrt(root) - along) / speed);
}

/// What a solid covers in plan, and the radius of the round wall beside it. Where the wall tapers, an upright cylinder has
/// a circle at its foot and one at its top or at the rim; whatever else lies there counts where it is narrowest.
std::vector<std::pair<PlanCircle, double>> circles_and_walls(const Room& room, const Solid& solid)
{
    const auto& wall = std::get<Cylinder>(room.shape);
    std::vector<PlanCircle> circles;
    add_outline(solid, room.pose, circles);
    std::vector<std::pair<PlanCircle, double>> found;
    if (wall.foot == 0) {
        for (const PlanCircle& circle : circles) {
            found.emplace_back(circle, wall.diameter / 2);
        }
        return found;
    }
    const Vec3 up = axis_of(rotation_matrix(room.pose.turn), 2);
    const Hull hull = hull_of(solid);
    const double middle = dot(up, room.pose.center);
    const double low = -support(hull, -1.0 * up) - middle, high = support(hull, up) - middle, rim = wall.height / 2;
    const auto radius_at = [&](double z) {
        return (wall.foot + (wall.diameter - wall.foot) * std::clamp(z / wall.height + 0.5, 0.0, 1.0)) / 2;
    };
    for (const PlanCircle& circle : circles) {
        found.emplace_back(circle, radius_at(low));
    }
    const auto* round = std::get_if<Cylinder>(&solid.shape);
    if (round != nullptr && circles.size() == 1) {
        const double share = std::clamp((rim - low) / (high - low), 0.0, 1.0), foot = foot_of(*round) / 2;
        PlanCircle top = circles.front();
        top.r = foot + share * (round->diameter / 2 - foot);
        found.front().first.r = foot;
        found.emplace_back(top, radius_at(std::min(high, rim)));
    }
    return found;
}

/// How far solids go along a unit vector before a wall of the room stops them.
double way_to_walls(const Room& room, const std::vector<Solid>& solids, Vec3 along)
{
    const Matrix3 m = rotation_matrix(room.pose.turn);
    double way = 1e9;
    const auto stop_at = [&](Vec3 axis, double half) {
        const double speed = dot(axis, along);
        for (const Solid& solid : solids) {
            const double reach = support(hull_of(solid), axis) - dot(axis, room.pose.center);
            way = speed > 1e-9 ? std::min(way, std::max(0.0, half - reach) / speed) : way;
        }
    };
    const double height = height_of(room.shape) / 2;
    if (room.top) {
        stop_at(axis_of(m, 2), height);
    }
    if (room.floor) {
        stop_at(-1.0 * axis_of(m, 2), height);
    }
    if (const auto* box = std::get_if<Box>(&room.shape)) {
        for (const double sign : {-1.0, 1.0}) {
            stop_at(sign * axis_of(m, 0), box->length / 2);
            stop_at(sign * axis_of(m, 1), box->width / 2);
        }
        return way;
    }
    const double u = dot(along, axis_of(m, 0)), v = dot(along, axis_of(m, 1)), down = -dot(along, axis_of(m, 2));
    const auto& round = std::get<Cylinder>(room.shape);
    const double slope = round.foot == 0 ? 0 : (round.diameter - round.foot) / (2 * round.height);
    for (const Solid& solid : solids) {
        for (const auto& [circle, wall] : circles_and_walls(room, solid)) {
            way = std::min(way, way_to_round_wall(circle, u, v, wall));
            if (slope > 0 && down > 1e-9) { // the wall comes nearer
                const double air = std::max(0.0, wall - std::hypot(circle.x, circle.y) - circle.r);
                way = std::min(way, air / (slope * down));
            }
        }
    }
    return way;
}

/// How far one hull goes along a unit vector before it touches the other, if that is less than `most`.
double way_to_hull(Hull moving, const Hull& still, Vec3 along, double most)
{
    double way = 0;
    const Vec3 start = moving.center;
    for (int i = 0; i < most_advances && way < most; ++i) {
        moving.center = start + way * along;
        const Separation apart = separation(moving, still);
        const double speed = dot(apart.normal, along);
        if (speed <= sliding) {
            return most; // it goes along the plane between them, or away from it
        }
        if (apart.distance < touching) {
            return way;
        }
        way += apart.distance / speed;
    }
    return std::min(way, most);
}

struct Piece {
    Hull hull;
    Extent extent;
};

bool meet(const Extent& a, const Extent& b)
{
    return a.low.x <= b.high.x && b.low.x <= a.high.x && a.low.y <= b.high.y && b.low.y <= a.high.y &&
           a.low.z <= b.high.z && b.low.z <= a.high.z;
}

Extent dragged(const Extent& e, Vec3 way)
{
    return {{e.low.x + std::min(0.0, way.x), e.low.y + std::min(0.0, way.y), e.low.z + std::min(0.0, way.z)},
            {e.high.x + std::max(0.0, way.x), e.high.y + std::max(0.0, way.y), e.high.z + std::max(0.0, way.z)}};
}

class Mover {
public:
    explicit Mover(const Bundle& bundle) : bundle_(bundle), holders_(holders(bundle))
    {
        for (const PlacedItem& item : bundle.items) {
            std::vector<Piece> pieces;
            for (const Solid& solid : item.solids) {
                const Hull hull = hull_of(solid);
                pieces.push_back({hull, extent(hull)});
            }
            pieces_.push_back(std::move(pieces));
        }
    }

    Play play_of(std::size_t item)
    {
        Play play;
        if (bundle_.items[item].closes || bundle_.items[item].pressed) {
            return play; // a spring holds it
        }
        gather(item);
        const Matrix3 frame = rotation_matrix(rooms_.front().pose.turn);
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (const std::size_t side : {0, 1}) {
                play.free[axis][side] = snap_down(way((side == 0 ? -1.0 : 1.0) * axis_of(frame, axis)));
            }
        }
        return play;
    }

private:
    /// What moves with the item, what may stand in its way, and the rooms that hold it, the innermost first.
    void gather(std::size_t item)
    {
        moving_.clear();
        obstacles_.clear();
        rooms_.clear();
        solids_.clear();
        for (std::size_t other = 0; other < bundle_.items.size(); ++other) {
            const auto& pieces = pieces_[other];
            const auto& closes = bundle_.items[other].closes;
            if (hangs_on(holders_, other, item)) {
                moving_.insert(moving_.end(), pieces.begin(), pieces.end());
                const auto& own = bundle_.items[other].solids;
                solids_.insert(solids_.end(), own.begin(), own.end());
            } else if (!hangs_on(holders_, item, other) && !(closes && hangs_on(holders_, item, *closes))) {
                obstacles_.insert(obstacles_.end(), pieces.begin(), pieces.end());
            }
        }
        for (auto in = bundle_.items[item].in; in; in = bundle_.items[in->item].in) {
            const PlacedCavity& cavity = bundle_.items[in->item].cavities[in->cavity];
            rooms_.push_back(
                {cavity.shape, cavity.pose, cavity.opens != Opening::both, cavity.opens == Opening::closed});
        }
        rooms_.push_back(envelope_room(bundle_));
    }

    double way(Vec3 along) const
    {
        double free = 1e9;
        for (const Room& room : rooms_) {
            free = std::min(free, way_to_walls(room, solids_, along));
        }
        for (const Piece& piece : moving_) {
            for (const Piece& obstacle : obstacles_) {
                if (free > 0 && meet(dragged(piece.extent, free * along), obstacle.extent)) {
                    free = way_to_hull(piece.hull, obstacle.hull, along, free);
                }
            }
        }
        return free;
    }

    const Bundle& bundle_;
    std::vector<std::optional<std::size_t>> holders_;
    std::vector<std::vector<Piece>> pieces_;
    std::vector<Piece> moving_, obstacles_;
    std::vector<Solid> solids_;
    std::vector<Room> rooms_;
};

} // namespace

std::vector<Play> plays(const Bundle& bundle)
{
    Mover mover(bundle);
    std::vector<Play> all;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        all.push_back(mover.play_of(item));
    }
    return all;
}

double longest_way(const Play& play)
{
    double longest = 0;
    for (const auto& ways : play.free) {
        longest = std::max(longest, ways[0] + ways[1]);
    }
    return longest;
}

std::vector<std::size_t> rattlers(const Bundle& bundle)
{
    std::vector<std::size_t> found;
    for (std::size_t item = 0; item < bundle.plays.size(); ++item) {
        if (!bundle.items[item].soft && longest_way(bundle.plays[item]) >= rattling) {
            found.push_back(item);
        }
    }
    std::stable_sort(found.begin(), found.end(), [&](std::size_t a, std::size_t b) {
        return longest_way(bundle.plays[a]) > longest_way(bundle.plays[b]);
    });
    return found;
}

double total_play(const std::vector<Play>& plays)
{
    double total = 0;
    for (const Play& play : plays) {
        for (const auto& ways : play.free) {
            total += ways[0] + ways[1];
        }
    }
    return total;
}

} // namespace tuckwright
