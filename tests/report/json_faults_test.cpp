// SPDX-License-Identifier: GPL-3.0-or-later
/// For every field, JSON with one fault: the reader must refuse it and name the path.
#include <catch2/catch.hpp>

#include <functional>
#include <nlohmann/json.hpp>

#include "support/handmade_bundles.hpp"
#include "tuckwright/report.hpp"

using namespace tuckwright;
using nlohmann::json;

namespace
{

/// All problems, one a line; empty if there are none.
std::string problems_in(const std::string& text)
{
    const auto result = from_json(text, "bundle.json");
    std::string lines;
    if (!result) {
        for (const auto& problem : result.problems()) {
            lines += to_string(problem) + "\n";
        }
    }
    return lines;
}

struct Fault {
    const char* at; ///< JSON pointer of what is replaced; removed where the value is discarded
    json value;
    const char* said;
};

const json removed(json::value_t::discarded);

void refuse(const Bundle& bundle, const std::vector<Fault>& faults)
{
    const json sound = json::parse(to_json(bundle));
    REQUIRE(problems_in(sound.dump()).empty());
    for (const auto& fault : faults) {
        json spoilt = sound;
        const json::json_pointer at(fault.at);
        if (fault.value.is_discarded()) {
            spoilt.at(at.parent_pointer()).erase(at.back());
        } else {
            spoilt[at] = fault.value;
        }
        const std::string said = problems_in(spoilt.dump());
        INFO(fault.at << " said: " << said);
        CHECK(said.find(std::string("bundle.json: ") + fault.said) != std::string::npos);
    }
}

Bundle sample()
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.items[1].contents_g = 30;
    bundle.certificate.planes.push_back({0, 0, 2, 0, {0, 0, 1}});
    handmade::keep(bundle, Keep::within, "cup", "pot");
    bundle.fits.push_back({{0, 0}, {1}, FitWay::along, 0.5, -0.25});
    bundle.plays.assign(3, {});
    return bundle;
}

} // namespace

TEST_CASE("every field that is missing is named")
{
    refuse(sample(), {
                         {"/format", removed, "format: is missing"},
                         {"/version", removed, "version: is missing"},
                         {"/kit", removed, "kit: is missing"},
                         {"/seed", removed, "seed: is missing"},
                         {"/effort", removed, "effort: is missing"},
                         {"/status", removed, "status: is missing"},
                         {"/explanation", removed, "explanation: is missing"},
                         {"/clearance_mm", removed, "clearance_mm: is missing"},
                         {"/worst_case", removed, "worst_case: is missing"},
                         {"/fits", removed, "fits: is missing"},
                         {"/fits/0/vessel", removed, "fits[0].vessel: is missing"},
                         {"/fits/0/cavity", removed, "fits[0].cavity: is missing"},
                         {"/fits/0/items", removed, "fits[0].items: is missing"},
                         {"/fits/0/way", removed, "fits[0].way: is missing"},
                         {"/fits/0/room_mm", removed, "fits[0].room_mm: is missing"},
                         {"/fits/0/worst_mm", removed, "fits[0].worst_mm: is missing"},
                         {"/plays", removed, "plays: is missing"},
                         {"/plays/2/z", removed, "plays[2].z: is missing"},
                         {"/limits", removed, "limits: is missing"},
                         {"/limits/shape", removed, "limits.shape: is missing"},
                         {"/rules", removed, "rules: is missing"},
                         {"/waived", removed, "waived: is missing"},
                         {"/rules/0/keep", removed, "rules[0].keep: is missing"},
                         {"/rules/0/first", removed, "rules[0].first: is missing"},
                         {"/rules/0/second", removed, "rules[0].second: is missing"},
                         {"/rules/0/why", removed, "rules[0].why: is missing"},
                         {"/bundle", removed, "bundle: is missing"},
                         {"/bundle/shape", removed, "bundle.shape: is missing"},
                         {"/bundle/diameter_mm", removed, "bundle.diameter_mm: is missing"},
                         {"/bundle/height_mm", removed, "bundle.height_mm: is missing"},
                         {"/bundle/volume_ml", removed, "bundle.volume_ml: is missing"},
                         {"/lower_bound_ml", removed, "lower_bound_ml: is missing"},
                         {"/gap", removed, "gap: is missing"},
                         {"/weight_g", removed, "weight_g: is missing"},
                         {"/weight_g/total", removed, "weight_g.total: is missing"},
                         {"/weight_g/empty", removed, "weight_g.empty: is missing"},
                         {"/weight_g/contents", removed, "weight_g.contents: is missing"},
                         {"/items", removed, "items: is missing"},
                         {"/steps", removed, "steps: is missing"},
                         {"/steps/0/item", removed, "steps[0].item: is missing"},
                         {"/steps/0/copy", removed, "steps[0].copy: is missing"},
                         {"/steps/0/into", removed, "steps[0].into: is missing"},
                         {"/steps/0/direction", removed, "steps[0].direction: is missing"},
                         {"/steps/0/via", removed, "steps[0].via: is missing"},
                         {"/steps/0/text", removed, "steps[0].text: is missing"},
                         {"/certificate", removed, "certificate: is missing"},
                         {"/certificate/planes", removed, "certificate.planes: is missing"},
                         {"/certificate/planes/0/first", removed, "certificate.planes[0].first: is missing"},
                         {"/certificate/planes/0/second", removed, "certificate.planes[0].second: is missing"},
                         {"/certificate/planes/0/normal", removed, "certificate.planes[0].normal: is missing"},
                         {"/certificate/rests", removed, "certificate.rests: is missing"},
                         {"/certificate/rests/1/item", removed, "certificate.rests[1].item: is missing"},
                         {"/certificate/rests/1/on", removed, "certificate.rests[1].on: is missing"},
                         {"/certificate/rests/1/point", removed, "certificate.rests[1].point: is missing"},
                     });
}

