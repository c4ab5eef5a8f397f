// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "advice/room_words.hpp"
#include "report/words.hpp"
#include "tuckwright/room.hpp"

namespace tuckwright {

namespace {

using report::wrapped;
using namespace advice;

bool has_something(const RoomLeft& room)
{
    return std::any_of(room.largest.begin(), room.largest.end(), is_worth_telling);
}

std::string room_part(const Bundle& bundle, const RoomLeft& room)
{
    const bool lies = is_on_its_side(bundle, room);
    std::string text = "\n" + wrapped("", place_in_words(bundle, room) + ":");
    const auto& standing = room.of(Posing::standing);
    if (is_worth_telling(standing)) {
        const bool told = is_worth_telling(room.other);
        text += wrapped(lies ? "  round, along it:  " : "  round, standing:  ",
                        one_more_in_words(*standing, Posing::standing, lies) +
                            (told ? "; or " + one_more_in_words(*room.other, Posing::standing, lies) : ""));
    }
    if (is_worth_telling(room.of(Posing::lying))) {
        text += wrapped(lies ? "  round, across it: " : "  round, lying:     ",
                        one_more_in_words(*room.of(Posing::lying), Posing::lying, lies));
    }
    if (is_worth_telling(room.of(Posing::box))) {
        text += wrapped("  a box:            ", one_more_in_words(*room.of(Posing::box), Posing::box, lies));
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
