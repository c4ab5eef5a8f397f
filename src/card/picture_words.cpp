// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/picture_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "advice/chain_words.hpp"
#include "advice/room_words.hpp"
#include "report/covers.hpp"
#include "report/figures.hpp"
#include "report/nesting_tree.hpp"
#include "report/steps_frame.hpp"
#include "report/words.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/savings.hpp"

namespace tuckwright::card {

namespace {

using nlohmann::ordered_json;

constexpr double least_told = 0.1; ///< mm of play

/// How a length of play is told, which may be nought.
std::string way_in_words(double mm) { return mm < least_told ? "none" : report::room_in_words(mm); }

std::string where_in_words(const Bundle& bundle, const PlacedItem& item)
{
    if (item.closes) {
        return "on " + spoken_name(bundle, *item.closes);
    }
    return item.in ? "in " + spoken_name(bundle, item.in->item) : "in the bundle itself";
}

ordered_json item_words(const Bundle& bundle, std::size_t index)
{
    const PlacedItem& item = bundle.items[index];
    return {{"name", spoken_name(bundle, index)},
            {"full", full_name(bundle, index)},
            {"size", report::printable(report::thing_in_words(bundle, index))},
            {"weight", report::weight_in_words(item.weight_g) + (item.contents_g > 0 ? ", without its contents" : "")},
            {"where", where_in_words(bundle, item)},
            {"play", play_in_words(bundle, index)}};
}

ordered_json room_words(const Bundle& bundle, const RoomAnswer& answer)
{
    ordered_json places = ordered_json::array();
    for (const RoomLeft& room : answer.rooms) {
        const bool lies = advice::is_on_its_side(bundle, room);
        ordered_json shapes = ordered_json::array();
        const auto tell = [&](const char* key, Posing posing, const char* kind, const std::optional<OneMore>& one) {
            if (advice::is_worth_telling(one)) {
                shapes.push_back({{"key", key},
                                  {"text", fmt::format("{}: {}", kind, advice::one_more_in_words(*one, posing, lies))}});
            }
        };
        tell("standing", Posing::standing, lies ? "round, along it" : "round, standing", room.of(Posing::standing));
        tell("standing_otherwise", Posing::standing, "or", room.other);
        tell("lying", Posing::lying, lies ? "round, across it" : "round, lying", room.of(Posing::lying));
        tell("box", Posing::box, "a box", room.of(Posing::box));
        const bool is_empty = shapes.empty();
        places.push_back({{"place", advice::place_in_words(bundle, room) + (is_empty ? ": nothing worth telling" : "")},
                          {"shapes", std::move(shapes)}});
    }
    return places;
}

ordered_json chain_words(const Bundle& bundle, const std::vector<Chain>& chains)
{
    ordered_json parts = ordered_json::array();
    for (const Chain& chain : chains) {
        parts.push_back({{"text", on_one_line(chains_text(bundle, {chain}))},
                         {"parts", advice::stretches_in_words(bundle, chain)}});
    }
    return parts;
}

constexpr const char* room_hint =
    "Each of these was proved to go in as the only further thing, while all else stays; larger ones may, elsewhere. What "
    "it may lie beside, fuel and food above all, is for you to see to.";
constexpr const char* chain_hint = "What touches from wall to wall: only if something there gets smaller, the bundle does.";

std::string start_in_words(const Bundle& bundle)
{
    const std::string frame = on_one_line(report::frame_in_words(bundle));
    return frame.empty() ? "Everything lies on the table." : frame;
}

std::string status_in_words(const Bundle& bundle)
{
    switch (bundle.status) {
    case Status::proved_best:
        return "Proved to fit, and proved the smallest with everything standing, lying or on its side.";
    case Status::stopped: return "Proved to fit; the search was stopped early, so a smaller one may well exist.";
    default: return "Proved to fit; a smaller one may exist.";
    }
}

} // namespace

std::string on_one_line(std::string_view text)
{
    std::string line;
    bool is_apart = false;
    for (const char c : text) {
        if (c == ' ' || c == '\n') {
            is_apart = !line.empty();
            continue;
        }
        line += (is_apart ? " " : "");
        line += c;
        is_apart = false;
    }
    return line;
}

std::string play_in_words(const Bundle& bundle, std::size_t item)
{
    require(item < bundle.plays.size(), "plays are there for every item");
    const PlacedItem& it = bundle.items[item];
    if (it.closes) {
        return "none, for it is shut";
    }
    if (it.pressed) {
        return "none, for it is held by its spring";
    }
    const Pose frame = it.in ? bundle.items[it.in->item].cavities[it.in->cavity].pose : Pose{};
    const Matrix3 turn = rotation_matrix(frame.turn);
    constexpr double upright = 0.9;
    double sideways = 0, upwards = 0;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        const auto& free = bundle.plays[item].free[axis];
        double& way = std::abs(turn[2][axis]) > upright ? upwards : sideways;
        way = std::max(way, free[0] + free[1]);
    }
    return fmt::format("{} sideways, {} up and down", way_in_words(sideways), way_in_words(upwards));
}

std::string headline(const Bundle& bundle)
{
    const Shape outer = outer_envelope(bundle);
    return fmt::format("Packs into {}{}; {}, {}. {}", report::envelope_in_words(outer), bundle.bag ? ", in its bag" : "",
                       report::volume_in_words(volume_ml(outer), report::Rounding::up),
                       report::weight_in_words(report::weights_of(bundle).total), status_in_words(bundle));
}

ordered_json picture_words(const Bundle& bundle, const PictureExtras& extras)
{
    ordered_json items = ordered_json::array();
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        items.push_back(item_words(bundle, item));
    }
    ordered_json words;
    words["title"] = bundle.kit;
    words["start"] = start_in_words(bundle);
    words["items"] = std::move(items);
    words["covers"] = report::cover_steps(bundle);
    words["rooms"] = extras.room ? room_words(bundle, *extras.room) : ordered_json::array();
    words["room_hint"] = room_hint;
    words["chains"] = chain_words(bundle, extras.chains);
    words["chain_hint"] = chain_hint;
    return words;
}

} // namespace tuckwright::card
