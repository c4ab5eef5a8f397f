// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/scene.hpp"

#include "proof/forest.hpp"

namespace tuckwright::proof {

namespace {

/// A cylinder's axis is the world's z, a box's corner its origin; the floor is z = 0.
Room envelope_room(const Shape& shape)
{
    Piece space = piece_of(shape, Pose{});
    space.center = space.round ? Vector{0, 0, space.half[2]} : space.half;
    return room_of(space, 0, false, false);
}

/// A narrow opening lies on the cavity's axis, its foot at the cavity's top.
std::optional<Piece> neck_piece(const PlacedCavity& cavity, const Piece& below)
{
    if (!cavity.neck) {
        return std::nullopt;
    }
    const Piece shape = piece_of(*cavity.neck, Pose{});
    const Vector center = plus(below.center, times(below.half[2] + shape.half[2], below.axis[2]));
    return piece_from(shape.round, shape.half, center, below.axis);
}

Vector whole(const std::array<std::int64_t, 3>& numbers)
{
    return {Rational(static_cast<long>(numbers[0])), Rational(static_cast<long>(numbers[1])),
            Rational(static_cast<long>(numbers[2]))};
}

} // namespace

Scene::Scene(const Bundle& bundle)
    : bundle_(bundle), envelope_(envelope_room(bundle.envelope)), lids_(shut_lids(bundle))
{
    const Rational clearance = nanometres(bundle.clearance);
    for (const auto& item : bundle.items) {
        auto& solids = solids_.emplace_back();
        for (const auto& solid : item.solids) {
            solids.push_back(piece_of(solid.shape, solid.pose));
        }
        auto& cavities = cavities_.emplace_back();
        auto& rooms = rooms_.emplace_back();
        auto& bores = bores_.emplace_back();
        auto& necks = necks_.emplace_back();
        auto& neck_rooms = neck_rooms_.emplace_back();
        for (const auto& cavity : item.cavities) {
            cavities.push_back(piece_of(cavity.shape, cavity.pose));
            // Nothing stands out of a narrow opening: below it the cavity has a ceiling.
            const auto& neck = necks.emplace_back(neck_piece(cavity, cavities.back()));
            rooms.push_back(room_of(cavities.back(), clearance, cavity.opens == Opening::both,
                                    cavity.opens != Opening::closed && !neck));
            bores.push_back(room_of(cavities.back(), 0, cavity.opens == Opening::both, false));
            neck_rooms.push_back(neck ? std::optional(room_of(*neck, clearance, true, true)) : std::nullopt);
        }
    }
    for (const auto& plane : bundle.certificate.planes) {
        const Vector normal = whole(plane.normal);
        normals_[{plane.first, plane.first_solid, plane.second, plane.second_solid}].push_back(normal);
        normals_[{plane.second, plane.second_solid, plane.first, plane.first_solid}].push_back(times(-1, normal));
    }
}

std::vector<Vector> Scene::normals(std::size_t first, std::size_t first_solid, std::size_t second,
                                   std::size_t second_solid) const
{
    const auto found = normals_.find({first, first_solid, second, second_solid});
    return found == normals_.end() ? std::vector<Vector>{} : found->second;
}

} // namespace tuckwright::proof
