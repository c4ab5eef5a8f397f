// SPDX-License-Identifier: GPL-3.0-or-later
/// Proved bundles are accepted as they are, and refused with any single fault.
#include <catch2/catch.hpp>
#include <map>

#include "properties/sample_bundles.hpp"
#include "properties/sampling_judge.hpp"
#include "properties/spoilers.hpp"
#include "support/workload.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/report.hpp"

using namespace tuckwright;
using namespace properties;
using tuckwright::test::Dice;

namespace {

bool refused(const std::string& json)
{
    const auto bundle = from_json(json, "spoiled.json");
    return !bundle || !check(*bundle).empty() || !wrong_words(*bundle, "spoiled.json").empty() ||
           !wrong_figures(*bundle, "spoiled.json").empty();
}

/// Whether the file is read, and refused for the rules of carrying and nothing before them.
bool refused_for_carrying(const std::string& json)
{
    const auto bundle = from_json(json, "spoiled.json");
    const auto objections = bundle ? check(*bundle) : std::vector<Objection>();
    return !objections.empty() && objections.front().rule == "carrying";
}

/// Tries each of the spoilers until it has made `each` wrong bundles, spread over the samples.
int try_all(const std::vector<Spoiler>& spoilers, int each, std::uint64_t seed,
            bool (*is_refused)(const std::string&) = refused)
{
    Dice dice(seed);
    int wrong = 0;
    for (const auto& spoiler : spoilers) {
        int made = 0;
        for (int draw = 0; made < each && draw < 2000 * each; ++draw) {
            const auto& sample = samples()[any(dice, samples().size())];
            const Spoiled json = spoiler.spoil(sample.bundle, dice);
            if (!json) {
                continue;
            }
            ++made;
            if (!is_refused(*json)) {
                FAIL_CHECK(spoiler.name << " was accepted in \"" << sample.name << "\" (draw " << draw << ")");
            }
        }
        INFO(spoiler.name);
        CHECK(made == each);
        wrong += made;
    }
    return wrong;
}

} // namespace

TEST_CASE("bundles without a fault are accepted, and written again as they were", "[samples]")
{
    for (const auto& sample : samples()) {
        INFO(sample.name);
        const std::string json = to_json(sample.bundle);
        const auto read = from_json(json, "sound.json");
        REQUIRE(read.ok());
        CHECK(check(*read).empty());
        CHECK(wrong_words(*read, "sound.json").empty());
        CHECK(has_words_of_today(*read));
        CHECK(wrong_figures(*read, "sound.json").empty());
        CHECK(to_json(*read) == json);
        CHECK_FALSE(refused(json));
    }
    CHECK(samples().size() >= 20);
}

TEST_CASE("the sampling judge sees what is plain, and nothing else", "[samples]")
{
    const auto a = sampling::body_of(Cylinder{40, 30}, {{0, 0, 15}, {}});
    CHECK(sampling::common_depth(a, sampling::body_of(Cylinder{40, 30}, {{39, 0, 15}, {}})) > 0.05L);
    CHECK(sampling::common_depth(a, sampling::body_of(Cylinder{40, 30}, {{40, 0, 15}, {}})) <= 0);
    CHECK(sampling::common_depth(a, sampling::body_of(Box{10, 10, 10}, {{0, 0, 15}, {1, 2, 3, 4}})) > 1);
    const auto room = sampling::body_of(Cylinder{60, 30}, {{0, 0, 15}, {}});
    CHECK(sampling::beyond(a, room).walls == Approx(-10));
    CHECK(sampling::beyond(a, room).top == Approx(0).margin(1e-12));
    const auto above = sampling::body_of(Box{10, 10, 10}, {{0, 0, 35}, {}});
    CHECK(sampling::depth_on_the_way(a, {0, 0, -1}, above) > 0.05L);
    CHECK(sampling::depth_on_the_way(above, {0, 0, -1}, a) <= 0);
    CHECK(sampling::apart_along(a, above, {0, 0, 1}) == Approx(0).margin(1e-12));
}

// More than two thousand in all in an ordinary build: eleven kinds by 100, seven by 100, four by 100, four by 100, five,
// seven, six and eighteen by 60.

TEST_CASE("bundles with an item in the wrong place are refused", "[samples]")
{
    CHECK(try_all(place_spoilers(), test::count(100, 8), 81) == 11 * test::count(100, 8));
}

TEST_CASE("bundles that can't be put together, or whose proof lacks something, are refused", "[samples]")
{
    CHECK(try_all(handling_spoilers(), test::count(100, 8), 82) == 7 * test::count(100, 8));
}

TEST_CASE("bundles that don't pass through their bag or bands are refused", "[samples]")
{
    CHECK(try_all(cover_spoilers(), test::count(60, 8), 87) == 7 * test::count(60, 8));
}

TEST_CASE("bundles with faults of narrow openings are refused", "[samples]")
{
    CHECK(try_all(narrow_spoilers(), test::count(60, 8), 85) == 5 * test::count(60, 8));
}

TEST_CASE("bundles with faults of what is pressed into a vessel are refused", "[samples]")
{
    CHECK(try_all(pressed_spoilers(), test::count(60, 8), 86) == 6 * test::count(60, 8));
}

TEST_CASE("bundles that don't keep their rules of carrying are refused", "[samples]")
{
    CHECK(try_all(carrying_spoilers(), test::count(100, 8), 84, refused_for_carrying) == 4 * test::count(100, 8));
}

TEST_CASE("bundles that bear more than they may, or miscount what comes out before a thing, are refused", "[samples]")
{
    CHECK(try_all(load_spoilers(), test::count(100, 8), 85) == 4 * test::count(100, 8));
}

TEST_CASE("files that say what does not follow are refused", "[samples]")
{
    CHECK(try_all(file_spoilers(), test::count(60, 8), 83) == 18 * test::count(60, 8));
}

TEST_CASE("a bundle whose sentences are put otherwise is accepted, and put as today")
{
    Dice dice(88);
    for (const auto& sample : samples()) {
        INFO(sample.name);
        Bundle reworded = sample.bundle;
        for (Step& step : reworded.steps) {
            step.text = "Now for this: " + step.text + " Take your time.";
        }
        reworded.items[any(dice, reworded.items.size())].form = "lying on its side";
        const std::string json = to_json(reworded);
        CHECK_FALSE(refused(json));
        const auto read = from_json(json, "reworded.json");
        REQUIRE(read.ok());
        CHECK_FALSE(has_words_of_today(*read));
        CHECK(to_json(with_words_anew(*read)) == to_json(sample.bundle));
    }
}
