// SPDX-License-Identifier: GPL-3.0-or-later
/// Chains from wall to wall, by figures that can be worked out on paper, and the check of chains by spoilt ones.
#include "tuckwright/chains.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include "support/handmade_bundles.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

struct Expected {
    StretchPart part;
    std::string item; ///< its id; empty for none
    double mm;
};

void check_chain(const Bundle& bundle, const Chain& chain, const std::vector<Expected>& expected)
{
    INFO(to_string(chain.dimension));
    double sum = 0;
    std::vector<Stretch> told; // without the hairs that things keep at curved contacts
    for (const Stretch& stretch : chain.stretches) {
        sum += stretch.mm;
        if (stretch.item || std::abs(stretch.mm) > 5e-3) {
            told.push_back(stretch);
        }
    }
    CHECK(std::abs(sum - chain.mm) < 1e-9);
    REQUIRE(told.size() == expected.size());
    for (std::size_t k = 0; k < told.size(); ++k) {
        INFO(k);
        CHECK(told[k].part == expected[k].part);
        CHECK((told[k].item ? bundle.items[*told[k].item].id : "") == expected[k].item);
        CHECK(told[k].mm == Approx(expected[k].mm).margin(5e-3));
    }
    const auto faults = chain_faults(bundle, chain);
    INFO((faults.empty() ? "" : faults.front()));
    CHECK(faults.empty());
}

Bundle tower()
{
    auto pot = hollow(item("pot", cylinder(100, 80, {0, 0, 40})), cylinder(98, 79, {0, 0, 40.5}), Opening::top);
    auto cup = in(hollow(item("cup", cylinder(60, 70, {0, 0, 36})), cylinder(58, 68, {0, 0, 37}), Opening::top), 0);
    auto rod = in(item("rod", cylinder(10, 90, {0, 0, 48})), 1);
    return bundle("Tower", Cylinder{100, 93}, {pot, cup, rod});
}

Bundle three_discs()
{
    const double r = 20, off = 2 * r / std::sqrt(3.0), far = off + r;
    std::vector<PlacedItem> discs;
    for (int k = 0; k < 3; ++k) {
        const double angle = 2 * std::acos(-1.0) * k / 3;
        discs.push_back(item(std::string(1, static_cast<char>('a' + k)),
                             cylinder(2 * r, 10, {off * std::cos(angle), off * std::sin(angle), 5})));
    }
    return bundle("Discs", Cylinder{2 * far, 10}, discs);
}

} // namespace

TEST_CASE("a chain goes through the bottoms of vessels, up to what stands in them")
{
    const Bundle made = tower();
    const auto all = chains(made);
    REQUIRE(all.size() == 2);
    check_chain(made, all[0], {{StretchPart::whole, "pot", 100}});
    check_chain(made, all[1],
                {{StretchPart::base, "pot", 1}, {StretchPart::base, "cup", 2}, {StretchPart::whole, "rod", 90}});
    CHECK(all[0].straight);
    CHECK(all[1].straight);
    CHECK(all[0].others.empty()); // what lies in the pot bears nothing
    CHECK(in_chains(all) == std::vector<std::size_t>{0, 1, 2});
}

TEST_CASE("a vessel and its shut lid are told apart where that lies square to the chain")
{
    const Bundle made = cup_in_lidded_pot();
    const auto all = chains(made);
    check_chain(made, all[0], {{StretchPart::whole, "pot-lid", 129}});
    check_chain(made, all[1], {{StretchPart::whole, "pot", 96}, {StretchPart::lid, "pot-lid", 3}});
}

TEST_CASE("boxes in a box: a chain for each side, and what else reaches as far")
{
    const Bundle made = touching_boxes(); // two by two by two, 30 x 20 x 10 each
    const auto all = chains(made);
    REQUIRE(all.size() == 3);
    const std::vector<double> sizes{30, 20, 10};
    for (std::size_t k = 0; k < 3; ++k) {
        check_chain(made, all[k],
                    {{StretchPart::whole, "biscuits", sizes[k]}, {StretchPart::whole, "biscuits", sizes[k]}});
        CHECK(all[k].straight);
        REQUIRE(all[k].rivals.size() == 2);
        CHECK(all[k].others.size() == 6); // every one is in one of the four rows
    }
}

TEST_CASE("three equal discs in a circle: the chain is aslant and ends with the bulge of the wall")
{
    const Bundle made = three_discs();
    const auto all = chains(made);
    // From the first disc's far point to the touching point with the next, 30 degrees aslant, and on to that one's own wall
    // contact, which is 60 degrees off the chain. Plain geometry.
    const double r = 20, radius = r * (1 + 2 / std::sqrt(3.0));
    const double first = r + r * std::cos(std::acos(-1.0) / 6), end = radius * (1 + std::cos(std::acos(-1.0) / 3));
    REQUIRE_FALSE(all[0].straight);
    REQUIRE(all[0].stretches.size() >= 3);
    CHECK(all[0].mm == Approx(2 * radius));
    std::vector<Stretch> told;
    for (const Stretch& stretch : all[0].stretches) {
        if (std::abs(stretch.mm) > 5e-3) {
            told.push_back(stretch);
        }
    }
    REQUIRE(told.size() == 3);
    CHECK(told[0].mm == Approx(first).margin(0.01));
    CHECK(told[1].mm == Approx(end - first).margin(0.01));
    CHECK(told[2].part == StretchPart::bulge);
    CHECK(told[2].mm == Approx(2 * radius - end).margin(0.01));
    CHECK(chain_faults(made, all[0]).empty());
    CHECK(in_chains({all[0]}).size() == 3); // the third disc props the two
}

