// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "proof/apart.hpp"
#include "proof/forest.hpp"
#include "proof/rules.hpp"

namespace tuckwright::proof {

namespace {

/// The steps carried out one by one. An item that has been placed hangs on its container or vessel, or stands in the
/// bundle; one that has not lies on the table with all that hangs on it. So there are groups, each named after what it
/// hangs on in the end: an item on the table, or the bundle.
class Replay {
public:
    Replay(const Scene& scene, Findings& findings)
        : scene_(scene), findings_(findings), in_bundle_(scene.size()), placed_(scene.size(), false)
    {
    }

    void run()
    {
        for (const auto& step : scene_.bundle().steps) {
            if (findings_.full()) {
                return;
            }
            if (step.item >= scene_.size()) {
                findings_.add("step", "a step places an item that is not there");
            } else if (placed_[step.item]) {
                object(step.item, "it is placed a second time");
            } else if (step.direction == std::array<std::int64_t, 3>{0, 0, 0}) {
                object(step.item, "its step has no direction");
            } else {
                carry_out(step);
                placed_[step.item] = true;
            }
        }
        for (std::size_t item = 0; item < scene_.size(); ++item) {
            if (!placed_[item]) {
                object(item, "no step places it");
            }
        }
    }

private:
    void object(std::size_t item, const std::string& what)
    {
        findings_.add("step", named(scene_.bundle(), item) + ": " + what);
    }

    const PlacedItem& item(std::size_t index) const { return scene_.bundle().items[index]; }

    /// What an item hangs on in the end; the number of items stands for the bundle.
    std::size_t end_of(std::size_t index) const
    {
        while (placed_[index]) {
            const auto next = hangs_on(item(index));
            if (!next) {
                return in_bundle_;
            }
            index = *next;
        }
        return index;
    }

    std::vector<std::size_t> group_of(std::size_t end) const
    {
        std::vector<std::size_t> group;
        for (std::size_t index = 0; index < scene_.size(); ++index) {
            if (end_of(index) == end) {
                group.push_back(index);
            }
        }
        return group;
    }

    void carry_out(const Step& step)
    {
        const Vector direction{Rational(static_cast<long>(step.direction[0])),
                               Rational(static_cast<long>(step.direction[1])),
                               Rational(static_cast<long>(step.direction[2]))};
        const Vector via = step.via ? nanometres(*step.via) : Vector{0, 0, 0};
        const auto group = group_of(step.item);
        bool narrow = false;
        const auto goes_to = hangs_on(item(step.item));
        const std::size_t end = goes_to ? end_of(*goes_to) : in_bundle_;
        const auto assembly = group_of(end);
        if (end == in_bundle_ && direction[2] > 0) {
            object(step.item, "it would come into the bundle from below");
        }
        for (const auto& where : containers_of(scene_.bundle(), step.item)) {
            if (std::find(assembly.begin(), assembly.end(), where.item) != assembly.end()) {
                through_mouth(step.item, where, direction);
                narrow = narrow || scene_.neck(where);
                begins_within(step.item, group, where, via);
            }
        }
        if (step.via && !narrow) {
            object(step.item, "it would be moved aside, though it goes through no narrow opening");
        }
        past_others(step.item, group, assembly, direction, step.via);
    }

    void through_mouth(std::size_t mover, const Lodging& where, const Vector& direction)
    {
        const Vector& axis = scene_.cavities(where.item)[where.cavity].axis[2];
        const bool both = item(where.item).cavities[where.cavity].opens == Opening::both;
        const std::string name = named(scene_.bundle(), where.item);
        if (const auto lid = scene_.lid(where.item); lid && where.cavity == 0 && placed_[*lid]) {
            object(mover, "it would go into " + name + ", which is already shut");
        }
        if (!parallel(direction, axis)) {
            object(mover, "it would not go straight along the axis of " + name);
        } else if (!both && dot(direction, axis) > 0) {
            object(mover, "it would go into " + name + " through the floor");
        }
    }

