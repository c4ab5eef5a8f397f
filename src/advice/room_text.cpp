// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/words.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/room.hpp"

namespace tuckwright {

namespace {

using report::room_in_words;
using report::wrapped;

bool is_worth_telling(const std::optional<OneMore>& one)
{
    if (!one || volume_ml(one->solid.shape) < worth_telling_ml) {
        return false;
    }
    if (const auto* round = std::get_if<Cylinder>(&one->solid.shape)) {
        return std::min(round->diameter, round->height) >= worth_telling_mm;
    }
    const auto& box = std::get<Box>(one->solid.shape);
    return std::min({box.length, box.width, box.height}) >= worth_telling_mm;
}

bool has_something(const RoomLeft& room)
{
    return std::any_of(room.largest.begin(), room.largest.end(), is_worth_telling);
}

std::string bare(double mm)
{
    const std::string text = room_in_words(mm);
    return text.substr(0, text.find(' '));
}

/// "61 mm across, 78 mm high; 19 mm of it beyond the rim".
std::string size_of(const OneMore& one, Posing posing, bool lies)
{
    const char* upward = lies ? "along it" : "high";
    std::string text;
    if (const auto* round = std::get_if<Cylinder>(&one.solid.shape)) {
        text = fmt::format("{} across, {} {}", room_in_words(round->diameter), room_in_words(round->height),
                           posing == Posing::lying ? "long" : upward);
    } else {
        const auto& box = std::get<Box>(one.solid.shape);
        text = fmt::format("{} x {}, {} {}", bare(std::max(box.length, box.width)),
                           room_in_words(std::min(box.length, box.width)), room_in_words(box.height), upward);
    }
    constexpr double least_told = 0.05;
    return one.stands_out < least_told ? text
                                       : fmt::format("{} ({} of it beyond the rim)", text,
                                                     report::length_in_words(one.stands_out));
}

/// The names of what lies directly in a place, at most so many.
std::string neighbours(const Bundle& bundle, const Lodging& in)
{
    constexpr std::size_t most = 3;
    std::vector<std::string> names;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        if (bundle.items[item].in == in && !bundle.items[item].closes) {
            names.push_back(spoken_name(bundle, item));
        }
    }
    const std::size_t named = names.size() > most ? most - 1 : names.size();
    std::string text;
    for (std::size_t k = 0; k < named; ++k) {
        const bool is_last = k + 1 == names.size();
        text += (k == 0 ? "" : is_last ? " and " : ", ") + names[k];
    }
    return names.size() > named ? fmt::format("{} and {} more", text, names.size() - named) : text;
}

/// Whether the way into a vessel is level: it lies on its side.
bool is_on_its_side(const Bundle& bundle, const RoomLeft& room)
{
    constexpr double level = 0.5;
    return room.in &&
           std::abs(rotation_matrix(bundle.items[room.in->item].cavities[room.in->cavity].pose.turn)[2][2]) < level;
}

std::string place_of(const Bundle& bundle, const RoomLeft& room)
{
    if (!room.in) {
        return "In the bundle, beside and on top of everything:";
    }
    const std::string beside = neighbours(bundle, *room.in);
    const bool lies = is_on_its_side(bundle, room);
    return fmt::format("In {}{}{}:", spoken_name(bundle, room.in->item), lies ? ", which lies on its side" : "",
                       !beside.empty() ? ", beside " + beside : lies ? " and is empty" : ", which is empty");
}

std::string room_part(const Bundle& bundle, const RoomLeft& room)
{
    const bool lies = is_on_its_side(bundle, room);
    std::string text = "\n" + wrapped("", place_of(bundle, room));
    const auto& standing = room.of(Posing::standing);
    if (is_worth_telling(standing)) {
        const bool told = is_worth_telling(room.other);
        text += wrapped(lies ? "  round, along it:  " : "  round, standing:  ",
                        size_of(*standing, Posing::standing, lies) +
                            (told ? "; or " + size_of(*room.other, Posing::standing, lies) : ""));
    }
    if (is_worth_telling(room.of(Posing::lying))) {
        text += wrapped(lies ? "  round, across it: " : "  round, lying:     ",
                        size_of(*room.of(Posing::lying), Posing::lying, lies));
    }
    if (is_worth_telling(room.of(Posing::box))) {
        text += wrapped("  a box:            ", size_of(*room.of(Posing::box), Posing::box, lies));
    }
    return text;
}

/// The places for which there is nothing to tell.
std::string nothing_part(const Bundle& bundle, const RoomAnswer& answer)
{
    std::string names;
    for (const RoomLeft& room : answer.rooms) {
        if (!has_something(room)) {
            names += (names.empty() ? "" : ", ") +
                     (room.in ? spoken_name(bundle, room.in->item) : "the bundle beside and on top of everything");
        }
    }
    return names.empty() ? ""
                         : "\n" + wrapped("", fmt::format("Nothing as large as {:g} ml and {:g} mm thick was found to "
                                                          "go into: {}.",
                                                          worth_telling_ml, worth_telling_mm, names));
}

} // namespace

std::string room_text(const Bundle& bundle, const RoomAnswer& answer)
{
    std::string text = wrapped("", fmt::format("{}: what else goes into {}", bundle.kit,
                                               report::envelope_in_words(outer_envelope(bundle))));
    for (const RoomLeft& room : answer.rooms) {
        text += has_something(room) ? room_part(bundle, room) : "";
    }
    if (answer.complete) {
        text += nothing_part(bundle, answer);
    } else {
        text += "\nThe search was stopped before all places had been looked at.\n";
    }
    text += "\n" + wrapped("", "Each of these was proved to go in by hand as the only further thing, while everything "
                               "else stays where it is and the bundle grows no larger. It lies on nothing that bears "
                               "little. Sizes are rounded down. At least these go in: larger ones may, elsewhere, and "
                               "more if things are packed anew.");
    if (bundle.worst_case) {
        text += wrapped("", "The bundle is packed for the worst case; the new thing's sizes must be meant so too.");
    }
    return text + wrapped("", "What it may lie beside, fuel and food above all, is for you to see to.");
}

} // namespace tuckwright
