// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/handled.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/camera.hpp"
#include "drawing/shown.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::drawing {

namespace {

constexpr double stands_cosine = 0.996;
constexpr double lying_on = 1e-3; ///< mm between what lies on one another

bool is_sleeve(const PlacedItem& item)
{
    return !item.cavities.empty() && item.cavities.front().opens == Opening::both;
}

Vec3 as_vector(const std::array<std::int64_t, 3>& direction)
{
    return {static_cast<double>(direction[0]), static_cast<double>(direction[1]), static_cast<double>(direction[2])};
}

/// Where a vessel's mouth points; a sleeve has two, and what goes in comes through the upper one.
Vec3 mouth_of(const PlacedItem& vessel, const std::array<std::int64_t, 3>& way_in)
{
    const Vec3 axis = own_axis(vessel.cavities.empty() ? vessel.solids.front().pose : vessel.cavities.front().pose, 2);
    return is_sleeve(vessel) && dot(axis, as_vector(way_in)) > 0 ? -1.0 * axis : axis;
}

constexpr double fine = 1 << 24; ///< what a number of a turn or direction may be in a picture

/// The turn in numbers that are small enough to be composed with others.
Quaternion with_less(const Quaternion& q)
{
    const double most = std::max({std::abs(static_cast<double>(q.w)), std::abs(static_cast<double>(q.x)),
                                  std::abs(static_cast<double>(q.y)), std::abs(static_cast<double>(q.z))});
    if (most <= fine) {
        return q;
    }
    const auto rounded = [&](std::int64_t part) { return std::llround(static_cast<double>(part) / most * fine); };
    return {rounded(q.w), rounded(q.x), rounded(q.y), rounded(q.z)};
}

/// The least turn that leads a direction upwards.
Quaternion turn_upwards(Vec3 from)
{
    const Vec3 u = unit(from), axis = cross(u, {0, 0, 1});
    if (1 + u.z < 1e-12) {
        return {0, 1, 0, 0};
    }
    return {std::llround(fine * (1 + u.z)), std::llround(fine * axis.x), std::llround(fine * axis.y), 0};
}

Vec3 turned(const Matrix3& m, Vec3 v)
{
    return {m[0][0] * v.x + m[0][1] * v.y + m[0][2] * v.z, m[1][0] * v.x + m[1][1] * v.y + m[1][2] * v.z,
            m[2][0] * v.x + m[2][1] * v.y + m[2][2] * v.z};
}

bool is_or_hangs_on(const Bundle& bundle, std::size_t item, std::size_t other)
{
    std::optional<std::size_t> at = item;
    while (at && at != other) {
        at = parent_of(bundle, *at);
    }
    return at.has_value();
}

/// Does this to every pose of an item.
template <class Do> void for_each_pose(PlacedItem& item, const Do& act)
{
    for (Solid& solid : item.solids) {
        act(solid.pose);
    }
    for (PlacedCavity& cavity : item.cavities) {
        act(cavity.pose);
    }
}

void turn_with_contents(Bundle& bundle, std::size_t root, const Quaternion& turn)
{
    const Matrix3 m = rotation_matrix(turn);
    const Vec3 pivot = bundle.items[root].solids.front().pose.center;
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        if (is_or_hangs_on(bundle, i, root)) {
            for_each_pose(bundle.items[i], [&](Pose& pose) {
                pose.center = pivot + turned(m, pose.center - pivot);
                pose.turn = compose(turn, with_less(pose.turn));
            });
        }
    }
}

/// mm by which one may go down until it meets the other.
double way_down(const Solid& above, const Solid& below)
{
    const Hull other = hull_of(below);
    Hull hull = hull_of(above);
    double way = 0;
    constexpr int most_advances = 100;
    for (int k = 0; k < most_advances; ++k) {
        const Separation s = separation(hull, other);
        const double speed = -s.normal.z;
        if (s.distance <= lying_on) {
            return speed > 1e-6 ? way : 1e9;
        }
        if (speed <= 1e-9) {
            return 1e9;
        }
        way += s.distance / speed;
        hull.center.z -= s.distance / speed;
    }
    return way;
}

/// Lets what is in an upright vessel down, each thing with all that it holds, from the lowest on.
class Settling {
public:
    Settling(Bundle& bundle, std::size_t root, std::size_t step) : bundle_(bundle), there_(bundle.items.size(), false)
    {
        there_[root] = true;
        for (std::size_t k = 0; k <= step; ++k) {
            const std::size_t item = bundle.steps[k].item;
            there_[item] = is_or_hangs_on(bundle, item, root);
        }
        for (std::size_t i = 0; i < bundle.items.size(); ++i) {
            if (there_[i] && i != root && falls_alone(i, root)) {
                units_.push_back(i);
            }
        }
        const auto& cavity = bundle.items[root].cavities.front();
        floor_ = cavity.pose.center.z - height_of(cavity.shape) / 2;
    }