TEST_CASE("every field of an item that is missing is named")
{
    refuse(sample(),
           {
               {"/items/1/id", removed, "items[1].id: is missing"},
               {"/items/1/copy", removed, "items[1].copy: is missing"},
               {"/items/1/name", removed, "items[1].name: is missing"},
               {"/items/1/in", removed, "items[1].in: is missing"},
               {"/items/1/in/id", removed, "items[1].in.id: is missing"},
               {"/items/1/in/copy", removed, "items[1].in.copy: is missing"},
               {"/items/1/in/cavity", removed, "items[1].in.cavity: is missing"},
               {"/items/1/closes", removed, "items[1].closes: is missing"},
               {"/items/1/form", removed, "items[1].form: is missing"},
               {"/items/1/upright", removed, "items[1].upright: is missing"},
               {"/items/1/kinds", removed, "items[1].kinds: is missing"},
               {"/items/1/nothing_on_top", removed, "items[1].nothing_on_top: is missing"},
               {"/items/1/bears_g", removed, "items[1].bears_g: is missing"},
               {"/items/1/reach", removed, "items[1].reach: is missing"},
               {"/items/1/out_after", removed, "items[1].out_after: is missing"},
               {"/items/1/weight_g", removed, "items[1].weight_g: is missing"},
               {"/items/1/contents", removed, "items[1].contents: is missing"},
               {"/items/1/contents_g", removed, "items[1].contents_g: is missing"},
               {"/items/1/soft", removed, "items[1].soft: is missing"},
               {"/items/1/stowed", removed, "items[1].stowed: is missing"},
               {"/items/1/how", removed, "items[1].how: is missing"},
               {"/items/1/solids/0/tolerance", removed, "items[1].solids[0].tolerance: is missing"},
               {"/items/1/solids/0/tolerance/height", removed, "items[1].solids[0].tolerance.height: is missing"},
               {"/items/1/cavities/0/tolerance", removed, "items[1].cavities[0].tolerance: is missing"},
               {"/items/1/contents_fill", removed, "items[1].contents_fill: is missing"},
               {"/items/1/solids", removed, "items[1].solids: is missing"},
               {"/items/1/solids/0/cylinder", removed, "items[1].solids[0]: must have either"},
               {"/items/1/solids/0/cylinder/height", removed, "items[1].solids[0].cylinder.height: is missing"},
               {"/items/1/solids/0/center", removed, "items[1].solids[0].center: is missing"},
               {"/items/1/solids/0/quaternion", removed, "items[1].solids[0].quaternion: is missing"},
               {"/items/1/solids/0/rotation", removed, "items[1].solids[0].rotation: is missing"},
               {"/items/1/cavities", removed, "items[1].cavities: is missing"},
               {"/items/1/cavities/0/opens", removed, "items[1].cavities[0].opens: is missing"},
               {"/items/1/cavities/0/center", removed, "items[1].cavities[0].center: is missing"},
           });
}

