// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. An item leaves against the direction in which it went in. Whatever stands in that way has to leave before, and
// what stands in the way of that. This is tried in the whole bundle, where an item must also get out of all its vessels in
// one straight move, and on the table with each of these vessels, after that has been taken out with all it holds.
#include <algorithm>
#include <functional>
#include <map>
#include <set>

#include "stacking/direction.hpp"
#include "stacking/hanging.hpp"
#include "stacking/plane_search.hpp"
#include "tuckwright/handling.hpp"

namespace tuckwright {

namespace {

using stacking::Direction;
using stacking::Hanging;
using Things = std::set<std::size_t>;
using Seen = std::function<void(const SeparatingPlane&)>;

class Unpacker {
public:
    Unpacker(const Bundle& bundle, Seen seen)
        : bundle_(bundle), hanging_(bundle), size_(stacking::size_of(bundle)), seen_(std::move(seen)),
          lids_(bundle.items.size()), aside_(bundle.items.size(), false)
    {
        for (std::size_t item = 0; item < bundle.items.size(); ++item) {
            ways_.push_back(stacking::ways_in(bundle, item, false).front());
            if (bundle.items[item].closes) {
                lids_[*bundle.items[item].closes] = item;
            }
        }
        for (const Step& step : bundle.steps) {
            ways_[step.item] = step.direction;
            aside_[step.item] = step.via.has_value();
        }
    }

    /// Nothing where it can't be drawn out along these ways.
    std::optional<Things> before(std::size_t item) const
    {
        std::optional<Things> best = within(item, std::nullopt);
        for (auto vessel = hanging_.next(item); vessel; vessel = hanging_.next(*vessel)) {
            const auto inner = within(item, vessel), outer = before(*vessel);
            if (!inner || !outer) {
                continue;
            }
            Things all = *outer;
            all.insert(*vessel);
            all.insert(inner->begin(), inner->end());
            if (!best || count(all) < count(*best)) {
                best = std::move(all);
            }
        }
        return best;
    }

    std::size_t count(const Things& things) const
    {
        std::size_t sum = 0;
        for (const std::size_t thing : things) {
            sum += handled(thing);
        }
        return sum;
    }

private:
    using Scope = std::optional<std::size_t>; ///< the bundle, or a vessel on the table

    bool is_there(std::size_t item, Scope scope) const { return !scope || hanging_.on(item, *scope); }

    /// A thing, and what would fall out of it where it is a sleeve.
    std::size_t handled(std::size_t thing) const
    {
        std::size_t sum = 1;
        for (std::size_t item = 0; item < bundle_.items.size(); ++item) {
            const auto& in = bundle_.items[item].in;
            if (in && in->item == thing && !bundle_.items[item].closes &&
                bundle_.items[thing].cavities[in->cavity].opens == Opening::both) {
                sum += handled(item);
            }
        }
        return sum;
    }

    std::optional<Things> within(std::size_t item, Scope scope) const
    {
        Things out{item};
        std::vector<std::size_t> open{item};
        std::vector<std::pair<std::size_t, std::size_t>> pairs; // the first leaves after the second
        while (!open.empty()) {
            const std::size_t mover = open.back();
            open.pop_back();
            const auto barred = barred_by(mover, item, scope);
            if (!barred) {
                return std::nullopt;
            }
            for (const std::size_t thing : *barred) {
                pairs.emplace_back(mover, thing);
                if (out.insert(thing).second) {
                    open.push_back(thing);
                }
            }
        }
        if (!has_order(out, pairs)) {
            return std::nullopt;
        }
        out.erase(item);
        return out;
    }

    static bool has_order(Things left, const std::vector<std::pair<std::size_t, std::size_t>>& pairs)
    {
        while (!left.empty()) {
            const auto free = std::find_if(left.begin(), left.end(), [&](std::size_t thing) {
                return std::none_of(pairs.begin(), pairs.end(), [&](const auto& pair) {
                    return pair.first == thing && left.count(pair.second) > 0;
                });
            });
            if (free == left.end()) {
                return false;
            }
            left.erase(free);
        }
        return true;
    }

