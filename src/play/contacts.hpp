// SPDX-License-Identifier: GPL-3.0-or-later
/// Which things of a bundle touch one another and the walls.
#pragma once
#include <limits>
#include <optional>
#include <vector>

#include "play/group.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::play {

/// In place of an item: the wall of the envelope.
inline constexpr std::size_t outer_wall = std::numeric_limits<std::size_t>::max();

/// mm beyond what has to be kept, up to which things count as touching.
inline constexpr double touching_air = 4e-3;

/// Where on an item a contact is.
enum class Face { outside, floor, ceiling, side };

/// An item at a contact. A vessel and its shut lid move as one: `body` is the vessel of both.
struct Touching {
    std::size_t body = outer_wall, item = outer_wall;
    Face face = Face::outside;
    Vec3 point; ///< on its surface
};

/// A contact: the first pushes the second along the normal.
struct Contact {
    Touching first, second;
    Vec3 normal;    ///< unit
    double gap = 0; ///< mm between the two, beyond the clearance that has to be kept
};

/// The contacts of a bundle.
class Contacts {
public:
    /// Those with a gap up to `within` mm.
    Contacts(const Bundle& bundle, double within);

    /// All contacts, and for round things in round walls those that lie along a unit vector, both ways, though they may
    /// touch elsewhere too.
    std::vector<Contact> along(Vec3 direction) const;

    /// Unit vectors in the plan, outward, to where something touches the round wall of the envelope; one of any direction
    /// for what fills it. Of those that hardly differ, or are opposite, one.
    std::vector<Vec3> ways_across() const;

    std::size_t body_of(std::size_t item) const { return bundle_.items[item].closes.value_or(item); }

private:
    /// A circle of an item's outline beside a round wall.
    struct Beside {
        Touching thing, wall;
        PlanCircle circle;
        Pose frame;
        double radius = 0, keep = 0, height = 0; ///< of the wall, what has to be kept, and of the circle in the frame
        double slope = 0;                        ///< by how much the wall gets wider for each mm upward
    };

    void add_pairs();
    void add_pair(std::size_t first, std::size_t second);
    void add_solids(std::size_t first, const Solid& a, std::size_t second, const Solid& b, bool may_overlap);
    void add_envelope();
    void add_cavities();
    void add_cavity(std::size_t item, const Lodging& in);
    void add_flat(const Touching& wall, Vec3 wall_point, Vec3 outward, double keep, std::size_t item,
                  const Solid& solid);
    void add_round(const Touching& wall, const PlacedCavity& cavity, double keep, std::size_t item, const Solid& solid);
    std::optional<Contact> against(const Beside& beside, double u, double v) const;
    Touching of(std::size_t item, Face face = Face::outside, Vec3 point = {}) const;

    const Bundle& bundle_;
    double within_;
    std::vector<std::optional<std::size_t>> holders_;
    std::vector<Contact> found_;
    std::vector<Beside> beside_;
};

} // namespace tuckwright::play