    /// Before it is moved aside, it is as it has passed the opening: along the axis, so that it keeps to the opening's
    /// prism. And it is in the cavity there, which is convex, so that it stays in it on the way to its place.
    void begins_within(std::size_t mover, const std::vector<std::size_t>& group, const Lodging& where,
                       const Vector& via)
    {
        const std::string name = named(scene_.bundle(), where.item);
        for (const auto moving : group) {
            const std::string what = moving == mover ? "it" : named(scene_.bundle(), moving) + " in it";
            for (const auto& solid : scene_.solids(moving)) {
                const Piece there = moved(solid, via);
                if (scene_.neck(where)) {
                    if (const Fit fit = against_walls(there, scene_.neck_room(where)); !fit.inside) {
                        object(mover, what + " does not pass the opening of " + name + ": it is " +
                                          in_mm(fit.excess_nm) + " too far out");
                        return;
                    }
                }
                if (via != Vector{0, 0, 0} && !is_within(there, scene_.room(where))) {
                    object(mover, "before it is moved aside, " + what + " is not inside " + name);
                    return;
                }
            }
        }
    }

    static bool is_within(const Piece& piece, const Room& room)
    {
        return against_walls(piece, room).inside && (room.open_bottom || against_bottom(piece, room).inside) &&
               (room.open_top || against_top(piece, room).inside);
    }

    void past_others(std::size_t mover, const std::vector<std::size_t>& group, const std::vector<std::size_t>& assembly,
                     const Vector& direction, const std::optional<Vec3>& via)
    {
        for (const auto moving : group) {
            for (const auto obstacle : assembly) {
                const bool held = holds(scene_.bundle(), obstacle, moving);
                if (!passes(moving, obstacle, direction, via, held)) {
                    object(mover,
                           "going into its place, " +
                               (moving == mover ? std::string("it") : named(scene_.bundle(), moving) + " in it") +
                               " is not proved to pass " + named(scene_.bundle(), obstacle));
                    return;
                }
            }
        }
    }

    /// How many solids of a container a held solid has no need to be kept from: all where it keeps to the prism of the
    /// cavity, along whose axis it goes; the first where it is wider than that beyond a tapering cavity's rim.
    std::size_t spared(std::size_t moving, const Piece& solid, std::size_t container) const
    {
        for (const Lodging& where : containers_of(scene_.bundle(), moving)) {
            if (where.item == container) {
                const Room& room = scene_.room_for(moving, where);
                return keeps_to_prism(solid, room)         ? scene_.solids(container).size()
                       : against_walls(solid, room).inside ? 1
                                                           : 0;
            }
        }
        return 0;
    }

    /// Along the direction up to its place or, with `via`, up to there and then straight to its place. `held`: the
    /// obstacle holds it.
    bool passes(std::size_t moving, std::size_t obstacle, const Vector& direction, const std::optional<Vec3>& via,
                bool held) const
    {
        const auto& ones = scene_.solids(moving);
        const auto& others = scene_.solids(obstacle);
        for (std::size_t i = 0; i < ones.size(); ++i) {
            for (std::size_t j = held ? spared(moving, ones[i], obstacle) : 0; j < others.size(); ++j) {
                const auto normals = scene_.normals(moving, i, obstacle, j);
                const Vector aside = via ? nanometres(*via) : Vector{0, 0, 0};
                if (!part(moved(ones[i], aside), others[j], normals, direction).proved ||
                    (via && !part_moving(ones[i], aside, others[j], normals).proved)) {
                    return false;
                }
            }
        }
        return true;
    }

    const Scene& scene_;
    Findings& findings_;
    std::size_t in_bundle_;
    std::vector<bool> placed_;
};

} // namespace

void check_steps(const Scene& scene, Findings& findings) { Replay(scene, findings).run(); }

} // namespace tuckwright::proof