TEST_CASE("slack is told as air, and a clearance too")
{
    Bundle made = tower();
    made.envelope = Cylinder{100, 95};
    check_chain(made, chains(made)[1],
                {{StretchPart::base, "pot", 1},
                 {StretchPart::base, "cup", 2},
                 {StretchPart::whole, "rod", 90},
                 {StretchPart::air, "", 2}});
    // A bar that sticks out of a box on one side of a cup: cup's wall, clearance, bar.
    auto tray = hollow(item("tray", box(60, 40, 20, {30, 20, 10})), box(56, 36, 18, {30, 20, 11}), Opening::top);
    auto bar = in(item("bar", box(55, 10, 30, {30, 20, 17})), 0);
    Bundle tight = bundle("Tray", Box{60, 40, 32}, {tray, bar});
    tight.clearance = 0.5;
    check_chain(tight, chains(tight)[2], {{StretchPart::base, "tray", 2}, {StretchPart::whole, "bar", 30}});
    check_chain(tight, chains(tight)[0], {{StretchPart::whole, "tray", 60}});
}

TEST_CASE("the bag's wall is at both ends of a chain")
{
    Bundle made = tower();
    made.bag = Bag{"sack", "Sack", 40, 400, 200, 3};
    const auto all = chains(made);
    CHECK(all[1].mm == Approx(99));
    check_chain(made, all[1],
                {{StretchPart::bag, "", 3},
                 {StretchPart::base, "pot", 1},
                 {StretchPart::base, "cup", 2},
                 {StretchPart::whole, "rod", 90},
                 {StretchPart::bag, "", 3}});
}

TEST_CASE("what meets at an edge only does not touch")
{
    // Two blocks, one above the other's corner and beside it; a third reaches from the floor to the top.
    const Bundle made = bundle("Corner", Box{60, 20, 20},
                               {item("low", box(20, 20, 10, {10, 10, 5})), item("high", box(20, 20, 10, {30, 10, 15})),
                                item("tall", box(20, 20, 20, {50, 10, 10}))});
    check_chain(made, chains(made)[2], {{StretchPart::whole, "tall", 20}});
    CHECK(chains(made)[2].rivals.empty());
}

TEST_CASE("spoilt chains are refused")
{
    const Bundle made = tower();
    const Chain sound = chains(made)[1];
    REQUIRE(chain_faults(made, sound).empty());
    Chain spoilt = sound;
    SECTION("a millimetre too much") { spoilt.stretches[2].mm += 1; }
    SECTION("two nanometres too much") { spoilt.stretches[2].mm += 2e-6; }
    SECTION("another dimension") { spoilt.dimension = Dimension::diameter; }
    SECTION("told as larger than it is") { spoilt.mm += 1; }
    SECTION("a thing left out, the next one told as larger")
    {
        spoilt.stretches[2].mm += spoilt.stretches[1].mm;
        spoilt.stretches.erase(spoilt.stretches.begin() + 1);
    }
    SECTION("in another order") { std::swap(spoilt.stretches[0], spoilt.stretches[2]); }
    SECTION("the wrong thing") { spoilt.stretches[2].item = 1; }
    SECTION("no such thing") { spoilt.stretches[2].item = 3; }
    SECTION("no things, but air") { spoilt.stretches = {{StretchPart::air, std::nullopt, sound.mm}}; }
    SECTION("no direction") { spoilt.along = {0, 0, 2}; }
    CHECK_FALSE(chain_faults(made, spoilt).empty());
}

TEST_CASE("things that do not touch are no chain")
{
    const Bundle made = bundle("Apart", Box{100, 20, 10},
                               {item("a", box(40, 20, 10, {20, 10, 5})), item("b", box(40, 20, 10, {80, 10, 5})),
                                item("c", box(20, 20, 10, {50, 10, 5}))});
    Chain chain = chains(made)[0];
    REQUIRE(chain.stretches.size() == 3);
    chain.stretches[1].item = 0; // the first, told as if it went on
    CHECK_FALSE(chain_faults(made, chain).empty());
    Bundle gap = made;
    gap.items.pop_back();
    const auto told = chains(gap)[0];
    check_chain(gap, told, {{StretchPart::whole, "a", 40}, {StretchPart::air, "", 20}, {StretchPart::whole, "b", 40}});
    Chain silent = told;
    silent.stretches[0].mm += 20;
    silent.stretches.erase(silent.stretches.begin() + 1);
    CHECK_FALSE(chain_faults(gap, silent).empty());
}
