// SPDX-License-Identifier: GPL-3.0-or-later
/// How many discs a round hole takes, both ways: as many as are proved to fit are found, and one more never is.
#include <catch2/catch.hpp>
#include <utility>
#include <vector>

#include "support/kit_text.hpp"
#include "tuckwright/units.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

struct Hole {
    int discs;
    double ratio; ///< least radius of a hole that takes so many discs of radius 1
};

// Proved values, read in the ring-packing reader test of the SCIP solver; the same as E. Specht, "The best known
// packings of equal circles in a circle".
constexpr Hole holes[] = {{2, 2.0},
                          {3, 2.1547005383792515},
                          {4, 2.4142135623730950},
                          {5, 2.7013016167040798},
                          {7, 3.0},
                          {8, 3.3047648709624865},
                          {9, 3.6131259297527530}};

constexpr double slack = 1.0001; ///< room for the micrometre that curved surfaces keep

/// Cylinders of some diameters, as high as the pot is inside and lower than wide, so that all must stand side by side.
using Discs = std::vector<std::pair<double, int>>;
constexpr double height = 8;

void add(KitText& kit, const Discs& discs)
{
    for (std::size_t k = 0; k < discs.size(); ++k) {
        kit.item("disc-" + std::to_string(k), cylinder(discs[k].first, height), discs[k].second);
    }
}

/// In a pot with a shut lid of its own, in a bundle with no room beside or upon the pot.
Bundle in_pot(double hole, const Discs& discs, Effort effort)
{
    KitText kit(round_bundle(hole + 2, height + 2));
    kit.item("pot", cylinder(hole + 2, height + 2) + ", inside: {" + cylinder(hole, height) + ", lid: own}");
    add(kit, discs);
    return solved(kit, effort);
}

/// In a round bundle as wide as the hole.
Bundle in_bundle(double hole, const Discs& discs, Effort effort)
{
    KitText kit(round_bundle(hole, height));
    add(kit, discs);
    return solved(kit, effort);
}

} // namespace

TEST_CASE("a round hole takes as many equal discs as are proved to fit")
{
    for (const auto& hole : holes) {
        INFO(hole.discs << " discs");
        const double width = snap_down(hole.ratio * 20 * slack);
        const Bundle pot = in_pot(width, {{20, hole.discs}}, Effort::quick);
        REQUIRE(has_bundle(pot.status));
        for (const auto& item : pot.items) {
            CHECK(item.in.has_value() == (item.id != "pot"));
        }
        CHECK(has_bundle(in_bundle(width, {{20, hole.discs}}, Effort::quick).status));
    }
}

TEST_CASE("a round hole never takes one disc more than is proved")
{
    // Nothing may come out however long the search is; that it is refused by proof is not asked for.
    for (const auto& hole : holes) {
        INFO(hole.discs + 1 << " discs");
        const double width = snap_down(hole.ratio * 20 * slack);
        CHECK_FALSE(has_bundle(in_pot(width, {{20, hole.discs + 1}}, Effort::quick).status));
        CHECK_FALSE(has_bundle(in_bundle(width, {{20, hole.discs + 1}}, Effort::quick).status));
    }
}

TEST_CASE("a round hole takes two discs of half its width, but not one of them larger")
{
    CHECK(has_bundle(in_pot(20 * slack, {{10, 2}}, Effort::normal).status));
    CHECK(has_bundle(in_bundle(20 * slack, {{10, 2}}, Effort::normal).status));
    CHECK_FALSE(has_bundle(in_pot(20 * slack, {{10, 1}, {12, 1}}, Effort::quick).status));
    CHECK_FALSE(has_bundle(in_bundle(20 * slack, {{10, 1}, {12, 1}}, Effort::quick).status));
}

TEST_CASE("a round hole takes three large discs and three small ones between them")
{
    const double width = snap_down(2 * 24.1421 * slack);
    CHECK(has_bundle(in_pot(width, {{20, 3}, {9, 3}}, Effort::normal).status));
    CHECK(has_bundle(in_bundle(width, {{20, 3}, {9, 3}}, Effort::normal).status));
    // A fourth large one fits alone (the hole is just wide enough for four), but not with the small ones as well.
    CHECK_FALSE(has_bundle(in_pot(width, {{20, 4}, {9, 3}}, Effort::quick).status));
}
