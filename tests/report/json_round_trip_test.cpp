// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <limits>
#include <nlohmann/json.hpp>

#include "support/handmade_bundles.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/units.hpp"

using namespace tuckwright;
using nlohmann::json;

namespace
{

std::string problems_of(const Result<Bundle>& result)
{
    std::string text;
    if (!result) {
        for (const auto& problem : result.problems()) {
            text += to_string(problem) + "\n";
        }
    }
    return text;
}

Bundle read_back(const Bundle& bundle)
{
    const auto result = from_json(to_json(bundle), "bundle.json");
    INFO(problems_of(result));
    REQUIRE(result.ok());
    return *result;
}

/// What is not there is none.
bool same_tolerances(const PlacedItem& a, const PlacedItem& b)
{
    bool same = true;
    for (std::size_t i = 0; i < a.solids.size(); ++i) {
        const auto of = [i](const PlacedItem& item) {
            return i < item.solids_off.size() ? item.solids_off[i] : Spread{};
        };
        same = same && of(a) == of(b);
    }
    return same;
}

bool same(const PlacedItem& a, const PlacedItem& b)
{
    bool cavities = a.cavities.size() == b.cavities.size();
    for (std::size_t i = 0; cavities && i < a.cavities.size(); ++i) {
        cavities = a.cavities[i].shape == b.cavities[i].shape && a.cavities[i].pose == b.cavities[i].pose &&
                   a.cavities[i].opens == b.cavities[i].opens && a.cavities[i].off == b.cavities[i].off;
    }
    return cavities && a.id == b.id && a.copy == b.copy && a.name == b.name && a.form == b.form &&
           a.weight_g == b.weight_g && a.contents == b.contents && a.contents_g == b.contents_g && a.full == b.full &&
           a.upright == b.upright && a.kinds == b.kinds && a.nothing_on_top == b.nothing_on_top &&
           a.bears_g == b.bears_g && a.reach == b.reach && a.out_after == b.out_after && a.in == b.in &&
           a.closes == b.closes && a.solids == b.solids && a.soft == b.soft && a.stowed == b.stowed &&
           a.how == b.how && same_tolerances(a, b);
}

/// Sums of grid points may lie a rounding beside their own; what is read back is the grid point itself.
Bundle on_grid(Bundle bundle)
{
    const auto snap_pose = [](Pose& pose) {
        pose.center = {snap(pose.center.x), snap(pose.center.y), snap(pose.center.z)};
    };
    for (auto& item : bundle.items) {
        for (auto& solid : item.solids) {
            snap_pose(solid.pose);
        }
        for (auto& cavity : item.cavities) {
            snap_pose(cavity.pose);
        }
    }
    return bundle;
}

void check_same_certificate(const Certificate& a, const Certificate& b)
{
    REQUIRE(a.planes.size() == b.planes.size());
    for (std::size_t i = 0; i < a.planes.size(); ++i) {
        const auto &p = a.planes[i], &q = b.planes[i];
        CHECK((p.first == q.first && p.first_solid == q.first_solid && p.second == q.second &&
               p.second_solid == q.second_solid && p.normal == q.normal));
    }
    REQUIRE(a.rests.size() == b.rests.size());
    for (std::size_t i = 0; i < a.rests.size(); ++i) {
        CHECK((a.rests[i].item == b.rests[i].item && a.rests[i].on == b.rests[i].on &&
               a.rests[i].point == b.rests[i].point));
    }
}

void check_same(const Bundle& a, const Bundle& b)
{
    CHECK(a.kit == b.kit);
    CHECK(a.seed == b.seed);
    CHECK(a.effort == b.effort);
    CHECK(a.status == b.status);
    CHECK(a.clearance == b.clearance);
    CHECK(a.rule.shape == b.rule.shape);
    CHECK(a.rule.diameter == b.rule.diameter);
    CHECK(a.rule.length == b.rule.length);
    CHECK(a.rule.width == b.rule.width);
    CHECK(a.rule.height == b.rule.height);
    CHECK(a.rules == b.rules);
    CHECK(a.waived == b.waived);
    CHECK(a.envelope == b.envelope);
    CHECK(a.lower_bound_ml == b.lower_bound_ml);
    CHECK(a.explanation == b.explanation);
    REQUIRE(a.items.size() == b.items.size());
    for (std::size_t i = 0; i < a.items.size(); ++i) {
        CHECK(same(a.items[i], b.items[i]));
    }
    REQUIRE(a.steps.size() == b.steps.size());
    for (std::size_t i = 0; i < a.steps.size(); ++i) {
        CHECK((a.steps[i].item == b.steps[i].item && a.steps[i].direction == b.steps[i].direction &&
               a.steps[i].text == b.steps[i].text));
    }
    CHECK(a.worst_case == b.worst_case);
    CHECK(a.fits == b.fits);
    CHECK(a.plays == b.plays);
    check_same_certificate(a.certificate, b.certificate);
}

} // namespace

