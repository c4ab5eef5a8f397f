// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. One item bars another's way along the axis if it would meet it when dragged there; the longest chain of such
// pairs, by what each takes up at worst, is the tightest row. Of two that also lie beside each other in part, as crossing
// sticks do, the common part counts once. What stands out of an open vessel is a row of its own, on the vessel's floor.
#include "play/rows.hpp"

#include <algorithm>
#include <cmath>

#include "play/group.hpp"

namespace tuckwright::play {

namespace {

constexpr double parallel = 1 - 1e-9;

/// What something takes up along an axis: by the bundle's own sizes, and the sum of the tolerances in that.
struct Stretch {
    double length = 0, off = 0;
};

double at_worst(const Stretch& stretch, bool sizes_are_worst)
{
    return stretch.length + (sizes_are_worst ? 0 : stretch.off);
}

/// By how much a solid may be wider along a unit vector.
double growth(const Solid& solid, const Spread& off, Vec3 along)
{
    const Matrix3 m = rotation_matrix(solid.pose.turn);
    if (std::holds_alternative<Cylinder>(solid.shape)) {
        const double c = std::min(1.0, std::abs(dot(axis_of(m, 2), along)));
        return std::sqrt(1 - c * c) * off.mm[0] + c * off.mm[1];
    }
    double sum = 0;
    for (std::size_t k = 0; k < 3; ++k) {
        sum += std::abs(dot(axis_of(m, k), along)) * off.mm[k];
    }
    return sum;
}

class Rows {
public:
    explicit Rows(const Bundle& bundle) : bundle_(bundle), holders_(holders(bundle)) {}

    /// The row that takes up the most along a unit vector.
    struct Longest {
        std::vector<std::size_t> items;
        Stretch stretch;
    };
    Longest longest(Lodging in, Vec3 along) const
    {
        std::vector<std::size_t> inside;
        for (std::size_t i = 0; i < bundle_.items.size(); ++i) {
            if (bundle_.items[i].in == in && !bundle_.items[i].closes) {
                inside.push_back(i);
            }
        }
        const auto place = [&](std::size_t i) { return dot(bundle_.items[i].solids.front().pose.center, along); };
        std::stable_sort(inside.begin(), inside.end(),
                         [&](std::size_t a, std::size_t b) { return place(a) < place(b); });
        std::vector<Longest> ending;
        std::vector<double> ends;
        Longest most;
        for (std::size_t k = 0; k < inside.size(); ++k) {
            const Stretch own = stretch_of(inside[k], along);
            const double begin = begin_of(inside[k], along, own.length);
            ends.push_back(begin + own.length);
            Longest row;
            for (std::size_t j = 0; j < k; ++j) {
                if (bars(inside[j], inside[k], along)) {
                    Longest before = ending[j];
                    before.stretch.length -= std::max(0.0, ends[j] - begin);
                    row = worst(before.stretch) > worst(row.stretch) ? before : row;
                }
            }
            row.items.push_back(inside[k]);
            row.stretch = {row.stretch.length + own.length, row.stretch.off + own.off};
            ending.push_back(row);
            if (most.items.empty() || worst(row.stretch) > worst(most.stretch)) {
                most = row;
            }
        }
        return most;
    }

private:
    double worst(const Stretch& stretch) const { return at_worst(stretch, bundle_.worst_case); }

    /// The solids of an item and of all that hangs on it.
    std::vector<Solid> group(std::size_t item) const
    {
        std::vector<Solid> all;
        for (std::size_t i = 0; i < bundle_.items.size(); ++i) {
            if (hangs_on(holders_, i, item)) {
                all.insert(all.end(), bundle_.items[i].solids.begin(), bundle_.items[i].solids.end());
            }
        }
        return all;
    }

    /// Whether the first, dragged along, would meet the second.
    bool bars(std::size_t first, std::size_t second, Vec3 along) const
    {
        constexpr double depth = -1e-3; // what only brushes does not bar
        for (const Solid& a : group(first)) {
            for (const Solid& b : group(second)) {
                const double far = 2 * width_along({a, b}, along);
                if (separation(hull_of(a, far * along), hull_of(b)).distance < depth) {
                    return true;
                }
            }
        }
        return false;
    }

