// SPDX-License-Identifier: GPL-3.0-or-later
/// A bundle made exact: its pieces and rooms, and the planes of its certificate.
#pragma once
#include <array>
#include <map>
#include <optional>
#include <vector>

#include "proof/room.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::proof {

/// Requires: sound numbers and a sound forest. Holds on to the bundle.
class Scene {
public:
    explicit Scene(const Bundle& bundle);

    const Bundle& bundle() const { return bundle_; }
    std::size_t size() const { return bundle_.items.size(); }
    const std::vector<Piece>& solids(std::size_t item) const { return solids_[item]; }
    const std::vector<Piece>& cavities(std::size_t item) const { return cavities_[item]; }
    /// The cavity less the clearance at its side walls.
    const Room& room(const Lodging& where) const { return rooms_[where.item][where.cavity]; }
    /// The same for an item in one of its containers: what is pressed into its own takes no clearance there, and does not
    /// stand out of it.
    const Room& room_for(std::size_t item, const Lodging& where) const
    {
        const PlacedItem& placed = bundle_.items[item];
        return placed.pressed && placed.in == where ? bores_[where.item][where.cavity] : room(where);
    }
    /// A narrow opening right above its cavity, up to the rim; nothing where the cavity has none.
    const std::optional<Piece>& neck(const Lodging& where) const { return necks_[where.item][where.cavity]; }
    /// The narrow opening less the clearance at its side walls. Requires: there is one.
    const Room& neck_room(const Lodging& where) const { return *neck_rooms_[where.item][where.cavity]; }
    const Room& envelope() const { return envelope_; }
    /// The item shut on this one as its lid.
    std::optional<std::size_t> lid(std::size_t item) const { return lids_[item]; }

    /// The certificate's normals for two solids, from the first to the second.
    std::vector<Vector> normals(std::size_t first, std::size_t first_solid, std::size_t second,
                                std::size_t second_solid) const;

private:
    const Bundle& bundle_;
    std::vector<std::vector<Piece>> solids_, cavities_;
    std::vector<std::vector<Room>> rooms_, bores_;
    std::vector<std::vector<std::optional<Piece>>> necks_;
    std::vector<std::vector<std::optional<Room>>> neck_rooms_;
    Room envelope_;
    std::vector<std::optional<std::size_t>> lids_;
    std::map<std::array<std::size_t, 4>, std::vector<Vector>> normals_;
};

} // namespace tuckwright::proof