TEST_CASE("fields of the wrong kind are named")
{
    refuse(sample(),
           {
               {"/format", "another", "format: must be \"tuckwright-bundle\""},
               {"/format", 7, "format: must be text, but is a number"},
               {"/version", 2, "version: this program reads version 1, not 2"},
               {"/version", "1", "version: must be a whole number, but is text"},
               {"/version", 1.5, "version: must be a whole number from"},
               {"/kit", nullptr, "kit: must be text, but is null"},
               {"/seed", -1, "seed: must be a whole number"},
               {"/seed", 1e30, "seed: must be a whole number"},
               {"/status", "fine", "status: must be proved-best, found"},
               {"/status", "FOUND", "status: must be"},
               {"/clearance_mm", "0.5", "clearance_mm: must be a number, but is text"},
               {"/limits", json::array(), "limits: must be an object, but is a list"},
               {"/limits/shape", "ball", "limits.shape: must be cylinder or box"},
               {"/limits/diameter_mm", "wide", "limits.diameter_mm: must be a number"},
               {"/rules", nullptr, "rules: must be a list, but is null"},
               {"/rules", json::object(), "rules: must be a list, but is an object"},
               {"/waived", nullptr, "waived: must be a list, but is null"},
               {"/waived", json::array({7}), "waived[0]: must be text, but is a number"},
               {"/items/1/nothing_on_top", nullptr, "items[1].nothing_on_top: must be true or false, but is null"},
               {"/items/1/bears_g", "much", "items[1].bears_g: must be a number, but is text"},
               {"/items/1/kinds", json::array({"fuel", "steam"}), "items[1].kinds[1]: is no kind that this program knows"},
               {"/items/1/reach", "soon", "items[1].reach: must be first, early, any or last"},
               {"/items/1/out_after", "two", "items[1].out_after: must be a whole number, but is text"},
               {"/rules/0", "apart", "rules[0]: must be an object, but is text"},
               {"/rules/0/keep", "near", "rules[0].keep: must be apart, within, out, together or shut"},
               {"/rules/0/keep", "Apart", "rules[0].keep: must be apart, within, out, together or shut"},
               {"/rules/0/keep", 0, "rules[0].keep: must be text, but is a number"},
               {"/rules/0/first", nullptr, "rules[0].first: must be text, but is null"},
               {"/rules/0/second", json::array({"pot"}), "rules[0].second: must be text, but is a list"},
               {"/rules/0/why", false, "rules[0].why: must be text, but is true or false"},
               {"/bundle", nullptr, "bundle: must be an object, but is null"},
               {"/bundle/shape", "ball", "bundle.shape: must be cylinder or box"},
               {"/bundle/shape", "box", "bundle.length_mm: is missing"},
               {"/bundle/height_mm", 1e200, "bundle.height_mm: is 1e+200; it must lie between"},
               {"/lower_bound_ml", true, "lower_bound_ml: must be a number, but is true or false"},
               {"/items", json::object(), "items: must be a list, but is an object"},
               {"/items", json::array(), "items: has 0 entries; it must have 1 to 500"},
               {"/items/1", 7, "items[1]: must be an object, but is a number"},
               {"/items/1/copy", 0, "items[1].copy: is 0; it must lie between 1 and"},
               {"/items/1/copy", 99999999999, "items[1].copy: is 99999999999"},
               {"/items/1/in", "pot", "items[1].in: must be an object, but is text"},
               {"/items/1/in/cavity", -1, "items[1].in.cavity: is -1"},
               {"/items/1/closes", 0, "items[1].closes: must be an object"},
               {"/items/1/upright", "yes", "items[1].upright: must be true or false, but is text"},
               {"/items/1/soft", "very", "items[1].soft: must be true or false"},
               {"/items/1/stowed", 3, "items[1].stowed: must be text"},
               {"/items/1/how", nullptr, "items[1].how: must be text"},
               {"/items/1/solids/0/cylinder/foot", "narrow", "items[1].solids[0].cylinder.foot: must be a number"},
               {"/items/1/solids/0/tolerance/height", -0.5,
                "items[1].solids[0].tolerance.height: must not be below zero"},
               {"/worst_case", 1, "worst_case: must be true or false"},
               {"/fits/0/vessel", 3, "fits[0].vessel: is no item's number"},
               {"/fits/0/items/0", 3, "fits[0].items[0]: is no item's number"},
               {"/fits/0/way", "upwards", "fits[0].way: must be all round, across, along, pressed or opening"},
               {"/fits/0/room_mm", "wide", "fits[0].room_mm: must be a number"},
               {"/plays/1/x", 3, "plays[1].x: must be a list"},
               {"/items/1/contents_fill", 1, "items[1].contents_fill: must be true or false, but is a number"},
               {"/items/1/weight_g", json::array({1}), "items[1].weight_g: must be a number, but is a list"},
               {"/items/1/weight_g", 1e100, "items[1].weight_g: is 1e+100"},
               {"/items/1/solids", json::array(), "items[1].solids: has 0 entries"},
               {"/items/1/solids/0", json::array(), "items[1].solids[0]: must be an object"},
               {"/items/1/solids/0/box", json::object(), "items[1].solids[0]: must have either"},
               {"/items/1/solids/0/cylinder", 4, "items[1].solids[0].cylinder: must be an object"},
               {"/items/1/solids/0/center", json::array({1, 2}), "items[1].solids[0].center: has 2 entries"},
               {"/items/1/solids/0/center/2", "x", "items[1].solids[0].center[2]: must be a number"},
               {"/items/1/solids/0/quaternion/3", 0.5, "items[1].solids[0].quaternion[3]: must be a whole number"},
               {"/items/1/solids/0/quaternion/3", 9223372036854775808U, "items[1].solids[0].quaternion[3]: is 922"},
               {"/items/1/solids/0/quaternion", json::array({0, 0, 0, 0}),
                "items[1].solids[0].quaternion: must not be all zero"},
               {"/items/1/solids/0/rotation", json::array({1, 0, 0}), "items[1].solids[0].rotation[0]: must be a list"},
               {"/items/1/cavities/0/opens", "down", "items[1].cavities[0].opens: must be top, both or closed"},
               {"/steps", "none", "steps: must be a list"},
               {"/steps/2", nullptr, "steps[2]: must be an object"},
               {"/steps/2/direction/0", 1e25, "steps[2].direction[0]: must be a whole number"},
               {"/certificate/planes/0", 3, "certificate.planes[0]: must be an object"},
               {"/certificate/planes/0/first", json::array({0}), "certificate.planes[0].first: has 1 entries"},
               {"/certificate/planes/0/first/0", -1, "certificate.planes[0].first[0]: is -1"},
               {"/certificate/rests/0", json::array(), "certificate.rests[0]: must be an object"},
               {"/certificate/rests/0/on", "pot", "certificate.rests[0].on: must be a whole number"},
           });
}

