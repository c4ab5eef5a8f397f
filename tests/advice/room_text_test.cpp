// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include <algorithm>

#include "support/handmade_bundles.hpp"
#include "tuckwright/room.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;
using nlohmann::json;

namespace {

/// The pot and the cup of the bundle with the given things in the pot, none elsewhere.
RoomAnswer answer_with(const std::optional<OneMore>& standing, const std::optional<OneMore>& box)
{
    RoomAnswer answer;
    answer.rooms.resize(3);
    answer.rooms[1].in = Lodging{0, 0};
    answer.rooms[2].in = Lodging{1, 0};
    answer.rooms[1].largest = {standing, std::nullopt, box};
    return answer;
}

/// Whether the text has that part, on a line or across lines.
bool says(const std::string& text, const std::string& part)
{
    std::string on_one_line = text;
    std::replace(on_one_line.begin(), on_one_line.end(), '\n', ' ');
    return text.find(part) != std::string::npos || on_one_line.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("sizes are rounded down, what stands out up, a box is told longest side first")
{
    const Bundle made = cup_in_lidded_pot();
    const OneMore can{cylinder(61.19999, 78.999999, {0, 0, 50}), 3.01, "Put it in."};
    const OneMore block{box(45.05, 80.05, 30, {0, 0, 50}), 0, "Put it in."};
    const std::string text = room_text(made, answer_with(can, block));
    CHECK(says(text, "Soup for one: what else goes into a round bundle 129 mm across and 99 mm high\n"));
    CHECK(says(text, "In pot, beside cup:\n"));
    CHECK(says(text, "  round, standing:  61.1 mm across, 78.9 mm high (3.1 mm of it beyond the rim)\n"));
    CHECK(says(text, "  a box:            80 x 45 mm, 30 mm high\n"));
    CHECK(says(text, "go into: the bundle beside and on top of everything, cup."));
    CHECK_FALSE(says(text, "lying:"));
    CHECK_FALSE(says(text, "worst case"));
}

TEST_CASE("what is thin or tiny is left out of the text, not of the JSON")
{
    const Bundle made = cup_in_lidded_pot();
    for (const Solid& small : {cylinder(60, 7.9, {0, 0, 50}), cylinder(18, 19, {0, 0, 50}), box(300, 90, 7, {0, 0, 50})}) {
        const RoomAnswer answer = answer_with(OneMore{small, 0, ""}, std::nullopt);
        CHECK_FALSE(says(room_text(made, answer), "round, standing"));
        CHECK(says(room_text(made, answer), "go into: the bundle beside and on top of everything, pot, cup."));
        CHECK(json::parse(room_json(made, answer))["rooms"][1]["standing"].is_object());
    }
}

TEST_CASE("the JSON has all places, with the very numbers that were proved")
{
    Bundle made = cup_in_lidded_pot();
    made.worst_case = true;
    const OneMore can{cylinder(61.199998, 78.999998, {1.5, -2, 50.000001}), 3.01, "Put it in."};
    RoomAnswer answer = answer_with(can, std::nullopt);
    answer.rooms[1].other = can;
    const auto all = json::parse(room_json(made, answer));
    CHECK(all["format"] == "tuckwright-room");
    CHECK(all["version"] == 1);
    CHECK(all["kit"] == "Soup for one");
    CHECK(all["worst_case"] == true);
    CHECK(all["complete"] == true);
    CHECK(all["bundle"]["diameter_mm"] == 129);
    REQUIRE(all["rooms"].size() == 3);
    CHECK(all["rooms"][0]["in"].is_null());
    CHECK(all["rooms"][0]["box"].is_null());
    const auto& room = all["rooms"][1];
    CHECK(room["in"]["id"] == "pot");
    CHECK(room["in"]["copy"] == 1);
    CHECK(room["in"]["cavity"] == 0);
    CHECK(room["standing"]["cylinder"]["diameter"] == 61.199998);
    CHECK(room["standing"]["cylinder"]["height"] == 78.999998);
    CHECK(room["standing"]["center"] == json::array({1.5, -2, 50.000001}));
    CHECK(room["standing"]["quaternion"] == json::array({1, 0, 0, 0}));
    CHECK(room["standing"]["stands_out_mm"] == 3.01);
    CHECK(room["standing"]["step"] == "Put it in.");
    CHECK(room["lying"].is_null());
    CHECK(room["standing_otherwise"] == room["standing"]);
    CHECK(says(room_text(made, answer), "packed for the worst case"));
}