    /// The things that have to leave directly before the mover; nothing where it can't leave at all.
    std::optional<Things> barred_by(std::size_t mover, std::size_t wanted, Scope scope) const
    {
        Things things;
        const Direction& way = ways_[mover];
        if (aside_[mover] || (!scope && way[2] > 0)) {
            return std::nullopt; // not in one straight move, or down through what the bundle stands on
        }
        for (auto in = bundle_.items[mover].in; in && is_there(in->item, scope); in = bundle_.items[in->item].in) {
            const PlacedCavity& cavity = bundle_.items[in->item].cavities[in->cavity];
            const auto axis = stacking::exact_axis(cavity.pose.turn, 2);
            const bool along = axis && (way == *axis || way == stacking::opposite(*axis));
            if (!along || (cavity.opens != Opening::both && stacking::sign_of_dot(way, *axis) > 0)) {
                return std::nullopt;
            }
            const auto lid = lids_[in->item];
            if (lid && *lid != mover && in->cavity == 0) {
                things.insert(*lid);
            }
        }
        for (std::size_t other = 0; other < bundle_.items.size(); ++other) {
            if (!is_there(other, scope) || hanging_.on(other, mover) || hanging_.in(mover, other) ||
                passes(mover, other)) {
                continue;
            }
            const auto thing = thing_of(other, wanted, scope);
            if (!thing || *thing == mover) {
                return std::nullopt;
            }
            things.insert(*thing);
        }
        return things;
    }

    /// What is taken hold of to take an item away: the outermost thing that it hangs on and that does not hold the
    /// wanted one. Nothing where it holds that, or hangs on it.
    std::optional<std::size_t> thing_of(std::size_t item, std::size_t wanted, Scope scope) const
    {
        if (hanging_.on(item, wanted) || hanging_.on(wanted, item)) {
            return std::nullopt;
        }
        for (auto next = hanging_.next(item); next && next != scope && !hanging_.on(wanted, *next);
             next = hanging_.next(*next)) {
            item = *next;
        }
        return item;
    }

    bool passes(std::size_t mover, std::size_t other) const
    {
        const auto [known, fresh] = passes_.try_emplace({mover, other}, false);
        if (fresh) {
            known->second = work_out(mover, other);
        }
        return known->second;
    }

    bool work_out(std::size_t mover, std::size_t other) const
    {
        bool all = true;
        for (std::size_t part = 0; part < bundle_.items.size(); ++part) {
            if (!hanging_.on(part, mover)) {
                continue;
            }
            const auto &moved = bundle_.items[part].solids, &standing = bundle_.items[other].solids;
            for (std::size_t i = 0; i < moved.size() && all; ++i) {
                for (std::size_t j = 0; j < standing.size() && all; ++j) {
                    const auto way = stacking::drawn_past(moved[i], ways_[mover], standing[j], size_);
                    all = all && way.proved;
                    if (way.normal && seen_) {
                        seen_({part, i, other, j, *way.normal});
                    }
                }
            }
        }
        return all;
    }

    const Bundle& bundle_;
    Hanging hanging_;
    double size_;
    Seen seen_;
    std::vector<std::optional<std::size_t>> lids_;
    std::vector<Direction> ways_;
    std::vector<bool> aside_; ///< moved aside below a narrow opening
    mutable std::map<std::pair<std::size_t, std::size_t>, bool> passes_; ///< of those that were asked about
};

} // namespace

Unpacking unpacking(const Bundle& bundle, std::size_t item)
{
    const Unpacker unpacker(bundle, {});
    const auto things = unpacker.before(item);
    if (things) {
        return {true, {things->begin(), things->end()}, unpacker.count(*things)};
    }
    Unpacking all;
    for (auto step = bundle.steps.rbegin(); step != bundle.steps.rend() && step->item != item; ++step) {
        all.before.push_back(step->item);
    }
    all.count = all.before.size();
    return all;
}

std::vector<SeparatingPlane> unpacking_planes(const Bundle& bundle)
{
    std::vector<SeparatingPlane> planes;
    const Unpacker unpacker(bundle, [&](const SeparatingPlane& plane) { planes.push_back(plane); });
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        if (bundle.items[item].reach != Wanted::any) {
            unpacker.before(item);
        }
    }
    return planes;
}

} // namespace tuckwright