TEST_CASE("references to items that are not there, and items twice, are refused")
{
    refuse(sample(), {
                         {"/items/1/in/id", "pan", "items[1].in: names \"pan\", copy 1, which is not among the items"},
                         {"/items/1/in/copy", 2, "items[1].in: names \"pot\", copy 2"},
                         {"/items/2/closes/id", "pan", "items[2].closes: names \"pan\", copy 1"},
                         {"/steps/1/item", "pan", "steps[1]: names \"pan\", copy 1"},
                         {"/items/1/id", "pot", "items[1]: \"pot\", copy 1, is there twice"},
                     });
}

TEST_CASE("printed figures that do not follow from the rest are refused")
{
    const auto turned = handmade::yawed_boxes();
    refuse(sample(), {
                         {"/bundle/volume_ml", 1293.0, "bundle.volume_ml: is 1293, but 1293."},
                         {"/bundle/height_mm", 98, "bundle.volume_ml: is"},
                         {"/gap", 0.9, "gap: is 0.9, but 1 follows from the rest"},
                         {"/gap", nullptr, "gap: must be a number, but is null"},
                         {"/lower_bound_ml", 0, "gap: must be null where there is no bundle or no lower bound"},
                         {"/weight_g/total", 181, "weight_g.total: is 181, but 180 follows"},
                         {"/weight_g/empty", 149.9, "weight_g.empty: is 149.9, but 150"},
                         {"/weight_g/contents", 0, "weight_g.contents: is 0, but 30"},
                         {"/items/2/weight_g", 51, "weight_g.total: is 180, but 181"},
                         {"/items/1/solids/0/rotation/0/0", 0.999999, "items[1].solids[0].rotation[0][0]: is 0.999999"},
                         {"/items/1/cavities/0/rotation/2/2", -1, "items[1].cavities[0].rotation[2][2]: is -1, but 1"},
                         {"/steps/0/into", "bundle", "steps[0].into: must be \"pot\""},
                         {"/steps/2/into", "box", "steps[2].into: must be \"bundle\""},
                     });
    refuse(turned, {{"/items/0/solids/0/quaternion/0", 3, "items[0].solids[0].rotation[0][0]: is 0.6"}});
}

