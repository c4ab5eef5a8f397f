// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/lid_checks.hpp"

#include <algorithm>
#include <unordered_map>

#include "kit/kinds.hpp"
#include "kit/words.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::reading
{

namespace
{

using Drafts = std::vector<ItemDraft>;

/// The vessel that each item closes; reports unknown ids.
std::vector<Link> vessels_of(Reading& reading, const Drafts& drafts, IdIndex& ids)
{
    std::vector<Link> vessels(drafts.size());
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (drafts[i].closes && drafts[i].closes->vessel) {
            vessels[i] = ids.need(reading, *drafts[i].closes->vessel, drafts[i].closes->vessel_place);
        }
    }
    return vessels;
}

/// Reports each ring once; the lids in them are spared further checks.
std::vector<bool> in_rings(Reading& reading, const Drafts& drafts, const std::vector<Link>& vessels)
{
    std::vector<bool> found(drafts.size(), false);
    for (const std::size_t start : ring_starts(vessels)) {
        std::string names;
        for (std::size_t lid = start; !found[lid]; lid = *vessels[lid]) {
            found[lid] = true;
            names += (names.empty() ? "" : ", ") + drafts[lid].item.id + " closes " + drafts[*vessels[lid]].item.id;
        }
        const Place place = drafts[start].closes->vessel_place;
        if (*vessels[start] == start) {
            reading.problems.add(place, in_quotes(drafts[start].item.id) + " closes itself",
                                 "name the vessel that it closes");
        } else {
            reading.problems.add(place, "lids close one another in a ring: " + names, "name a vessel in each 'closes'");
        }
    }
    return found;
}

/// Whether the vessel can be closed at all, with the reason if not.
bool check_vessel(Reading& reading, const ClosesDraft& closes, const ItemDraft& vessel)
{
    const auto refuse = [&](const std::string& what, const std::string& remedy) {
        reading.problems.add(closes.vessel_place, in_quotes(vessel.item.id) + " " + what, remedy);
        return false;
    };
    if (vessel.closes) {
        return refuse("is a lid itself", "name a vessel");
    }
    if (vessel.is_cover) {
        return refuse("goes round everything", "name a vessel");
    }
    if (vessel.is_pouch) {
        return refuse("is drawn shut", "a pouch takes no lid; name a vessel");
    }
    if (!vessel.inside_place) {
        return refuse("has no inside that a lid could close", "give it an 'inside', or name another item");
    }
    if (!vessel.item.inside) {
        return false; // its inside is faulty, and has been reported
    }
    if (vessel.item.inside->opens == Opening::both) {
        return refuse("is open at both ends", "no lid can shut a sleeve; name another item");
    }
    if (vessel.item.inside->opens == Opening::closed) {
        return refuse("is shut by a lid of its own",
                      "write 'opens: top' there instead of 'lid: own', or delete 'closes' here");
    }
    return true;
}

bool covers_mouth(const SizedShape& lid, const Shape& mouth)
{
    const auto wide = [&](std::size_t size) { return lid.sizes[size].nanometres_up(); };
    if (const auto* round = std::get_if<Cylinder>(&mouth)) {
        const auto diameter = to_nanometres(round->diameter);
        return wide(0) >= diameter && (lid.kind == ShapeKind::cylinder || wide(1) >= diameter);
    }
    const auto& box = std::get<Box>(mouth);
    const auto length = to_nanometres(box.length), width = to_nanometres(box.width);
    return lid.kind == ShapeKind::box ? wide(0) >= length && wide(1) >= width : wide(0) >= diagonal_up(length, width);
}

const Shape& mouth_of(const Cavity& cavity) { return cavity.neck ? *cavity.neck : cavity.shape; }

std::string plan_text(const Shape& shape)
{
    const auto mm = [](double value) {
        const std::string text = to_string(Length::of_nanometres(to_nanometres(value)));
        return text.substr(0, text.size() - 3);
    };
    if (const auto* round = std::get_if<Cylinder>(&shape)) {
        return mm(round->diameter) + " mm across";
    }
    const auto& box = std::get<Box>(shape);
    return mm(box.length) + " by " + mm(box.width) + " mm";
}

/// Whether a size of the lid is so much larger than the vessel's that one of the two must be mistyped. A pan that
/// serves as a lid may reach far over a pot, and the tab of a small tin's lid be half as wide again as the tin.
bool is_far_wider(Length lid, Length vessel)
{
    constexpr std::int64_t plausible_overhang_nm = 20'000'000; // both sides together
    return 2 * lid > 3 * vessel && lid - vessel > Length::of_nanometres(plausible_overhang_nm);
}

void check_width(Reading& reading, const ItemDraft& lid, const ItemDraft& vessel)
{
    for (std::size_t i = 0; i + 1 < lid.outside->sizes.size(); ++i) {
        if (is_far_wider(lid.outside->sizes[i], vessel.outside->sizes[i])) {
            reading.problems.add(lid.outside->places[i],
                                 "the lid is " + plan_text(lid.item.outside) + ", far wider than " +
                                     in_quotes(vessel.item.id) + ", " + plan_text(vessel.item.outside),
                                 "check both for a digit too few or too many, and their units");
            return;
        }
    }
}

void check_cover(Reading& reading, const ItemDraft& lid, const ItemDraft& vessel)
{
    if (lid.outside->kind != vessel.outside->kind) {
        reading.problems.add(lid.outside->place,
                             "a lid that is a " + std::string(word_of(lid.outside->kind)) + " does not close " +
                                 in_quotes(vessel.item.id) + ", a " + std::string(word_of(vessel.outside->kind)),
                             "give both the same kind of shape");
    } else if (!covers_mouth(*lid.outside, mouth_of(*vessel.item.inside))) {
        reading.problems.add(lid.outside->places[0],
                             "the lid is " + plan_text(lid.item.outside) + ", too small to cover the mouth of " +
                                 in_quotes(vessel.item.id) + ", " + plan_text(mouth_of(*vessel.item.inside)),
                             "measure both again");
    } else {
        check_width(reading, lid, vessel);
    }
}

/// Whether the shut lid's parts above, within and around the vessel agree with its height and with the vessel.
void check_depths(Reading& reading, const ItemDraft& lid, const ItemDraft& vessel)
{
    const ClosesDraft& closes = *lid.closes;
    const auto text = [](Length length) { return to_string(length); };
    const Length height = lid.outside->height();
    if (closes.adds && *closes.adds > height) {
        reading.problems.add(closes.adds_place,
                             "adds is " + text(*closes.adds) + ", more than the lid's height " + text(height),
                             "give the part of the lid that stands above the rim");
    } else if (closes.adds && closes.intrudes && *closes.adds + *closes.intrudes > height) {
        reading.problems.add(closes.intrudes_place,
                             "adds " + text(*closes.adds) + " and intrudes " + text(*closes.intrudes) +
                                 " make more than the lid's height " + text(height),
                             "measure the three again");
    }
    const Cavity& cavity = *vessel.item.inside;
    const double deep = height_of(cavity.shape) + (cavity.neck ? height_of(*cavity.neck) : 0);
    const Length inside = Length::of_nanometres(to_nanometres(deep));
    if (closes.intrudes && Length::of_nanometres(closes.intrudes->nanometres_up()) >= inside) {
        reading.problems.add(closes.intrudes_place,
                             "intrudes is " + text(*closes.intrudes) + ", which leaves nothing of the inside height " +
                                 text(inside) + " of " + in_quotes(vessel.item.id),
                             "give the part of the lid that hangs into the vessel");
    }
    if (closes.adds && height - *closes.adds > vessel.outside->height()) {
        reading.problems.add(closes.adds_place,
                             "the lid reaches " + text(height - *closes.adds) +
                                 " down from the rim, lower than the foot of " + in_quotes(vessel.item.id) + ", " +
                                 text(vessel.outside->height()) + " high",
                             "measure the lid's height and 'adds' again");
    }
}

/// What a lid itself must not have.
void check_lid(Reading& reading, const ItemDraft& lid)
{
    if (lid.inside_place) {
        reading.problems.add(*lid.inside_place, "a lid cannot have an inside", "delete 'inside' or 'closes'");
    }
    if (lid.contents_place) {
        reading.problems.add(*lid.contents_place, "a lid cannot have contents", "put them into the vessel's entry");
    }
}

void check_pair(Reading& reading, const ItemDraft& lid, const ItemDraft& vessel)
{
    if (lid.count_is_sound && vessel.count_is_sound && lid.item.count != vessel.item.count) {
        reading.problems.add(lid.count_place,
                             "the lid's count is " + std::to_string(lid.item.count) + ", but that of " +
                                 in_quotes(vessel.item.id) + " is " + std::to_string(vessel.item.count),
                             "give both the same count: each copy closes one");
    }
    if (check_vessel(reading, *lid.closes, vessel) && lid.outside) {
        check_cover(reading, lid, vessel);
        check_depths(reading, lid, vessel);
    }
}

/// A vessel that holds a liquid must be closed, and stay so.
void check_liquid(Reading& reading, const ItemDraft& vessel, bool has_lid)
{
    const auto refuse = [&](const std::string& what, const std::string& remedy) {
        const std::string name = vessel.id_place ? in_quotes(vessel.item.id) : "the item";
        reading.problems.add(*vessel.inside_place, name + " holds a liquid, but " + what, remedy);
    };
    const bool contents_are_faulty = vessel.contents_place && !vessel.item.contents;
    if (vessel.item.inside->opens == Opening::both) {
        refuse("is open at both ends", "take 'liquid' from its 'kind', or give it another 'inside'");
    } else if (vessel.item.inside->opens == Opening::top && !has_lid) {
        refuse("is open at the top", "write 'lid: own' in its 'inside', or give it a lid that 'closes' it");
    } else if (vessel.item.inside->opens == Opening::top && !vessel.item.is_full() && !contents_are_faulty) {
        refuse("its lid may be carried loose", "give it 'contents' that fill it, then its lid is always shut");
    }
}

void check_liquids(Reading& reading, const Drafts& drafts, const std::vector<Link>& vessels)
{
    std::vector<bool> has_lid(drafts.size(), false);
    for (const Link& vessel : vessels) {
        if (vessel) {
            has_lid[*vessel] = true;
        }
    }
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (drafts[i].item.inside && is_of_kind(drafts[i].item, Kind::liquid)) {
            check_liquid(reading, drafts[i], has_lid[i]);
        }
    }
}

} // namespace