    void run()
    {
        std::stable_sort(units_.begin(), units_.end(),
                         [this](std::size_t a, std::size_t b) { return lowest(a) < lowest(b); });
        for (const std::size_t unit : units_) {
            double way = lowest(unit) - floor_;
            for (const std::size_t other : units_) {
                if (other != unit && !is_or_hangs_on(bundle_, unit, other) && !is_or_hangs_on(bundle_, other, unit)) {
                    way = std::min(way, way_to(unit, other));
                }
            }
            if (way > lying_on) {
                const auto down = [way](Pose& pose) { pose.center.z -= way; };
                for (const std::size_t i : group(unit)) {
                    for_each_pose(bundle_.items[i], down);
                }
            }
        }
    }

private:
    /// Whether it lies in the vessel, or in sleeves there, which have no floor; what is pressed in stays.
    bool falls_alone(std::size_t item, std::size_t root) const
    {
        const PlacedItem& it = bundle_.items[item];
        if (it.closes || !it.in || it.pressed) {
            return false;
        }
        const std::size_t holder = it.in->item;
        return holder == root || (is_sleeve(bundle_.items[holder]) && falls_alone(holder, root));
    }

    /// The item with what hangs on it and does not fall by itself.
    std::vector<std::size_t> group(std::size_t unit) const
    {
        std::vector<std::size_t> found;
        for (std::size_t i = 0; i < bundle_.items.size(); ++i) {
            std::optional<std::size_t> at = i;
            while (at && at != unit && std::find(units_.begin(), units_.end(), *at) == units_.end()) {
                at = parent_of(bundle_, *at);
            }
            if (at == unit) {
                found.push_back(i);
            }
        }
        return found;
    }

    double lowest(std::size_t unit) const
    {
        double low = 1e9;
        for (const std::size_t i : group(unit)) {
            for (const Solid& solid : bundle_.items[i].solids) {
                low = there_[i] ? std::min(low, -support(hull_of(solid), {0, 0, -1})) : low;
            }
        }
        return low;
    }

    double way_to(std::size_t unit, std::size_t other) const
    {
        double way = 1e9;
        for (const std::size_t i : group(unit)) {
            for (const std::size_t j : group(other)) {
                for (const Solid& above : bundle_.items[i].solids) {
                    for (const Solid& below : bundle_.items[j].solids) {
                        way = there_[i] && there_[j] ? std::min(way, way_down(above, below)) : way;
                    }
                }
            }
        }
        return way;
    }

    Bundle& bundle_;
    std::vector<bool> there_;
    std::vector<std::size_t> units_;
    double floor_ = 0;
};

/// Without what is of no use in a picture, which may be large.
Bundle without_proof(const Bundle& bundle)
{
    Bundle copy;
    copy.kit = bundle.kit;
    copy.status = bundle.status;
    copy.clearance = bundle.clearance;
    copy.envelope = bundle.envelope;
    copy.bag = bundle.bag;
    copy.bands = bundle.bands;
    copy.items = bundle.items;
    copy.steps = bundle.steps;
    return copy;
}

bool tapers(const PlacedCavity& cavity)
{
    const auto* round = std::get_if<Cylinder>(&cavity.shape);
    return round != nullptr && round->foot != 0;
}

} // namespace

std::optional<std::size_t> filled_at(const Bundle& bundle, std::size_t step)
{
    require(step <= bundle.steps.size(), "a picture is of a step that is there, or of the finished bundle");
    if (step == bundle.steps.size()) {
        return std::nullopt;
    }
    std::vector<bool> placed(bundle.items.size(), false);
    for (std::size_t k = 0; k < step; ++k) {
        placed[bundle.steps[k].item] = true;
    }
    auto root = parent_of(bundle, bundle.steps[step].item);
    while (root && placed[*root]) {
        root = parent_of(bundle, *root);
    }
    return root;
}

Bundle as_handled(const Bundle& bundle, std::size_t step)
{
    Bundle handled = without_proof(bundle);
    const auto root = filled_at(bundle, step);
    if (!root) {
        return handled;
    }
    Step& now = handled.steps[step];
    const Vec3 mouth = mouth_of(handled.items[*root], now.direction);
    if (mouth.z > stands_cosine) {
        return handled;
    }
    const Quaternion turn = turn_upwards(mouth);
    turn_with_contents(handled, *root, turn);
    const Matrix3 m = rotation_matrix(turn);
    const Vec3 way = fine * unit(turned(m, as_vector(now.direction)));
    now.direction = {std::llround(way.x), std::llround(way.y), std::llround(way.z)};
    if (now.via) {
        now.via = turned(m, *now.via);
    }
    const auto& cavities = handled.items[*root].cavities;
    if (!cavities.empty() && !tapers(cavities.front())) {
        Settling(handled, *root, step).run();
    }
    return handled;
}

Tip tip_at(const Bundle& handled, std::size_t step)
{
    if (step >= handled.steps.size()) {
        return Tip::none;
    }
    const std::size_t item = handled.steps[step].item;
    const PlacedItem& it = handled.items[item];
    bool was_filled = false;
    for (std::size_t k = 0; k < step; ++k) {
        was_filled = was_filled || parent_of(handled, handled.steps[k].item) == item;
    }
    if (!was_filled || it.cavities.empty()) {
        return Tip::none;
    }
    const double up = own_axis(it.cavities.front().pose, 2).z;
    if (up > stands_cosine || (is_sleeve(it) && up < -stands_cosine)) {
        return Tip::none;
    }
    return up < -stands_cosine ? Tip::over : Tip::onto_its_side;
}

} // namespace tuckwright::drawing
