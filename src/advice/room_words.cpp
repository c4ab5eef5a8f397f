// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/room_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "report/words.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::advice {

using report::room_in_words;

namespace {

std::string bare(double mm)
{
    const std::string text = room_in_words(mm);
    return text.substr(0, text.find(' '));
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

} // namespace

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

std::string one_more_in_words(const OneMore& one, Posing posing, bool lies)
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

bool is_on_its_side(const Bundle& bundle, const RoomLeft& room)
{
    constexpr double level = 0.5;
    return room.in &&
           std::abs(rotation_matrix(bundle.items[room.in->item].cavities[room.in->cavity].pose.turn)[2][2]) < level;
}

std::string place_in_words(const Bundle& bundle, const RoomLeft& room)
{
    if (!room.in) {
        return "In the bundle, beside and on top of everything";
    }
    const std::string beside = neighbours(bundle, *room.in);
    const bool lies = is_on_its_side(bundle, room);
    return fmt::format("In {}{}{}", spoken_name(bundle, room.in->item), lies ? ", which lies on its side" : "",
                       !beside.empty() ? ", beside " + beside : lies ? " and is empty" : ", which is empty");
}

} // namespace tuckwright::advice
