// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/siblings.hpp"

#include <algorithm>
#include <cmath>

namespace tuckwright::stacking {

namespace {

constexpr double meets = -1e-7;     ///< mm: a way that overlaps an obstacle by more than this is barred
constexpr double same_height = 0.1; ///< mm: what rests on one floor counts as equally low

bool apart(const Extent& a, const Extent& b)
{
    return a.high.x < b.low.x || b.high.x < a.low.x || a.high.y < b.low.y || b.high.y < a.low.y || a.high.z < b.low.z ||
           b.high.z < a.low.z;
}

int urgency(Wanted reach)
{
    switch (reach) {
    case Wanted::first: return 2;
    case Wanted::early: return 1;
    case Wanted::last: return -1;
    case Wanted::any: break;
    }
    return 0;
}

/// The plainest way into the container of an item.
Direction plain_way(const Bundle& bundle, std::size_t item) { return ways_in(bundle, item, false).front(); }

} // namespace

bool can_stand_empty(const Replay& complete, std::size_t item)
{
    const Bundle& bundle = complete.bundle();
    const auto& cavities = bundle.items[item].cavities;
    const auto& inside = complete.contents(item);
    if (inside.empty() || complete.lid(item) || narrow_cavity(bundle, item) != nullptr) {
        return false; // below a narrow opening, what it holds could not be moved aside with it
    }
    const Direction way = plain_way(bundle, item);
    return std::all_of(inside.begin(), inside.end(), [&](std::size_t held) {
        const PlacedCavity& cavity = cavities[bundle.items[held].in->cavity];
        const auto axis = exact_axis(cavity.pose.turn, 2);
        return cavity.opens == Opening::both && axis && (*axis == way || *axis == opposite(way));
    });
}

Siblings::Siblings(const Replay& complete, std::optional<std::size_t> holder, const std::vector<bool>& opened)
    : bundle_(complete.bundle()), size_(size_of(bundle_))
{
    for (const std::size_t item : complete.contents(holder)) {
        ways_.push_back(ways_of(complete, item));
        const Direction plain = ways_.back().front().direction;
        items_.push_back(item);
        for (std::size_t next = items_.size() - 1; next < items_.size(); ++next) {
            if (opened[items_[next]]) {
                const auto& inside = complete.contents(items_[next]);
                items_.insert(items_.end(), inside.begin(), inside.end());
                ways_.resize(items_.size(), {Way{plain, std::nullopt}});
            }
        }
        for (std::size_t next = ranks_.size(); next < items_.size(); ++next) {
            const Vec3 down = to_vector(plain);
            ranks_.push_back(work_out_rank(items_[next], (1 / norm(down)) * down));
            add(complete, items_[next], opened);
        }
    }
}

void Siblings::add(const Replay& complete, std::size_t item, const std::vector<bool>& opened)
{
    auto& solids = solids_.emplace_back();
    for (const std::size_t member : complete.group(item)) {
        if (!opened[item] || !is_within(bundle_, member, item)) {
            const auto& own = bundle_.items[member].solids;
            solids.insert(solids.end(), own.begin(), own.end());
        }
    }
    auto& extents = extents_.emplace_back();
    for (const Solid& solid : solids) {
        extents.push_back(extent(hull_of(solid)));
    }
}

Siblings::Rank Siblings::work_out_rank(std::size_t item, Vec3 down) const
{
    const PlacedItem& it = bundle_.items[item];
    double lowest = 1e6;
    for (const Solid& solid : it.solids) {
        lowest = std::min(lowest, -support(hull_of(solid), down));
    }
    return {urgency(it.reach), std::llround(lowest / same_height),
            it.solids.empty() ? 0 : -volume_ml(it.solids.front().shape), item};
}

bool Siblings::barred(std::size_t mover, std::size_t way, std::size_t other)
{
    if (lies_in(mover, other) || lies_in(other, mover)) {
        return lies_in(other, mover); // an opened sleeve goes first, and then bars nothing that goes along its axis
    }
    const auto [known, fresh] = barred_.try_emplace({mover, way, other}, false);
    if (fresh) {
        known->second = work_out(mover, ways_[mover][way], other);
    }
    return known->second;
}

bool Siblings::work_out(std::size_t mover, const Way& way, std::size_t other) const
{
    return std::any_of(solids_[mover].begin(), solids_[mover].end(), [&](const Solid& solid) {
        return meets_on(drawn_in(where_it_begins(solid, way.via), way.direction, size_), other) ||
               (way.via && meets_on(hull_of(solid, *way.via), other));
    });
}

bool Siblings::meets_on(const Hull& way, std::size_t other) const
{
    const Extent reach = extent(way);
    for (std::size_t k = 0; k < solids_[other].size(); ++k) {
        if (!apart(reach, extents_[other][k]) && separation(way, hull_of(solids_[other][k])).distance < meets) {
            return true;
        }
    }
    return false;
}

} // namespace tuckwright::stacking