TEST_CASE("bundles come back from their JSON as they were, and give the same bytes")
{
    auto samples = handmade::all();
    samples.push_back({"many pots", [] { return handmade::many_pots(3); }});
    for (const auto& sample : samples) {
        INFO(sample.name);
        const auto bundle = sample.make();
        const auto again = read_back(bundle);
        check_same(on_grid(bundle), again);
        CHECK(to_json(again) == to_json(bundle));
    }
}

TEST_CASE("awkward numbers and texts come back as they were")
{
    auto bundle = handmade::rod_leaning_in_cup();
    bundle.kit = "Tea \"for\" two, \\ \t \xC3\xA9 \xE2\x9B\xBA \n second line";
    bundle.seed = std::numeric_limits<std::uint64_t>::max();
    bundle.status = Status::proved_best;
    bundle.lower_bound_ml = 1.0 / 3;
    bundle.rule.diameter = 100.000001;
    bundle.items[0].weight_g = 28.349523125 * 7.1;
    bundle.items[0].contents_g = 1e-9;
    bundle.items[2].full = true;
    bundle.waived = {"fuel need not keep apart from food: \"sealed\" \n \xC3\xA9", ""};
    bundle.rules = {{Keep::out, "a \"rod\"", "", "it leaks \\ \n and \xC3\xA9"}, {Keep::apart, "rod", "rod", ""}};
    bundle.items[1].solids[0].pose.center.x = from_nanometres(-1);
    bundle.items[1].solids[0].pose.turn = {std::numeric_limits<std::int64_t>::min(), 3, -7,
                                           std::numeric_limits<std::int64_t>::max()};
    bundle.steps[0].direction = {std::numeric_limits<std::int64_t>::min(), 0, std::numeric_limits<std::int64_t>::max()};
    const auto again = read_back(bundle);
    check_same(bundle, again);
    CHECK(to_json(again) == to_json(bundle));
}

TEST_CASE("without a bundle there is neither envelope nor gap nor items, and it comes back so")
{
    for (const auto status : {Status::does_not_fit, Status::not_found}) {
        Bundle bundle;
        bundle.kit = "Soup";
        bundle.status = status;
        bundle.effort = "quick";
        bundle.clearance = 0.5;
        bundle.rule = {BundleShape::box, std::nullopt, 100, 80, 60};
        bundle.rules = {{Keep::apart, "spirit", "oats", "fuel keeps apart from food"}};
        bundle.lower_bound_ml = 512.5;
        bundle.explanation = "the pot is 128 mm across, and the bundle 100 mm long at most";
        const auto object = json::parse(to_json(bundle));
        CHECK(object["bundle"].is_null());
        CHECK(object["gap"].is_null());
        CHECK(object["weight_g"].is_null());
        CHECK(object["items"].empty());
        CHECK(object["explanation"] == bundle.explanation);
        CHECK(object["lower_bound_ml"] == 512.5);
        const auto again = read_back(bundle);
        check_same(bundle, again);
        CHECK(to_json(again) == to_json(bundle));
    }
}

