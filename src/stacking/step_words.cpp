// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/step_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "stacking/direction.hpp"
#include "stacking/place_words.hpp"

namespace tuckwright::stacking {

namespace {

constexpr std::size_t most_named = 3; ///< carriers that are named one by one
constexpr double stands_cosine = 0.996;

/// "Pan and the rim of Bowl": open vessels carry on their rims.
std::string carriers(const Bundle& bundle, const Surroundings& seen)
{
    const std::vector<std::size_t>& items = seen.on;
    std::string list;
    for (std::size_t k = 0; k < items.size(); ++k) {
        if (k == most_named) {
            return list + fmt::format(" and {} more", items.size() - k);
        }
        const bool last = k + 1 == items.size();
        list += k == 0 ? "" : last ? " and " : ", ";
        const bool rim = std::find(seen.rims.begin(), seen.rims.end(), items[k]) != seen.rims.end();
        list += (rim ? "the rim of " : "") + spoken_name(bundle, items[k]);
    }
    return list;
}

/// What stands in a sleeve goes down to the floor of what that stands in.
std::string at_the_bottom(const Bundle& bundle, const std::optional<Lodging>& in)
{
    if (bundle.items[in->item].cavities[in->cavity].opens != Opening::both) {
        return ", at the bottom";
    }
    std::optional<Lodging> outer = in;
    while (outer && bundle.items[outer->item].cavities[outer->cavity].opens == Opening::both) {
        outer = bundle.items[outer->item].in;
    }
    return outer ? ", down to the floor of " + spoken_name(bundle, outer->item) : ", down to the table";
}

/// Without a comma before another one or at the end.
std::string tidied(std::string words)
{
    for (const char* const doubled : {",,", ",."}) {
        for (auto at = words.find(doubled); at != std::string::npos; at = words.find(doubled)) {
            words.erase(at, 1);
        }
    }
    return words;
}

/// The posture, with the height of a box that does not lie flat: so it is told which side is up.
std::string posture_words(const Bundle& bundle, std::size_t item)
{
    const std::string word = posture(bundle, item);
    const auto* box = std::get_if<Box>(&bundle.items[item].solids.front().shape);
    if (box == nullptr || (word != "on its edge" && word != "on its end" && word != "lying")) {
        return word;
    }
    const Matrix3 m = rotation_matrix(bundle.items[item].solids.front().pose.turn);
    const Vec3 up = upright_of_container(bundle, item);
    double high = 0;
    const std::array<double, 3> sizes{box->length, box->width, box->height};
    for (std::size_t k = 0; k < 3; ++k) {
        high += sizes[k] * std::abs(up.x * m[0][k] + up.y * m[1][k] + up.z * m[2][k]);
    }
    return fmt::format("{}, {:.0f} mm high,", word, high);
}

bool holds_something(const Replay& before, std::size_t item)
{
    const auto group = before.group(item);
    return std::any_of(group.begin(), group.end(), [&](std::size_t i) { return is_within(before.bundle(), i, item); });
}

/// Whether an item is a sleeve that has been slipped over something.
bool is_loaded_sleeve(const Replay& before, std::size_t item)
{
    const auto& cavities = before.bundle().items[item].cavities;
    return !cavities.empty() && cavities.front().opens == Opening::both && holds_something(before, item);
}

/// Whether what goes in has been filled, or shut, as it stands with its mouth up, and now goes in otherwise.
bool is_tipped(const Replay& before, std::size_t item)
{
    const std::string word = posture(before.bundle(), item);
    const bool was_handled = before.group(item).size() > 1 && !is_loaded_sleeve(before, item);
    return was_handled && word != "standing" && word != "flat";
}

/// "Put Pot, with all that is in it,"; of what was filled with its mouth up and now lies or stands on its head, how it gets
/// there: "Hold the mouth of Pot shut, turn it over with all that is in it, and put it". A loaded sleeve would drop what is
/// in it.
std::string taken(const Replay& before, std::size_t item, const std::string& verb)
{
    const Bundle& bundle = before.bundle();
    const std::string name = spoken_name(bundle, item);
    const bool holds = holds_something(before, item);
    if (!is_tipped(before, item)) {
        const char* const filled =
            is_loaded_sleeve(before, item) ? ", held together with all that is in it," : ", with all that is in it,";
        return verb + " " + name + (holds ? filled : "");
    }
    const auto& cavities = bundle.items[item].cavities;
    const bool is_open = std::any_of(cavities.begin(), cavities.end(),
                                     [](const PlacedCavity& cavity) { return cavity.opens != Opening::closed; });
    const std::string turn = posture(bundle, item) == "upside down" ? "turn it over" : "tip it over";
    std::string text = is_open ? "Hold the mouth of " + name + " shut, " + turn
                               : (turn == "turn it over" ? "Turn " : "Tip ") + name + " over";
    text += holds ? " with all that is in it" : "";
    std::string then = verb;
    then.front() = static_cast<char>(then.front() - 'A' + 'a');
    return text + ", and " + then + " it";
}

/// " into Pot", " into Pot, which stands mouth up for now" or nothing for the bundle.
std::string into(const Bundle& bundle, std::size_t item)
{
    const auto& in = bundle.items[item].in;
    if (!in) {
        return "";
    }
    const bool sleeve = bundle.items[in->item].cavities[in->cavity].opens == Opening::both;
    const bool tipped_later = !sleeve && upright_of_container(bundle, item).z < stands_cosine;
    return " into " + spoken_name(bundle, in->item) + (tipped_later ? ", which stands mouth up for now" : "");
}

/// Whether an item hangs in a vessel that tapers, held by its walls alone.
bool is_wedged(const Bundle& bundle, std::size_t item, const Surroundings& seen)
{
    const auto& in = bundle.items[item].in;
    if (!in || seen.on_floor || !seen.on.empty()) {
        return false;
    }
    const auto* c = std::get_if<Cylinder>(&bundle.items[in->item].cavities[in->cavity].shape);
    return c != nullptr && c->foot != 0;
}

std::string place(const Replay& before, std::size_t item, const Surroundings& seen)
{
    const Bundle& bundle = before.bundle();
    const bool on_table = seen.on_floor && !bundle.items[item].in;
    if (is_wedged(bundle, item, seen)) {
        return hanging_words(before, item, seen);
    }
    const bool on_rims = seen.rims.size() == seen.on.size();
    std::string words = !seen.on.empty() ? (on_rims ? ", on " : ", on top of ") + carriers(bundle, seen)
                        : on_table       ? " on the table"
                        : seen.on_floor  ? at_the_bottom(bundle, bundle.items[item].in)
                                         : "";
    if (!bundle.items[item].in && !seen.on.empty()) {
        words.erase(0, 1); // the comma
    }
    const std::string where = spot(before, item, seen);
    if (where.empty()) {
        return words;
    }
    if (where.front() == ';') {
        return words + where;
    }
    const bool is_place = !where.starts_with("open") && !where.starts_with("long side") && !where.starts_with("axis") && !where.starts_with("the part");
    return words + (on_table && is_place ? " " : ", ") + where;
}

/// Whether nothing lies in an item yet, nor is it in its place: what goes into it now finds it as it was.
bool is_untouched(const Replay& before, std::size_t item)
{
    const auto& inside = before.contents(item);
    return !before.placed(item) && std::none_of(inside.begin(), inside.end(), [&](std::size_t i) { return before.placed(i); });
}

/// Whether what is to be done to a vessel is done while it is empty; a bag is drawn shut when it is full.
bool is_prepared_empty(const Bundle& bundle, std::size_t item)
{
    const auto& cavities = bundle.items[item].cavities;
    return std::all_of(cavities.begin(), cavities.end(),
                       [](const PlacedCavity& cavity) { return cavity.opens != Opening::closed; }) ||
           std::any_of(bundle.items.begin(), bundle.items.end(),
                       [&](const PlacedItem& other) { return other.closes == item; });
}

/// "Windscreen: roll it to a tube. " or nothing: what is to be done to an item before it is put in.
std::string preparation(const Bundle& bundle, std::size_t item)
{
    const std::string& how = bundle.items[item].how;
    return how.empty() ? "" : fmt::format("{}: {}. ", spoken_name(bundle, item), how);
}

std::string shut(const Bundle& bundle, std::size_t lid)
{
    std::string text =
        fmt::format("Shut {} with {}.", spoken_name(bundle, *bundle.items[lid].closes), spoken_name(bundle, lid));
    for (const Band& band : bundle.bands) {
        text += band.over == bundle.items[lid].id ? " " + lid_band_step(bundle, band) : "";
    }
    return text;
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
    const std::string word = posture(bundle, item);
    const std::string way = word == "standing" || word == "flat" ? "" : " (" + word + ")";
    const char* const filled = is_loaded_sleeve(before, item)  ? ", held together with all that is in it"
                               : holds_something(before, item) ? ", with all that is in it"
                                                               : "";
    const std::string around =
        seen.alone && seen.in_middle && seen.all_round ? "; " + air(*seen.wall_air) + " all round" : "";
    return preparation(bundle, item) + preparation(bundle, bundle.items[item].in->item) +
           fmt::format("Slip {} round {}{}{}{}.", spoken_name(bundle, bundle.items[item].in->item),
                       spoken_name(bundle, item), way, filled, around);
}

/// Through a narrow opening and then aside.
std::string push_aside(const Replay& before, std::size_t item, const Surroundings& seen)
{
    const Bundle& bundle = before.bundle();
    std::string where = place(before, item, seen);
    if (seen.wall_air && spot(before, item, seen).empty()) { // where to, if there is nothing else to go by
        where += fmt::format(", {:.0f} mm from the wall", *seen.wall_air);
    }
    if (where.starts_with(", ")) {
        where = ": " + where.substr(2);
    }
    std::string through = into(bundle, item);
    through.replace(0, std::string(" into").size(), " through the opening of");
    through += through.find(',') != std::string::npos ? "," : ""; // closes the relative clause
    return tidied(fmt::format("{} {}{} and push it aside to its place{}.", taken(before, item, "Put"),
                              posture_words(bundle, item), through, where));
}

/// How far down a thing is pressed into its vessel, along the axis of that.
std::string depth_pressed(const Bundle& bundle, const PlacedItem& item)
{
    const PlacedCavity& cavity = bundle.items[item.in->item].cavities[item.in->cavity];
    const Matrix3 m = rotation_matrix(cavity.pose.turn);
    const double up = dot(Vec3{m[0][2], m[1][2], m[2][2]}, item.solids.front().pose.center - cavity.pose.center);
    const double spare = (height_of(cavity.shape) - height_of(item.solids.front().shape)) / 2;
    constexpr double same_level = 0.5; // mm: nobody presses it in more exactly
    return up + spare < same_level   ? ", at the bottom"
           : spare - up < same_level ? ", flush with the rim"
                                     : fmt::format(", {:.0f} mm below the rim", spare - up);
}

/// Into a vessel that holds it by its spring: there is no other place across, and nothing to centre.
std::string press(const Replay& before, std::size_t item, const Surroundings& seen)
{
    const Bundle& bundle = before.bundle();
    const std::string carried = !seen.on.empty() ? ", on top of " + carriers(bundle, seen)
                                                 : depth_pressed(bundle, bundle.items[item]);
    return fmt::format("{} together and{}{}.", taken(before, item, "Press"), into(bundle, item), carried);
}

} // namespace

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
    if (bundle.items[step.item].pressed && bundle.items[step.item].in) {
        return press(before, step.item, seen);
    }
    if (step.via && bundle.items[step.item].in) {
        return push_aside(before, step.item, seen);
    }
    const std::string target =
        tidied(posture_words(bundle, step.item) + into(bundle, step.item) + place(before, step.item, seen) + ".");
    const bool straight_down = step.direction[0] == 0 && step.direction[1] == 0;
    const auto& in = bundle.items[step.item].in;
    const bool starts_vessel = in && is_untouched(before, in->item) && is_prepared_empty(bundle, in->item);
    const bool was_prepared = holds_something(before, step.item) && is_prepared_empty(bundle, step.item);
    const std::string first = (starts_vessel ? preparation(bundle, in->item) : "") +
                              (was_prepared ? "" : preparation(bundle, step.item));
    if (!bundle.items[step.item].in && !straight_down) {
        return first + fmt::format("{} {}, {}", taken(before, step.item, "Slide"), way_in_words(bundle, step), target);
    }
    return first + taken(before, step.item, "Put") + " " + target;
}

} // namespace tuckwright::stacking
