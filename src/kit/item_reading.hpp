// SPDX-License-Identifier: GPL-3.0-or-later
/// One entry of `items`, as far as it can be read without looking at the others.
#pragma once
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "kit/carry_reading.hpp"
#include "kit/sized_shape.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::reading
{

/// What an item says it closes, by name still. Lengths are missing where they are faulty.
struct ClosesDraft {
    Place place; ///< of the key `closes`
    std::optional<std::string> vessel;
    Place vessel_place;
    std::optional<Length> adds, intrudes;
    Length adds_off, intrudes_off;
    Place adds_place, intrudes_place;
    bool stays_shut = false; ///< it is never carried loose
    Place shut_place;        ///< of the word that says so
};

/// What an item says it is pressed into, by name still. The length is missing where it is faulty.
struct PressDraft {
    Place place; ///< of the key `press-fit`
    std::optional<Named> into;
    std::optional<Length> gives;
    Place gives_place;
};

/// An item with what later checks need: exact sizes, places, and what of it can be relied on.
struct ItemDraft {
    Item item; ///< without `closes` and `press`
    Place place;
    std::optional<Place> id_place; ///< nothing where it has no sound id
    std::optional<SizedShape> outside;
    std::optional<Place> inside_place, contents_place; ///< of the keys, where they are given
    std::optional<ClosesDraft> closes;
    std::optional<PressDraft> press;
    CarryDraft carry;
    std::optional<Place> topped_place; ///< of the value `no` of `nothing-on-top`
    bool tells_load = false;           ///< whether it says what may lie on it
    bool is_pouch = false;   ///< drawn shut; then `item.pouch` is missing where a size is faulty
    bool is_cover = false;   ///< it goes round everything; then `item` holds only its id, name and weight
    std::optional<Bag> bag;  ///< missing where a size is faulty
    std::optional<Band> band;
    std::optional<Named> over; ///< the lid that a band holds shut
    bool count_is_sound = true;
    Place count_place;
};

inline constexpr int most_copies_of_an_item = 200;
/// The keys that an item may have.
std::span<const std::string_view> keys_of_item();
ItemDraft read_item(Reading& reading, const Node& node);

} // namespace tuckwright::reading