TEST_CASE("figures rounded in the last places are accepted")
{
    json object = json::parse(to_json(sample()));
    object["bundle"]["volume_ml"] = object["bundle"]["volume_ml"].get<double>() * (1 + 1e-11);
    object["weight_g"]["total"] = 180.00000000001;
    object["gap"] = 1 + 1e-12;
    CHECK(problems_in(object.dump()).empty());
}

TEST_CASE("a file without a bundle may hold none")
{
    auto nothing = sample();
    nothing.status = Status::not_found;
    refuse(nothing, {
                        {"/bundle", json::object(), "bundle: must be null"},
                        {"/gap", 0.5, "gap: must be null"},
                        {"/weight_g", json::object(), "weight_g: must be null"},
                        {"/items", json::array({1}), "items: must be empty"},
                        {"/steps", json::array({1}), "steps: must be empty"},
                        {"/status", "found", "bundle: must be an object"},
                    });
}

TEST_CASE("all problems are told at once, up to a limit")
{
    json object = json::parse(to_json(sample()));
    object["kit"] = 3;
    object["items"][0]["solids"][0]["center"] = "here";
    object["steps"][2].erase("text");
    const auto result = from_json(object.dump(), "bundle.json");
    REQUIRE_FALSE(result.ok());
    CHECK(result.problems().size() == 3);
    object["items"] = json::array();
    for (int i = 0; i < 500; ++i) {
        object["items"].push_back(i);
    }
    const auto many = from_json(object.dump(), "bundle.json");
    REQUIRE_FALSE(many.ok());
    CHECK(many.problems().size() == 50);
}

TEST_CASE("text that is not JSON is refused with its place")
{
    CHECK(problems_in("").find("bundle.json:1:1: not JSON") == 0);
    CHECK(problems_in("{\n  \"kit\": ,\n}").find("bundle.json:2:10: not JSON") == 0);
    CHECK(problems_in("[1, 2]").find("bundle.json: must be an object, but is a list") == 0);
    CHECK(problems_in("\xFF\xFE{}").find("not JSON") != std::string::npos);
    CHECK(problems_in("{\"kit\": NaN}").find("not JSON") != std::string::npos);
    CHECK(problems_in("{\"clearance_mm\": 1e999}").find("not JSON") != std::string::npos);
    const auto text = to_json(sample());
    CHECK(problems_in(text + "{}").find("not JSON") != std::string::npos);
    for (std::size_t size = 0; size + 2 < text.size(); size += 7) { // cut off anywhere
        CHECK(problems_in(text.substr(0, size)).find("not JSON") != std::string::npos);
    }
}

