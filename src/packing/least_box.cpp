// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. The boxes are taken up one by one, the largest first, each in all its stances. Two boxes are apart if one
// comes before the other along x, y or z. Given some such relations, each box lies as near to the origin as they let
// it: the longest path. Where two boxes overlap then, one of six relations must be added, and all are tried; where none
// do, the next box is taken up, and with all of them the room that they take is a layout. A branch ends where that
// room, or the least side of a box that is still to come, makes the volume no smaller than the best so far, or a side
// longer than its limit; all end where there is no waste.
// Symmetry: equal boxes come in the order of their places along x. Along each axis (but x, if there are equal boxes)
// the first relation has one direction only, for the mirror image has the other. If the axes are alike for all boxes
// and limits, and no other is equal to the largest, that takes one stance only.
// Guarantee: every arrangement along the axes obeys the relations of some branch, and no box of it can lie nearer to
// the origin than there; so what a search that ended by itself found is the least, up to same_box.
// Source: branching on disjunctions, J. Carlier and E. Pinson, Management Science 35 (1989), carried over to boxes as
// relative positions by E. den Boef, J. Korst, S. Martello, D. Pisinger, D. Vigo, Operations Research 53 (2005). From
// memory.
#include "packing/least_box.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <numeric>
#include <vector>

#include "packing/plain_boxes.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::packing {

namespace {

double volume_of(const Lengths& room)
{
    return from_nanometres(room[0]) * from_nanometres(room[1]) * from_nanometres(room[2]);
}

/// The limits in whole nanometres.
Lengths most_of(const EnvelopeLimits& limits)
{
    constexpr double longest = 1e6; // mm, more than any bundle
    const auto whole = [=](double length) { return to_nanometres(snap_down(std::min(length, longest))); };
    return {whole(2 * limits.half_length), whole(2 * limits.half_width), whole(limits.height)};
}

class Boxes {
public:
    Boxes(const std::vector<std::vector<Stance>>& stances, const LeastBoxOptions& options)
        : options_(options), most_(most_of(options.limits)), best_(options.below)
    {
        order_.resize(stances.size());
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        const auto volume = [&](std::size_t body) { return volume_of(stances[body].front().size); };
        for (std::size_t body = 0; body < stances.size(); ++body) {
            without_waste_ += volume(body);
        }
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            return volume(a) != volume(b) ? volume(a) > volume(b) : stances[a].front().size > stances[b].front().size;
        });
        least_.assign(stances.size() + 1, Lengths{});
        for (const std::size_t body : order_) {
            is_like_last_.push_back(!stances_.empty() && stances_.back() == stances[body]);
            stances_.push_back(stances[body]);
        }
        some_alike_ = std::find(is_like_last_.begin(), is_like_last_.end(), true) != is_like_last_.end();
        for (std::size_t k = stances_.size(); k-- > 0;) {
            for (std::size_t axis = 0; axis < 3; ++axis) {
                const auto shortest =
                    std::min_element(stances_[k].begin(), stances_[k].end(), [&](const Stance& a, const Stance& b) {
                        return a.size[axis] < b.size[axis];
                    });
                least_[k][axis] = std::max(least_[k + 1][axis], shortest->size[axis]);
            }
        }
        drop_likenesses();
    }

    void run() { search(); }

    bool ended_by_itself() const { return !over_; }
    double best() const { return best_; }
    const Lengths& best_room() const { return best_room_; }
    /// In the order of the scene's bodies; empty if nothing was found.
    std::vector<PlacedBox> best_places() const
    {
        std::vector<PlacedBox> places(best_places_.size());
        for (std::size_t k = 0; k < best_places_.size(); ++k) {
            places[order_[k]] = best_places_[k];
        }
        return places;
    }

