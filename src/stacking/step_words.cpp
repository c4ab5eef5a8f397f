// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/step_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "stacking/direction.hpp"
#include "stacking/surroundings.hpp"

namespace tuckwright::stacking
{

namespace
{

constexpr double narrow = 3.0;        ///< mm: more air than this needs no word
constexpr double at_the_wall = 0.6;   ///< mm beyond the clearance that still count as against the wall
constexpr std::size_t most_named = 3; ///< carriers that are named one by one
constexpr double stands_cosine = 0.996;

std::string name_before_comma(const PlacedItem& item)
{
    const std::string name = item.name.substr(0, item.name.find(','));
    return name.empty() ? item.id : name;
}

/// Whole tenths of a millimetre, rounded down; a figure that is a tenth up to rounding stays.
double tenths(double mm)
{
    constexpr double rounding = 1e-4;
    return std::floor(mm * 10 + rounding);
}

std::string air(double mm) { return tenths(mm) < 1 ? "no air" : fmt::format("{:.1f} mm of air", tenths(mm) / 10); }

std::string posture_words(const Surroundings& seen)
{
    switch (seen.posture) {
    case Posture::standing: return seen.flat ? "flat" : "standing";
    case Posture::upside_down: return "upside down";
    case Posture::lying: return seen.on_end ? "on its end" : seen.flat ? "on its edge" : "lying on its side";
    case Posture::leaning: return "leaning";
    }
    return "";
}

std::string carriers(const Bundle& bundle, const std::vector<std::size_t>& items)
{
    std::string list;
    for (std::size_t k = 0; k < items.size(); ++k) {
        if (k == most_named) {
            return list + fmt::format(" and {} more", items.size() - k);
        }
        const bool last = k + 1 == items.size();
        list += k == 0 ? "" : last ? " and " : ", ";
        list += spoken_name(bundle, items[k]);
    }
    return list;
}

/// ", with all that is in it," for an item that holds something already; a sleeve would drop it.
std::string fillings(const Replay& before, std::size_t item)
{
    const auto group = before.group(item);
    const bool holds =
        std::any_of(group.begin(), group.end(), [&](std::size_t i) { return is_within(before.bundle(), i, item); });
    const auto& cavities = before.bundle().items[item].cavities;
    const bool sleeve = !cavities.empty() && cavities.front().opens == Opening::both;
    return !holds ? "" : sleeve ? ", held together with all that is in it," : ", with all that is in it,";
}

std::string sides(const Bundle& bundle, const Surroundings& seen)
{
    if (!seen.wall_air) {
        return "";
    }
    if (seen.alone && seen.in_middle && seen.wall_is_round) {
        return "; " + air(*seen.wall_air) + " all round";
    }
    std::string words;
    if (*seen.wall_air < narrow) {
        words += "; " + air(*seen.wall_air) + " to the wall";
    }
    if (seen.beside && seen.beside_air < narrow) {
        const std::string neighbour = spoken_name(bundle, *seen.beside);
        words += words.empty() ? "; " : ", ";
        words += tenths(seen.beside_air) < 1 ? "touching " + neighbour : air(seen.beside_air) + " to " + neighbour;
    }
    return words;
}

/// "in the middle", "against the wall", "beside X", or nothing.
std::string spot(const Bundle& bundle, const Surroundings& seen)
{
    if (seen.in_middle) {
        return "in the middle";
    }
    if (seen.wall_air && *seen.wall_air <= bundle.clearance + at_the_wall) {
        return seen.beside ? "against the wall beside " + spoken_name(bundle, *seen.beside) : "against the wall";
    }
    return seen.beside ? "beside " + spoken_name(bundle, *seen.beside) : "";
}

/// "into Pot, while it still stands on the table" or nothing for the bundle.
std::string into(const Bundle& bundle, std::size_t item)
{
    const auto& in = bundle.items[item].in;
    if (!in) {
        return "";
    }
    const bool sleeve = bundle.items[in->item].cavities[in->cavity].opens == Opening::both;
    const bool tipped_later = !sleeve && upright_of_container(bundle, item).z < stands_cosine;
    return " into " + spoken_name(bundle, in->item) + (tipped_later ? ", while it still stands on the table" : "");
}

std::string place(const Replay& before, std::size_t item, const Surroundings& seen)
{
    const Bundle& bundle = before.bundle();
    const bool in_cavity = bundle.items[item].in.has_value();
    std::string words;
    if (!seen.on.empty()) {
        words = "on top of " + carriers(bundle, seen.on);
    } else if (seen.on_floor) {
        words = in_cavity ? "on the floor" : "on the table";
    }
    const bool starts_bundle = !in_cavity && before.obstacles(item).empty();
    const std::string where = starts_bundle ? "" : spot(bundle, seen);
    if (!words.empty() && !where.empty()) {
        words += seen.on.empty() ? " " : ", "; // "on top of X beside Y" would leave open what is beside Y
    }
    words += where;
    return words.empty() ? "" : (in_cavity ? ", " : " ") + words;
}

std::string shut(const Bundle& bundle, std::size_t lid)
{
    return fmt::format("Shut {} with {}.", spoken_name(bundle, *bundle.items[lid].closes), spoken_name(bundle, lid));
}

/// A sleeve has no floor: what goes into it first stays where it is, and the sleeve is slipped over it.
bool is_slipped_over(const Replay& before, std::size_t item)
{
    const auto& in = before.bundle().items[item].in;
    if (!in || before.bundle().items[in->item].cavities[in->cavity].opens != Opening::both || before.placed(in->item)) {
        return false;
    }
    const auto& inside = before.contents(in->item);
    return std::none_of(inside.begin(), inside.end(), [&](std::size_t i) { return before.placed(i); });
}

std::string slip_over(const Replay& before, std::size_t item, const Surroundings& seen)
{
    const Bundle& bundle = before.bundle();
    const std::string way = seen.posture == Posture::standing ? "" : " (" + posture_words(seen) + ")";
    std::string filled = fillings(before, item);
    if (!filled.empty()) {
        filled.pop_back(); // the closing comma
    }
    return fmt::format("Slip {} round {}{}{}{}.", spoken_name(bundle, bundle.items[item].in->item),
                       spoken_name(bundle, item), way, filled, sides(bundle, seen));
}

} // namespace

std::string spoken_name(const Bundle& bundle, std::size_t item)
{
    const PlacedItem& it = bundle.items[item];
    std::string name = name_before_comma(it);
    bool copies = false, shared = false;
    for (const PlacedItem& other : bundle.items) {
        copies = copies || (other.id == it.id && other.copy != it.copy);
        shared = shared || (other.id != it.id && name_before_comma(other) == name);
    }
    if (shared && name != it.id) {
        name += " (" + it.id + ")";
    }
    return copies ? name + " " + std::to_string(it.copy) : name;
}

std::string step_text(const Replay& before, const Step& step)
{
    const Bundle& bundle = before.bundle();
    if (bundle.items[step.item].closes) {
        return shut(bundle, step.item);
    }
    const Surroundings seen = surroundings_of(before, step.item);
    if (is_slipped_over(before, step.item)) {
        return slip_over(before, step.item, seen);
    }
    const std::string name = spoken_name(bundle, step.item), filled = fillings(before, step.item);
    const std::string target =
        posture_words(seen) + into(bundle, step.item) + place(before, step.item, seen) + sides(bundle, seen) + ".";
    if (!bundle.items[step.item].in && step.direction[2] == 0) {
        return fmt::format("Slide {}{} in from the side, {}", name, filled, target);
    }
    if (!bundle.items[step.item].in && (step.direction[0] != 0 || step.direction[1] != 0)) {
        return fmt::format("Slide {}{} in from above at a slant, {}", name, filled, target);
    }
    return fmt::format("Put {}{} {}", name, filled, target);
}

} // namespace tuckwright::stacking
