// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <string>

#include "solve/covers.hpp"
#include "support/kit_text.hpp"
#include "tuckwright/geometry.hpp"

using namespace tuckwright;

namespace {

/// Two tins of 50 x 60 mm, in a bag of that girth and length where one is given.
Bundle two_tins(const std::string& bag)
{
    std::string text = "kit: Two tins\nitems:\n  - {id: tin, count: 2, weight: 40, cylinder: {diameter: 50, height: 60}}\n";
    text += bag.empty() ? "" : "  - {id: sack, weight: 30, bag: {" + bag + ", thickness: 1}}\n";
    return test::solved(test::kit_of(text), Effort::quick);
}

Item item_of(const Shape& outside, bool upright = false)
{
    Item item;
    item.id = "thing";
    item.outside = outside;
    item.upright = upright;
    return item;
}

/// A kit of those fields of one thing, with what goes round it.
Kit covered(const std::string& thing, const std::string& covers, const std::string& bundle = "{}")
{
    return test::kit_of("kit: Covered\nbundle: " + bundle + "\nitems:\n  - {id: thing, weight: 1, " + thing + "}\n" +
                        covers);
}

} // namespace

TEST_CASE("the least way round a thing is that of its narrowest view", "[solve][covers]")
{
    const double pi = std::numbers::pi;
    CHECK(least_girth(item_of(Cylinder{50, 60})) == Approx(pi * 50));       // along its axis
    CHECK(least_girth(item_of(Cylinder{50, 20})) == Approx(2 * (50 + 20))); // from the side: less than 157
    CHECK(least_girth(item_of(Cylinder{50, 20}, true)) == Approx(pi * 50)); // but not where it stands
    CHECK(least_girth(item_of(Cylinder{50, 60, 40})) == Approx(pi * 40));   // a taper: its foot
    CHECK(least_girth(item_of(Box{80, 30, 10})) == Approx(2 * (30 + 10)));
    CHECK(least_girth(item_of(Box{10, 80, 30})) == Approx(2 * (30 + 10)));
    CHECK(least_girth(item_of(Box{80, 30, 10}, true)) == Approx(2 * (80 + 30)));
    Item lid = item_of(Cylinder{50, 20}); // shut, no more than its plate is sure
    lid.closes = Closure{0, 3, 5};
    CHECK(least_girth(lid) == Approx(2 * (50 + 3)));
}

TEST_CASE("no view of a thing is less far round than is claimed", "[solve][covers]")
{
    const Quaternion turns[] = {{1, 0, 0, 0}, {1, 1, 0, 0}, {1, 0, 1, 0}, {7, 3, 1, 0},
                                {5, 1, 2, 4}, {2, 1, 1, 9}, {9, 4, 4, 1}};
    for (const Shape& shape :
         {Shape{Cylinder{50, 60}}, Shape{Cylinder{50, 20}}, Shape{Box{80, 30, 10}}, Shape{Box{40, 40, 39}}}) {
        double least = 1e300;
        for (const Quaternion& turn : turns) {
            const double round = outline_girth({{shape, {{0, 0, 0}, turn}}});
            CHECK(round >= least_girth(item_of(shape)) * (1 - 1e-12));
            least = std::min(least, round);
        }
        CHECK(least <= least_girth(item_of(shape)) * (1 + 2e-6)); // one of these turns is the narrowest
    }
}

TEST_CASE("what passes through no bag or band is told with its least way round", "[solve][covers]")
{
    const std::string tin = "cylinder: {diameter: 50, height: 60}", strap = "  - {id: strap, weight: 8, band: {girth: ";
    // pi 50 is 157.08.
    CHECK(cover_misfit(covered(tin, strap + "157.09}}\n")) == std::nullopt);
    CHECK(cover_misfit(covered(tin, strap + "157}}\n")) ==
          "\"thing\" is at least 157.0 mm round, whichever way it may be turned, and \"strap\" is 157 mm");
    const std::string two = strap + "500}}\n  - {id: sack, weight: 8, bag: {girth: 100, length: 90, thickness: 2}}\n";
    CHECK(cover_misfit(covered(tin, two)).value_or("").find("\"sack\" is 100 mm") != std::string::npos);
    const std::string folds = ", forms: [{name: flat, box: {length: 90, width: 40, height: 5}}]";
    CHECK(cover_misfit(covered(tin + folds, strap + "90}}\n")) == std::nullopt); // 2 (40 + 5)
    CHECK(cover_misfit(covered(tin + folds, strap + "89}}\n")).has_value());
    CHECK(cover_misfit(covered("cloth: {volume: 900 ml, thickness: 8}", strap + "9}}\n")) ==
          std::nullopt); // not proved
    CHECK(cover_misfit(covered("pouch: {girth: 900, length: 300, thickness: 1}", strap + "9}}\n")) == std::nullopt);
    const std::string sack = "  - {id: sack, weight: 8, bag: {girth: 500, length: 90, thickness: 2}}\n";
    CHECK(cover_misfit(covered(tin, sack, "{height: 4}")).value_or("").find("a limit is 4 mm") != std::string::npos);
    CHECK(cover_misfit(covered(tin, sack, "{height: 4.1}")) == std::nullopt);
    CHECK(cover_misfit(covered(tin, "")) == std::nullopt);
}

TEST_CASE("a bag changes the best bundle, and one that is too tight is refused", "[solve][covers]")
{
    const Bundle tower = two_tins("");
    REQUIRE(has_bundle(tower.status));
    CHECK(height_of(tower.envelope) == Approx(120));

    // Round two equal discs that touch it is 2 d + pi d: 257.08 mm.
    const double round = 2 * 50 + std::numbers::pi * 50;
    Bundle beside = two_tins("girth: 258, length: 70");
    REQUIRE(has_bundle(beside.status));
    CHECK(height_of(beside.envelope) == Approx(60));
    CHECK(std::get<Cylinder>(beside.envelope).diameter == Approx(100).epsilon(1e-4));
    CHECK(std::get<Cylinder>(outer_envelope(beside)).diameter ==
          Approx(std::get<Cylinder>(beside.envelope).diameter + 2).epsilon(1e-6));
    REQUIRE(beside.bag.has_value());
    CHECK(check(beside).empty());
    beside.bag->girth = std::floor(round);
    const auto tight = check(beside);
    REQUIRE_FALSE(tight.empty());
    CHECK(tight.front().rule == "girth");
    beside.bag->girth = 258;
    beside.bag->length = 59.9;
    CHECK_FALSE(check(beside).empty());

    CHECK_FALSE(has_bundle(two_tins("girth: 250, length: 70").status));
}
