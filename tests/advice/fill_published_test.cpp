// SPDX-License-Identifier: GPL-3.0-or-later
/// How many equal tins a round pot takes, and whether the best set is that of packing every set.
#include <catch2/catch.hpp>
#include <optional>
#include <random>

#include "advice/best_set.hpp"
#include "advice/vessel_kit.hpp"
#include "support/kit_text.hpp"
#include "support/workload.hpp"
#include "tuckwright/fill.hpp"

using namespace tuckwright;
using namespace tuckwright::test;
using advice::Counts;

namespace {

// Least radius of the circle round n discs of radius 1. E. Specht, "The best known packings of equal circles in a circle",
// table of radii; E. G. Birgin and J. M. Gentil, Computers & Operations Research 37 (2010), Table 1. Proved for n <= 13;
// that of 14 is the best known.
constexpr double ratios[] = {0,
                             1,
                             2,
                             2.1547005383792515,
                             2.4142135623730950,
                             2.7013016167040798,
                             3.0,
                             3.0,
                             3.3047648709624865,
                             3.6131259297527530,
                             3.8130256313981243,
                             3.9238044001630872,
                             4.0296019301161834,
                             4.2360679774997897,
                             4.3284285548608370};

/// Tins 20 mm in radius in a pot just as deep as they are high, so that they stand side by side.
int tins_in(double radius, int tins)
{
    const double inside = 40 * radius + 1; // and 0.5 mm of clearance on each side
    const Kit kit = kit_of("kit: Tins\nitems:\n"
                           "- {id: pot, weight: 1, cylinder: {diameter: " + mm(inside + 2) + ", height: 32}, inside: {cylinder: {diameter: " +
                           mm(inside) + ", height: 30}, lid: own}}\n"
                           "- {id: tin, weight: 1, count: " + std::to_string(tins) + ", cylinder: {diameter: 40, height: 30}}\n");
    SolveOptions options;
    options.effort = Effort::quick;
    const Filling filling = fill(kit, "pot", options);
    REQUIRE(check(filling.bundle).empty());
    return filling.things;
}

} // namespace

TEST_CASE("a round pot takes the published number of equal tins")
{
    for (int n = 1; n <= count(13, 3); ++n) {
        const double tight = ratios[n] * 1.001, next = ratios[n + 1];
        if (next > tight) { // seven need no more room than six
            CAPTURE(n);
            CHECK(tins_in(tight, n + 1) == n); // of one more
        }
    }
    CHECK(tins_in((ratios[4] + ratios[5]) / 2, 7) == 4);
    CHECK(tins_in((ratios[2] + ratios[3]) / 2, 5) == 2);
}

namespace {

/// A round pot with its lid and a few cans, boxes and mugs, of which not all go in.
Kit random_things(std::mt19937& random, int most)
{
    const auto between = [&](int low, int high) { return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1)); };
    std::string text = "kit: Random\nitems:\n"
                       "- {id: pot, weight: 1, cylinder: {diameter: 102, height: 82}, inside: {wall: 1, base: 2}}\n"
                       "- {id: lid, weight: 1, cylinder: {diameter: 103, height: 8}, closes: {item: pot, adds: 3, intrudes: 5}}\n";
    const int things = between(3, most);
    for (int i = 0; i < things; ++i) {
        const std::string begin = "- {id: t" + std::to_string(i) + ", weight: 1, priority: " + std::to_string(between(1, 3));
        const int a = between(25, 75), b = between(20, 70), c = between(10, 60);
        switch (between(0, 3)) {
        case 0: text += begin + ", " + box(a, b, c) + "}\n"; break;
        case 1: text += begin + ", " + cylinder(a + 15, b) + ", inside: {wall: 1, base: 1}}\n"; break;
        default: text += begin + ", " + cylinder(b, a) + "}\n"; break;
        }
    }
    return kit_of(text);
}

advice::Worth worth_of(const Kit& kit, const Counts& set)
{
    advice::Worth sum;
    for (std::size_t i = 2; i < set.size(); ++i) {
        const advice::Worth one{kit.items[i].priority, 1, volume_ml(kit.items[i].outside) * 1000};
        sum = sum + set[i] * one;
    }
    return sum;
}

/// A set of more worth that goes in, by the means with which filling tries its last: none, if it has chosen the best.
std::optional<Counts> better_set(const Kit& kit, const advice::Worth& than)
{
    const std::size_t things = kit.items.size() - 2;
    for (unsigned bits = 1; bits < 1u << things; ++bits) {
        Counts set(kit.items.size(), 0);
        for (std::size_t i = 0; i < things; ++i) {
            set[i + 2] = static_cast<int>(bits >> i & 1);
        }
        if (worth_of(kit, set) > than) {
            for (const bool any_size : {true, false}) { // what the short search misses the whole one may find
                SolveOptions options;
                options.effort = Effort::quick;
                options.any_size = any_size;
                if (has_bundle(solve(advice::vessel_kit(kit, 0, set), options).status)) {
                    return set;
                }
            }
        }
    }
    return std::nullopt;
}

void compare_with_all(int cases, int most)
{
    std::mt19937 random(11);
    for (int k = 0; k < cases; ++k) {
        const Kit kit = random_things(random, most);
        SolveOptions options;
        const Filling filling = fill(kit, "pot", options);
        REQUIRE(check(filling.bundle).empty());
        Counts set(kit.items.size(), 0);
        for (const PlacedItem& item : filling.bundle.items) {
            ++set[advice::index_of(kit, item.id)];
        }
        CAPTURE(k, filling.things, filling.candidates, to_string(filling.choice));
        const auto better = better_set(kit, worth_of(kit, set));
        CAPTURE(set, better.value_or(Counts()));
        CHECK_FALSE(better);
    }
}

} // namespace

TEST_CASE("the chosen set is the best of all sets that can be packed")
{
    compare_with_all(count(6, 1), 4);
}

TEST_CASE("the chosen set is the best of all sets that can be packed, thirty kits of up to eight things", "[.long]")
{
    compare_with_all(30, 8);
}