    Stretch stretch_of(std::size_t item, Vec3 along) const
    {
        const PlacedItem& placed = bundle_.items[item];
        Stretch stretch{width_along(placed.solids, along), 0};
        for (std::size_t k = 0; k < std::min(placed.solids.size(), placed.solids_off.size()); ++k) {
            stretch.off = std::max(stretch.off, growth(placed.solids[k], placed.solids_off[k], along));
        }
        const Vec3 own = axis_of(rotation_matrix(placed.solids.front().pose.turn), 2);
        if (std::abs(dot(own, along)) < parallel) {
            return stretch;
        }
        for (const PlacedItem& lid : bundle_.items) { // its plate lies on the vessel's rim
            if (lid.closes == item) {
                stretch.length += width_along({lid.solids.front()}, along);
                stretch.off += lid.solids_off.empty() ? 0 : growth(lid.solids.front(), lid.solids_off.front(), along);
            }
        }
        for (std::size_t k = 0; k < placed.cavities.size(); ++k) {
            const Stretch standing_out = over_the_floor(item, k, own);
            if (worst(standing_out) > worst(stretch)) {
                stretch = standing_out;
            }
        }
        return stretch;
    }

    /// Where an item with so much that stands out of it begins along a unit vector.
    double begin_of(std::size_t item, Vec3 along, double length) const
    {
        const PlacedItem& placed = bundle_.items[item];
        const Vec3 own = axis_of(rotation_matrix(placed.solids.front().pose.turn), 2);
        double low = 1e9, high = -1e9;
        for (const Solid& solid : placed.solids) {
            low = std::min(low, -support(hull_of(solid), -1.0 * along));
            high = std::max(high, support(hull_of(solid), along));
        }
        return dot(own, along) < -parallel ? high - length : low;
    }

    /// From the foot of a vessel to the top of what stands in it; nothing in an empty or shut one. A sleeve has no floor.
    Stretch over_the_floor(std::size_t item, std::size_t cavity, Vec3 up) const
    {
        const PlacedItem& placed = bundle_.items[item];
        const PlacedCavity& room = placed.cavities[cavity];
        const Longest row = room.opens == Opening::closed ? Longest{} : longest({item, cavity}, up);
        if (row.items.empty()) {
            return {};
        }
        Stretch stretch = row.stretch;
        if (room.opens == Opening::top) {
            const Spread outside = placed.solids_off.empty() ? Spread{} : placed.solids_off.front();
            stretch.length += height_of(placed.solids.front().shape) - height_of(room.shape);
            stretch.off += outside.mm[height_index(placed.solids.front().shape)] + room.off.mm[height_index(room.shape)];
        }
        return stretch;
    }

    const Bundle& bundle_;
    std::vector<std::optional<std::size_t>> holders_;
};

} // namespace

double width_along(const std::vector<Solid>& solids, Vec3 along)
{
    double low = 1e9, high = -1e9;
    for (const Solid& solid : solids) {
        const Hull hull = hull_of(solid);
        low = std::min(low, -support(hull, -1.0 * along));
        high = std::max(high, support(hull, along));
    }
    return high - low;
}

std::optional<Row> tightest_row(const Bundle& bundle, Lodging in, std::size_t axis)
{
    const PlacedCavity& cavity = bundle.items[in.item].cavities[in.cavity];
    const Vec3 along = axis_of(rotation_matrix(cavity.pose.turn), axis);
    const auto row = Rows(bundle).longest(in, along);
    if (row.items.empty()) {
        return std::nullopt;
    }
    const double whole = width_along({{cavity.shape, cavity.pose}}, along);
    const bool round = std::holds_alternative<Cylinder>(cavity.shape);
    const double off = row.stretch.off + cavity.off.mm[round && axis == 2 ? 1 : axis];
    const double room = whole - row.stretch.length;
    if (bundle.worst_case) {
        return Row{row.items, room + off, room};
    }
    return Row{row.items, room, room - off};
}

} // namespace tuckwright::play
