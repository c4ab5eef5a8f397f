// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/room_judge.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "support/random_solids.hpp"
#include "tuckwright/proof.hpp"

namespace room_test {

using namespace tuckwright;

namespace {

bool meet(const Extent& a, const Extent& b)
{
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y && a.low.z < b.high.z &&
           b.low.z < a.high.z;
}

class Judge {
public:
    Judge(const Bundle& bundle, const std::optional<Lodging>& in) : bundle_(bundle), in_(in)
    {
        for (std::size_t item = 0; item < bundle.items.size(); ++item) {
            bool holds = false;
            for (auto at = in; at; at = bundle.items[at->item].in) {
                holds = holds || at->item == item;
            }
            for (const Solid& solid : bundle.items[item].solids) {
                if (!holds) {
                    others_.emplace_back(hull_of(solid), extent(hull_of(solid)));
                }
            }
        }
        if (in) {
            const Matrix3 m = rotation_matrix(bundle.items[in->item].cavities[in->cavity].pose.turn);
            up_ = {m[0][2], m[1][2], m[2][2]};
        }
    }

    double conflict(const Hull& hull, double enough) const
    {
        double worst = beyond(hull, bundle_.envelope, middle(), true, true, 0);
        for (auto at = in_; at; at = bundle_.items[at->item].in) {
            const PlacedCavity& cavity = bundle_.items[at->item].cavities[at->cavity];
            worst = std::max(worst, beyond(hull, cavity.shape, cavity.pose, cavity.opens != Opening::both,
                                           cavity.opens == Opening::closed || cavity.neck, bundle_.clearance));
        }
        const Extent box = extent(hull);
        for (const auto& [other, its_box] : others_) {
            if (worst > enough) {
                return worst;
            }
            if (meet(box, its_box)) {
                worst = std::max(worst, -separation(hull, other).distance);
            }
        }
        return worst;
    }

    /// The hull moved, and turned about the upright.
    Hull moved(const Hull& hull, Vec3 by, double angle) const
    {
        Hull next = hull;
        next.center = hull.center + by;
        const double c = std::cos(angle), s = std::sin(angle);
        for (std::size_t k = 0; k < 3; ++k) {
            const Vec3 v{hull.rotation[0][k], hull.rotation[1][k], hull.rotation[2][k]};
            const Vec3 w = c * v + s * cross(up_, v) + ((1 - c) * dot(up_, v)) * up_; // Rodrigues' formula
            next.rotation[0][k] = w.x;
            next.rotation[1][k] = w.y;
            next.rotation[2][k] = w.z;
        }
        return next;
    }

private:
    Pose middle() const
    {
        Pose pose{{0, 0, height_of(bundle_.envelope) / 2}, {}};
        if (const auto* box = std::get_if<Box>(&bundle_.envelope)) {
            pose.center = {box->length / 2, box->width / 2, box->height / 2};
        }
        return pose;
    }

    /// How far it stands out of a room; what tapers counts as straight, which is less strict.
    static double beyond(const Hull& hull, const Shape& room, const Pose& pose, bool floor, bool top, double clearance)
    {
        const Matrix3 m = rotation_matrix(pose.turn);
        const auto out = [&](Vec3 n, double half) { return support(hull, n) - dot(n, pose.center) - half; };
        const auto axis = [&](std::size_t k) { return Vec3{m[0][k], m[1][k], m[2][k]}; };
        double worst = -1e9;
        if (const auto* round = std::get_if<Cylinder>(&room)) {
            constexpr int directions = 120;
            for (int k = 0; k < directions; ++k) {
                const double angle = 2 * std::numbers::pi * k / directions;
                worst = std::max(worst, out(std::cos(angle) * axis(0) + std::sin(angle) * axis(1),
                                            round->diameter / 2 - clearance));
            }
        } else {
            const auto& box = std::get<Box>(room);
            for (const double sign : {1.0, -1.0}) {
                worst = std::max({worst, out(sign * axis(0), box.length / 2 - clearance),
                                  out(sign * axis(1), box.width / 2 - clearance)});
            }
        }
        worst = floor ? std::max(worst, out(-1.0 * axis(2), height_of(room) / 2)) : worst;
        return top ? std::max(worst, out(axis(2), height_of(room) / 2)) : worst;
    }

    const Bundle& bundle_;
    std::optional<Lodging> in_;
    std::vector<std::pair<Hull, Extent>> others_;
    Vec3 up_{0, 0, 1};
};

double longest(const Shape& shape)
{
    if (const auto* round = std::get_if<Cylinder>(&shape)) {
        return std::max(round->diameter, round->height);
    }
    const auto& box = std::get<Box>(shape);
    return std::max({box.length, box.width, box.height});
}

/// Only things that these names are told of are checked for what is near them.
int judge_one(const Bundle& bundle, const RoomLeft& room, Posing posing, const std::optional<OneMore>& one)
{
    if (!one) {
        return 0;
    }
    INFO(bundle.kit << ", " << (room.in ? label(bundle, room.in->item) : "bundle") << ", " << to_string(posing) << ", "
                    << volume_ml(one->solid.shape) << " ml");
    const auto with = with_one_more(bundle, room.in, one->solid);
    REQUIRE(with.has_value());
    CHECK(check(*with).empty());
    CHECK(with->items.back().solids.front() == one->solid);
    CHECK(with->items.size() == bundle.items.size() + 1);
    const Solid larger = scaled(one->solid, 1.02);
    const double farthest = 0.02 * longest(one->solid.shape);
    CHECK(least_conflict(bundle, room.in, posing, larger, farthest) > 0);
    return 1;
}

} // namespace

Solid scaled(const Solid& solid, double factor)
{
    Solid larger = solid;
    if (auto* round = std::get_if<Cylinder>(&larger.shape)) {
        *round = {round->diameter * factor, round->height * factor};
    } else {
        auto& box = std::get<Box>(larger.shape);
        box = {box.length * factor, box.width * factor, box.height * factor};
    }
    return larger;
}

double least_conflict(const Bundle& bundle, const std::optional<Lodging>& in, Posing posing, const Solid& solid,
                      double farthest)
{
    const Judge judge(bundle, in);
    const Hull hull = hull_of(solid);
    const double size = longest(solid.shape);
    test::Dice dice(77);
    double least = judge.conflict(hull, 1e9), angle = 0;
    Vec3 by;
    for (double step = farthest; step > farthest / 60; step *= 0.6) {
        for (int k = 0; k < 12; ++k) {
            Vec3 way = dice.direction();
            way = k % 3 == 0 ? Vec3{way.x, way.y, 0} : k % 3 == 1 ? Vec3{0, 0, way.z > 0 ? 1.0 : -1.0} : way;
            const double turn = posing == Posing::standing || k % 2 == 0 ? 0 : dice.between(-2, 2) * step / size;
            const double there = judge.conflict(judge.moved(hull, by + step * way, angle + turn), least);
            if (there < least) {
                least = there;
                by = by + step * way;
                angle += turn;
            }
        }
    }
    return least;
}

int judge(const Bundle& bundle, const RoomAnswer& answer)
{
    int things = 0;
    CHECK(answer.complete);
    for (const RoomLeft& room : answer.rooms) {
        for (const Posing posing : posings) {
            things += judge_one(bundle, room, posing, room.of(posing));
        }
        things += judge_one(bundle, room, Posing::standing, room.other);
    }
    return things;
}

} // namespace room_test