void check_ids(Reading& reading, const Drafts& drafts, const IdIndex& ids)
{
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        const Link first = drafts[i].id_place ? ids.find(drafts[i].item.id) : std::nullopt;
        if (first && *first != i) {
            reading.problems.add(*drafts[i].id_place,
                                 "the id " + in_quotes(drafts[i].item.id) + " is given twice, first in line " +
                                     std::to_string(drafts[*first].id_place->line + 1),
                                 "rename one, or use 'count' for copies that are alike");
        }
    }
}

void check_lids(Reading& reading, Drafts& drafts, IdIndex& ids)
{
    const auto vessels = vessels_of(reading, drafts, ids);
    check_liquids(reading, drafts, vessels);
    const auto rings = in_rings(reading, drafts, vessels);
    std::unordered_map<std::size_t, std::size_t> lid_of;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (!drafts[i].closes) {
            continue;
        }
        const ClosesDraft& closes = *drafts[i].closes;
        check_lid(reading, drafts[i]);
        if (!vessels[i] || rings[i]) {
            continue;
        }
        const auto [first, fresh] = lid_of.emplace(*vessels[i], i);
        if (!fresh) {
            reading.problems.add(closes.vessel_place,
                                 in_quotes(*closes.vessel) + " is closed by " + in_quotes(drafts[first->second].item.id) +
                                     " already",
                                 "a vessel takes one lid; delete one 'closes'");
        }
        check_pair(reading, drafts[i], drafts[*vessels[i]]);
        if (closes.adds && closes.intrudes) {
            drafts[i].item.closes = Closure{*vessels[i], closes.adds->mm_up(), closes.intrudes->mm_up(), closes.adds_off.mm_up(),
                                           closes.intrudes_off.mm_up()};
        }
    }
}

} // namespace tuckwright::reading