private:
    using Corners = std::array<Lengths, most_boxes>;
    struct Relation {
        std::size_t first = 0, second = 0;
    };
    struct Branch {
        std::size_t axis = 0;
        Relation relation; ///< to be added along it
        Corners corners;   ///< with that
        double volume = 0;
    };

    /// Of the largest box's stances, one of those that differ by axes which are alike for all.
    void drop_likenesses()
    {
        const auto turns_anyhow = [](const std::vector<Stance>& stances) {
            const Lengths& sides = stances.front().size;
            const int alike = (sides[0] == sides[1]) + (sides[1] == sides[2]) + (sides[2] == sides[0]);
            return stances.size() == (alike == 0 ? 6u : alike == 1 ? 3u : 1u);
        };
        const bool is_single = stances_.size() == 1 || !is_like_last_[1];
        if (is_single && most_[0] == most_[1] && most_[1] == most_[2] &&
            std::all_of(stances_.begin(), stances_.end(), turns_anyhow)) {
            stances_.front().resize(1);
        }
    }

    /// What the boxes that have been taken up need along an axis, and those to come at least.
    Lengths room()
    {
        work_ += 1 + taken_;
        Lengths room = least_[taken_];
        for (std::size_t k = 0; k < taken_; ++k) {
            for (std::size_t axis = 0; axis < 3; ++axis) {
                room[axis] = std::max(room[axis], corners_[k][axis] + chosen_[k].size[axis]);
            }
        }
        return room;
    }

    /// How far two boxes overlap: the least of the three directions.
    std::int64_t overlap(std::size_t i, std::size_t j) const
    {
        std::int64_t least = std::numeric_limits<std::int64_t>::max();
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const std::int64_t end =
                std::min(corners_[i][axis] + chosen_[i].size[axis], corners_[j][axis] + chosen_[j].size[axis]);
            least = std::min(least, end - std::max(corners_[i][axis], corners_[j][axis]));
        }
        return least;
    }

    bool is_over()
    {
        constexpr std::uint64_t rarely = 1024;
        over_ = over_ || work_ > options_.work || (++steps_ % rarely == 0 && options_.stop && options_.stop());
        return over_;
    }

    void search()
    {
        const Lengths needed = room();
        work_ += taken_ * taken_ / 2;
        const bool is_too_long = needed[0] > most_[0] || needed[1] > most_[1] || needed[2] > most_[2];
        if (is_over() || is_too_long || std::max(volume_of(needed), without_waste_) >= best_ * (1 - same_box)) {
            return;
        }
        Relation worst;
        std::int64_t most = 0;
        for (std::size_t i = 0; i < taken_; ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                if (const std::int64_t depth = overlap(i, j); depth > most) {
                    most = depth;
                    worst = {i, j};
                }
            }
        }
        if (most > 0) {
            part(worst);
        } else if (taken_ < stances_.size()) {
            take_up();
        } else {
            keep(needed);
        }
    }

    void keep(const Lengths& needed)
    {
        best_ = volume_of(needed);
        best_room_ = needed;
        best_places_.clear();
        for (std::size_t k = 0; k < taken_; ++k) {
            best_places_.push_back({corners_[k], chosen_[k]});
        }
    }

    /// The next box, in each of its stances.
    void take_up()
    {
        const std::size_t next = taken_++;
        for (const Stance& stance : stances_[next]) {
            corners_[next] = {is_like_last_[next] ? corners_[next - 1][0] : 0, 0, 0};
            chosen_[next] = stance;
            search();
        }
        --taken_;
    }

    /// One of the two before the other, along each axis: what takes least room first.
    void part(const Relation& two)
    {
        const Corners before = corners_;
        std::vector<Branch> branches;
        branches.reserve(6);
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (const Relation& relation : {two, Relation{two.second, two.first}}) {
                const bool is_mirrored =
                    relations_[axis].empty() && relation.first != two.first && !(axis == 0 && some_alike_);
                relations_[axis].push_back(relation);
                if (!is_mirrored && push(axis)) {
                    branches.push_back({axis, relation, corners_, volume_of(room())});
                }
                relations_[axis].pop_back();
                corners_ = before;
            }
        }
        std::stable_sort(branches.begin(), branches.end(),
                         [](const Branch& a, const Branch& b) { return a.volume < b.volume; });
        for (const Branch& branch : branches) {
            relations_[branch.axis].push_back(branch.relation);
            corners_ = branch.corners;
            search();
            relations_[branch.axis].pop_back();
        }
        corners_ = before;
    }

    /// Moves the boxes as far from the origin as the relations and the order of equal ones ask for, along an axis;
    /// false if these go round in a circle.
    bool push(std::size_t axis)
    {
        for (std::size_t pass = 0; pass <= taken_; ++pass) {
            bool moved = false;
            for (const Relation& relation : relations_[axis]) {
                const std::int64_t end = corners_[relation.first][axis] + chosen_[relation.first].size[axis];
                moved = moved || corners_[relation.second][axis] < end;
                corners_[relation.second][axis] = std::max(corners_[relation.second][axis], end);
            }
            for (std::size_t k = 1; axis == 0 && k < taken_; ++k) {
                if (is_like_last_[k] && corners_[k][0] < corners_[k - 1][0]) {
                    corners_[k][0] = corners_[k - 1][0];
                    moved = true;
                }
            }
            if (!moved) {
                return true;
            }
        }
        return false;
    }

    const LeastBoxOptions& options_;
    Lengths most_;
    double without_waste_ = 0; ///< volume of all
    double best_;
    std::uint64_t work_ = 0, steps_ = 0;
    bool over_ = false;
    std::vector<std::size_t> order_; ///< bodies, the largest first; all that follows is in that order
    std::vector<std::vector<Stance>> stances_;
    std::vector<bool> is_like_last_; ///< [k]: whether the one before is equal
    bool some_alike_ = false;
    std::vector<Lengths> least_; ///< [k]: what the boxes from the k-th on need along each axis
    std::size_t taken_ = 0;      ///< how many have been taken up
    Corners corners_{};
    std::array<Stance, most_boxes> chosen_{};
    std::array<std::vector<Relation>, 3> relations_;
    Lengths best_room_{};
    std::vector<PlacedBox> best_places_;
};

/// Whether a body might lie aslant in the bundle, which no arrangement along the axes knows of.
bool may_lean(const Scene& scene)
{
    return std::any_of(scene.fits.begin(), scene.fits.end(), [](const std::vector<unsigned>& fits) {
        return (fits.front() & bit(Form::leaning)) != 0;
    });
}

} // namespace

LeastBox least_box(const Scene& scene, const LeastBoxOptions& options)
{
    LeastBox least;
    const std::vector<std::vector<Stance>> stances =
        scene.bodies.size() <= most_boxes ? stances_of_plain_boxes(scene) : std::vector<std::vector<Stance>>{};
    if (stances.empty()) {
        return least;
    }
    Boxes boxes(stances, options);
    boxes.run();
    least.proved = boxes.ended_by_itself() && !may_lean(scene);
    if (const std::vector<PlacedBox> places = boxes.best_places(); !places.empty()) {
        least.layout = layout_of_boxes(scene, boxes.best_room(), places);
        least.volume = boxes.best();
    }
    return least;
}

} // namespace tuckwright::packing