TEST_CASE("the JSON has the fields that other programs rely on")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.items[1].contents = "stock cubes";
    bundle.items[1].contents_g = 30;
    bundle.items[1].full = true;
    const auto object = json::parse(to_json(bundle));
    CHECK(object["format"] == "tuckwright-bundle");
    CHECK(object["version"] == 1);
    CHECK(object["kit"] == "Soup for one");
    CHECK(object["seed"] == 1);
    CHECK(object["effort"] == "by hand");
    CHECK(object["status"] == "found");
    CHECK(object["clearance_mm"] == 0.5);
    CHECK(object["bundle"]["shape"] == "cylinder");
    CHECK(object["bundle"]["diameter_mm"] == 129);
    CHECK(object["bundle"]["height_mm"] == 99);
    CHECK(object["bundle"]["volume_ml"].get<double>() == volume_ml(bundle.envelope));
    CHECK(object["gap"].get<double>() == gap(bundle));
    CHECK(object["weight_g"] == json({{"total", 180}, {"empty", 150}, {"contents", 30}}));
    const auto& cup = object["items"][1];
    CHECK(cup["id"] == "cup");
    CHECK(cup["copy"] == 1);
    CHECK(cup["in"] == json({{"id", "pot"}, {"copy", 1}, {"cavity", 0}}));
    CHECK(cup["form"] == "standing");
    CHECK(cup["upright"] == true);
    CHECK(cup["contents"] == "stock cubes");
    CHECK(cup["contents_g"] == 30);
    CHECK(cup["contents_fill"] == true);
    CHECK(cup["closes"].is_null());
    CHECK(cup["solids"][0]["cylinder"] == json({{"diameter", 80}, {"height", 87}}));
    CHECK(cup["solids"][0]["center"] == json({0, 0, 46.5}));
    CHECK(cup["solids"][0]["rotation"] == json({{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}));
    CHECK(cup["solids"][0]["quaternion"] == json({1, 0, 0, 0}));
    CHECK(cup["cavities"][0]["opens"] == "top");
    CHECK(object["items"][0]["in"].is_null());
    CHECK(object["items"][0]["cavities"][0]["opens"] == "closed");
    CHECK(object["items"][2]["closes"] == json({{"id", "pot"}, {"copy", 1}}));
    REQUIRE(object["steps"].size() == 3);
    CHECK(object["steps"][0]["item"] == "cup");
    CHECK(object["steps"][0]["into"] == "pot");
    CHECK(object["steps"][1]["into"] == "pot"); // the lid
    CHECK(object["steps"][2]["into"] == "bundle");
    CHECK(object["steps"][0]["direction"] == json({0, 0, -1}));
    CHECK(object["certificate"]["rests"][0] == json({{"item", 0}, {"on", nullptr}, {"point", {0, 0, 0}}}));
}

TEST_CASE("rules of carrying are written by their words, and as an empty list where there are none")
{
    const auto object = json::parse(to_json(handmade::fuel_apart_from_food()));
    REQUIRE(object["rules"].size() == 11);
    CHECK(object["rules"][0] ==
          json({{"keep", "apart"}, {"first", "spirit"}, {"second", "oats"}, {"why", "fuel keeps apart from food"}}));
    CHECK(object["rules"][4]["keep"] == "within");
    CHECK(object["rules"][8]["keep"] == "out");
    CHECK(object["rules"][10]["why"] == "");
    CHECK(json::parse(to_json(handmade::cup_in_lidded_pot()))["rules"] == json::array());
    auto lost = handmade::fuel_apart_from_food();
    lost.rules[0].keep = static_cast<Keep>(7);
    CHECK_THROWS_AS(to_json(lost), ContractBroken);
}

TEST_CASE("tolerances, fits and plays come back as they were")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.worst_case = true;
    bundle.items[1].soft = true;
    bundle.items[1].solids_off = {{{0.5, 0.25, 0}}};
    bundle.items[0].cavities[0].off = {{1, 2, 0}};
    bundle.fits = {{{0, 0}, {1}, FitWay::all_round, 23, 22.125}, {{0, 0}, {1}, FitWay::along, 0, -2.25}};
    bundle.plays.assign(3, {{{{0, 1.5}, {2, 0}, {0.000001, 0}}}});
    check_same(on_grid(bundle), read_back(bundle));
    const json object = json::parse(to_json(bundle));
    CHECK(object["worst_case"] == true);
    CHECK(object["items"][1]["solids"][0]["tolerance"] == json{{"diameter", 0.5}, {"height", 0.25}});
    CHECK(object["fits"][1]["way"] == "along");
    CHECK(object["fits"][1]["worst_mm"] == -2.25);
    CHECK(object["plays"][0]["y"] == json{2, 0});
}