TEST_CASE("hostile files are refused in a blink")
{
    CHECK(problems_in(std::string(1'000'000, '[')).find("nested deeper than 32 levels") != std::string::npos);
    CHECK(problems_in("{\"kit\": 1, \"kit\": 2}").find("\"kit\" is there twice in one object") != std::string::npos);
    CHECK(problems_in(std::string(std::size_t{64} * 1024 * 1024 + 1, ' ')).find("larger than 64 MiB") !=
          std::string::npos);
    json object = json::parse(to_json(sample()));
    object["items"] = json(std::vector<int>(501, 0));
    CHECK(problems_in(object.dump()).find("items: has 501 entries; it must have 1 to 500") != std::string::npos);
}

TEST_CASE("a changed byte anywhere is refused or read, but never crashes")
{
    const auto text = to_json(handmade::yawed_boxes());
    std::size_t refused = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        for (const char c : {'0', '-', '"', '}', 'e', '\0'}) {
            auto spoilt = text;
            spoilt[i] = c;
            const auto result = from_json(spoilt, "bundle.json");
            refused += result.ok() ? 0 : 1;
            if (result.ok()) { // then it is a bundle that can be written again
                CHECK_FALSE(to_json(*result).empty());
            }
        }
    }
    CHECK(refused > text.size());
}

TEST_CASE("faults of bands are named")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.bands = {{"strap", "", 8, 460, "pot-lid"}, {"cord", "", 8, 410}};
    refuse(bundle, {
                       {"/bands/0/over", 3, "bands[0].over: "},
                       {"/bands/0/over", "", "bands[0].over: must name the lid"},
                       {"/bands/0/girth_mm", removed, "bands[0].girth_mm: is missing"},
                       {"/bands/1/id", json::array(), "bands[1].id: "},
                   });
    const json sound = json::parse(to_json(bundle));
    CHECK(sound["bands"][0]["over"] == "pot-lid");
    CHECK(sound["bands"][0]["text"] == "Put strap over pot-lid and under pot.");
    CHECK_FALSE(sound["bands"][1].contains("over"));
    CHECK(sound["bands"][1]["text"] == "Put cord level round it all.");
}

TEST_CASE("faults of narrow openings and of ways aside are named")
{
    refuse(handmade::tins_under_a_shoulder(),
           {
               {"/items/0/cavities/0/neck", removed, "items[0].cavities[0].neck: is missing"},
               {"/items/0/cavities/0/neck", "wide", "items[0].cavities[0].neck: "},
               {"/items/0/cavities/0/neck", json::object(), "items[0].cavities[0].neck: must have either"},
               {"/items/0/cavities/0/neck/cylinder/diameter", removed,
                "items[0].cavities[0].neck.cylinder.diameter: is missing"},
               {"/items/0/cavities/0/neck/cylinder/height", "3", "items[0].cavities[0].neck.cylinder.height: "},
               {"/steps/0/via", "aside", "steps[0].via: "},
               {"/steps/0/via", json::array({1, 2}), "steps[0].via: "},
               {"/steps/0/via/1", "left", "steps[0].via[1]: "},
           });
}

TEST_CASE("faults of what is pressed into a vessel are named")
{
    auto bundle = handmade::ring_pressed_into_a_pot();
    bundle.plays.assign(4, {});
    refuse(bundle, {{"/items/1/pressed_from_mm", "wide", "items[1].pressed_from_mm: must be a number"},
                    {"/items/1/pressed_from_mm", nullptr, "items[1].pressed_from_mm: must be a number"},
                    {"/items/1/pressed_from_mm", 1e300, "items[1].pressed_from_mm: "}});
}
