// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>
#include <set>

#include "proof/apart.hpp"
#include "proof/forest.hpp"
#include "proof/rules.hpp"

namespace tuckwright::proof {

namespace {

using Set = std::set<std::size_t>;

/// Where an item is drawn out: of the whole bundle, or of one vessel that stands on the table with all it holds.
using Place = std::optional<std::size_t>;

class ReachCheck {
public:
    ReachCheck(const Scene& scene, Findings& findings) : scene_(scene), findings_(findings)
    {
        for (const Step& step : scene.bundle().steps) {
            if (step.item < scene.size()) {
                ways_[step.item] = {Rational(static_cast<long>(step.direction[0])),
                                    Rational(static_cast<long>(step.direction[1])),
                                    Rational(static_cast<long>(step.direction[2]))};
                if (step.via) {
                    aside_.insert(step.item);
                }
            }
        }
    }

    void run()
    {
        for (std::size_t item = 0; item < scene_.size() && !findings_.full(); ++item) {
            const PlacedItem& it = this->item(item);
            if ((it.reach != Wanted::any) != it.out_after.has_value()) {
                object(item, it.out_after ? "it tells after how many things it comes out, but nobody asked"
                                          : "it does not tell after how many things it comes out");
            } else if (it.out_after && ways_.size() == scene_.size()) { // else the steps have been objected to
                compare(item, *it.out_after);
            }
        }
    }

private:
    void object(std::size_t item, const std::string& what)
    {
        findings_.add("reach", named(scene_.bundle(), item) + ": " + what);
    }

    const PlacedItem& item(std::size_t index) const { return scene_.bundle().items[index]; }

    void compare(std::size_t index, std::size_t told)
    {
        const auto first = fewest(index);
        const std::size_t proved = first ? number(*first) : later(index);
        if (proved != told) {
            object(index, "it is told to come out after " + std::to_string(told) + " things, but it comes out after " +
                              std::to_string(proved));
        }
    }

    /// The steps backwards always lead to it.
    std::size_t later(std::size_t index) const
    {
        const auto& steps = scene_.bundle().steps;
        const auto own = std::find_if(steps.begin(), steps.end(), [&](const Step& step) { return step.item == index; });
        return static_cast<std::size_t>(steps.end() - own) - 1;
    }

    /// What a sleeve holds falls out of it, and so is counted with it.
    std::size_t number(const Set& things) const
    {
        std::size_t sum = things.size();
        for (const std::size_t thing : things) {
            Set fallen;
            for (std::size_t other = 0; other < scene_.size(); ++other) {
                const auto& in = item(other).in;
                if (in && in->item == thing && !item(other).closes &&
                    item(thing).cavities[in->cavity].opens == Opening::both) {
                    fallen.insert(other);
                }
            }
            sum += number(fallen);
        }
        return sum;
    }

    bool belongs(std::size_t index, std::size_t whole) const
    {
        for (std::optional<std::size_t> at = index; at; at = hangs_on(item(*at))) {
            if (*at == whole) {
                return true;
            }
        }
        return false;
    }

    std::optional<Set> fewest(std::size_t index) const
    {
        auto best = from(index, std::nullopt);
        for (auto vessel = hangs_on(item(index)); vessel; vessel = hangs_on(item(*vessel))) {
            auto sum = fewest(*vessel);
            const auto rest = from(index, vessel);
            if (!sum || !rest) {
                continue;
            }
            sum->insert(*vessel);
            sum->insert(rest->begin(), rest->end());
            if (!best || number(*sum) < number(*best)) {
                best = sum;
            }
        }
        return best;
    }

    /// The things that leave before the item; nothing where it is not proved that it can leave so.
    std::optional<Set> from(std::size_t index, Place place) const
    {
        std::map<std::size_t, Set> after; // by thing: those that leave before it
        Set unseen{index};
        while (!unseen.empty()) {
            const std::size_t thing = *unseen.begin();
            unseen.erase(unseen.begin());
            const auto before = directly_before(thing, index, place);
            if (!before) {
                return std::nullopt;
            }
            after[thing] = *before;
            for (const std::size_t other : *before) {
                if (after.count(other) == 0) {
                    unseen.insert(other);
                }
            }
        }
        Set gone;
        for (bool more = true; more;) {
            more = false;
            for (const auto& [thing, before] : after) {
                if (gone.count(thing) == 0 && std::includes(gone.begin(), gone.end(), before.begin(), before.end())) {
                    gone.insert(thing);
                    more = true;
                }
            }
        }
        if (gone.size() != after.size()) {
            return std::nullopt; // some bar one another
        }
        gone.erase(index);
        return gone;
    }

    std::optional<Set> directly_before(std::size_t mover, std::size_t wanted, Place place) const
    {
        Set before;
        const Vector& way = ways_.at(mover);
        if (aside_.count(mover) > 0 || (!place && way[2] > 0)) {
            return std::nullopt; // not straight, or down, where the bundle stands
        }
        for (const Lodging& where : containers_of(scene_.bundle(), mover)) {
            if (place && !belongs(where.item, *place)) {
                break;
            }
            const Vector& axis = scene_.cavities(where.item)[where.cavity].axis[2];
            const bool both = item(where.item).cavities[where.cavity].opens == Opening::both;
            if (!parallel(way, axis) || (!both && dot(way, axis) > 0)) {
                return std::nullopt;
            }
            if (const auto lid = scene_.lid(where.item); lid && *lid != mover && where.cavity == 0) {
                before.insert(*lid);
            }
        }
        for (std::size_t other = 0; other < scene_.size(); ++other) {
            if ((place && !belongs(other, *place)) || belongs(other, mover) || holds(scene_.bundle(), other, mover) ||
                group_passes(mover, other, way)) {
                continue;
            }
            if (belongs(other, wanted) || belongs(wanted, other)) {
                return std::nullopt;
            }
            const std::size_t whole = taken_with(other, wanted, place);
            if (whole == mover) {
                return std::nullopt;
            }
            before.insert(whole);
        }
        return before;
    }

    /// The outermost thing on which it hangs and on which the wanted one does not, within the place.
    std::size_t taken_with(std::size_t index, std::size_t wanted, Place place) const
    {
        for (auto next = hangs_on(item(index)); next && next != place && !belongs(wanted, *next);
             next = hangs_on(item(*next))) {
            index = *next;
        }
        return index;
    }

    bool group_passes(std::size_t mover, std::size_t other, const Vector& way) const
    {
        for (std::size_t moving = 0; moving < scene_.size(); ++moving) {
            if (belongs(moving, mover) && !passes(moving, other, way)) {
                return false;
            }
        }
        return true;
    }

    bool passes(std::size_t moving, std::size_t other, const Vector& way) const
    {
        const auto &ones = scene_.solids(moving), &others = scene_.solids(other);
        for (std::size_t i = 0; i < ones.size(); ++i) {
            for (std::size_t j = 0; j < others.size(); ++j) {
                if (!part(ones[i], others[j], scene_.normals(moving, i, other, j), way).proved) {
                    return false;
                }
            }
        }
        return true;
    }

    const Scene& scene_;
    Findings& findings_;
    std::map<std::size_t, Vector> ways_;
    Set aside_; ///< moved aside below a narrow opening
};

} // namespace

void check_reach(const Scene& scene, Findings& findings) { ReachCheck(scene, findings).run(); }

} // namespace tuckwright::proof