TEST_CASE("what is pressed into a vessel comes back as it was, and is told of nothing else")
{
    auto bundle = handmade::ring_pressed_into_a_pot();
    bundle.fits = {{{0, 0}, {1}, FitWay::pressed, 2, 1.75}};
    bundle.plays.assign(4, {});
    const Bundle back = read_back(bundle);
    check_same(on_grid(bundle), back);
    CHECK(back.items[1].pressed == 112);
    CHECK_FALSE(back.items[0].pressed);
    const json object = json::parse(to_json(bundle));
    CHECK(object["items"][1]["pressed_from_mm"] == 112);
    CHECK_FALSE(object["items"][0].contains("pressed_from_mm"));
    CHECK(object["fits"][0]["way"] == "pressed");
}

TEST_CASE("the form in which a thing is carried, and a taper, come back as they were")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.items[1].stowed = "handles in";
    bundle.items[1].how = "fold the handles \"in\"";
    std::get<Cylinder>(bundle.items[1].solids[0].shape).foot = 40.000001;
    check_same(on_grid(bundle), read_back(bundle));
    const json object = json::parse(to_json(bundle));
    CHECK(object["items"][1]["stowed"] == "handles in");
    CHECK(object["items"][1]["how"] == "fold the handles \"in\"");
    CHECK(object["items"][1]["solids"][0]["cylinder"]["foot"] == 40.000001);
    CHECK(object["items"][0]["stowed"] == "");
    CHECK_FALSE(object["items"][0]["solids"][0]["cylinder"].contains("foot")); // straight
}

TEST_CASE("a box envelope has its three edges")
{
    const auto object = json::parse(to_json(handmade::touching_boxes()));
    const json expected = {{"shape", "box"}, {"length_mm", 60}, {"width_mm", 40}, {"height_mm", 20}, {"volume_ml", 48}};
    CHECK(object["bundle"] == expected);
}

TEST_CASE("rotations are printed as matrices whose columns are the images of the shape's own axes")
{
    const auto object = json::parse(to_json(handmade::tin_in_lying_pot()));
    CHECK(object["items"][0]["solids"][0]["rotation"] == json({{0, 0, 1}, {0, 1, 0}, {-1, 0, 0}})); // its z along x
}

TEST_CASE("lengths are written with six decimals at most and without exponents")
{
    auto bundle = handmade::rod_out_of_cup();
    bundle.items[1].solids[0].pose.center = {0.1 + 0.2, 0.000001, -1234.567891};
    const auto text = to_json(bundle);
    CHECK(text.find("\"center\": [0.3, 0.000001, -1234.567891]") != std::string::npos);
    CHECK(text.find("[24.5, 0, 82]") == std::string::npos);
    CHECK(text.back() == '\n');
}

TEST_CASE("what cannot be written as JSON is a broken contract, not a file with holes")
{
    auto nan = handmade::rod_out_of_cup();
    nan.items[0].weight_g = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(to_json(nan), ContractBroken);
    auto endless = handmade::rod_out_of_cup();
    endless.items[0].solids[0].pose.center.x = std::numeric_limits<double>::infinity();
    CHECK_THROWS_AS(to_json(endless), ContractBroken);
    auto lost = handmade::rod_out_of_cup();
    lost.items[1].in = Lodging{9, 0};
    CHECK_THROWS_AS(to_json(lost), ContractBroken);
    auto step = handmade::rod_out_of_cup();
    step.steps[0].item = 3;
    CHECK_THROWS_AS(to_json(step), ContractBroken);
}

TEST_CASE("text that is not UTF-8 does not spoil the JSON")
{
    auto bundle = handmade::rod_out_of_cup();
    bundle.items[0].name = "purp"
                           "\xE9";
    const auto object = json::parse(to_json(bundle));
    CHECK(object["items"][0]["name"] == "purp"
                                        "\xEF\xBF\xBD");
}
