// SPDX-License-Identifier: GPL-3.0-or-later
/// The way round a bundle: against known lengths, and against bags and bands that are too small.
#include <cmath>
#include <limits>
#include <numbers>

#include "faults.hpp"
#include "proof/rules.hpp"
#include "support/handmade_bundles.hpp"
#include "tuckwright/kit_reader.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

/// The proof's bound for solids, mm.
double bound(const std::vector<Solid>& solids)
{
    std::vector<proof::Piece> pieces;
    for (const Solid& solid : solids) {
        pieces.push_back(proof::piece_of(solid.shape, solid.pose));
    }
    return proof::approximate(proof::girth_above(pieces)) / 1e6;
}

/// Never below, and at most a share of 1e-4 above.
void check_bound(const std::vector<Solid>& solids, double truth)
{
    CHECK(bound(solids) >= truth * (1 - 1e-12));
    CHECK(bound(solids) <= truth * (1 + 1e-4));
}

} // namespace

TEST_CASE("the way round equal discs, boxes and what lies or leans is bounded from above, and closely")
{
    const double pi = std::numbers::pi, d = 50;
    check_bound({cylinder(d, 60, {0, 0, 30})}, pi * d);
    check_bound({cylinder(d, 60, {1000, -700, 30})}, pi * d); // wherever it lies
    // Open belts round equal pulleys, L = 2 C + pi d, and the same round three: known, see round_two_tins.
    check_bound({cylinder(d, 60, {-25, 0, 30}), cylinder(d, 60, {25, 0, 30})}, 2 * d + pi * d);
    check_bound({cylinder(d, 60, {30, 40, 30}), cylinder(d, 60, {60, 80, 90})}, 2 * d + pi * d);
    check_bound({cylinder(d, 60, {0, 0, 30}), cylinder(d, 60, {d, 0, 30}),
                 cylinder(d, 60, {25, snap(25 * std::sqrt(3)), 30})},
                3 * d + pi * d);
    check_bound({cylinder(d, 60, {0, 0, 30}), cylinder(20, 9, {5, 7, 64.5})}, pi * d); // what is over it adds nothing
    // Rectangles: their sides, however turned.
    for (const Quaternion turn : {Quaternion{1, 0, 0, 0}, Quaternion{1, 0, 0, 1}, Quaternion{5, 0, 0, 2}}) {
        check_bound({box(80, 30, 10, {3, 4, 5}, turn)}, 220);
    }
    check_bound({cylinder(30, 80, {0, 0, 15}, up_to_x)}, 220); // a lying cylinder is one, seen from above
    check_bound({box(40, 40, 40, {0, 0, 40}, {1, 0, 0, 0}), cylinder(40, 40, {60, 0, 20})}, 40 + 2 * (20 + 60) + pi * 20);
    // A box tipped by the angle of 3, 4, 5 about y: 80 long and 10 high it reaches 80 * 4/5 + 10 * 3/5.
    check_bound({box(80, 30, 10, {0, 0, 40}, {3, 0, 1, 0})}, 2 * (80 * 0.8 + 10 * 0.6 + 30));
}

TEST_CASE("the bound grows with what is put beside, never past what is told")
{
    double before = 0;
    for (int tins = 1; tins <= 5; ++tins) {
        std::vector<Solid> row;
        for (int k = 0; k < tins; ++k) {
            row.push_back(cylinder(40, 20, {40.0 * k, 0, 10}));
        }
        check_bound(row, 80.0 * (tins - 1) + std::numbers::pi * 40);
        CHECK(bound(row) > before);
        before = bound(row);
    }
}

TEST_CASE("bags and bands that are too small are refused, and those that are not are accepted")
{
    REQUIRE(first_rule(tins_in_a_bag()) == "none");
    for (const double spare : {0.1, 0.01, 0.006}) {
        auto bundle = tins_in_a_bag();
        bundle.bag->girth = bundle.bands[0].girth = snap(round_two_tins + spare);
        CHECK(first_rule(bundle) == "none");
    }
    refuse({{"a bag too tight by a tenth", tins_in_a_bag,
             [](Bundle& b) { b.bag->girth = snap(round_two_tins - 0.1); }, "girth", "\"sack\" is 256.979633 mm round"},
            {"too tight by a hundredth", tins_in_a_bag, [](Bundle& b) { b.bag->girth = snap(round_two_tins - 0.01); },
             "girth", "what it goes round may be up to 257.08"},
            {"in doubt", tins_in_a_bag, [](Bundle& b) { b.bag->girth = snap_up(round_two_tins); }, "girth", "sack"},
            {"a band too tight", tins_in_a_bag, [](Bundle& b) { b.bands[0].girth = 257; }, "girth", "\"strap\" is 257"},
            {"the second band too tight", tins_in_a_bag, [](Bundle& b) { b.bands.push_back({"cord", "", 1, 200}); },
             "girth", "\"cord\" is 200"},
            {"a band without a bag", tins_in_a_bag,
             [](Bundle& b) {
                 b.bag.reset();
                 b.bands[0].girth = 257;
             },
             "girth", "strap"},
            {"a bag that does not close", tins_in_a_bag, [](Bundle& b) { b.bag->length -= nanometre; }, "girth",
             "closes over a bundle up to 59.999999 mm high, and this one is 60 mm"},
            {"a tin moved out", tins_in_a_bag,
             [](Bundle& b) {
                 center(b, 1).x += 0.01;
                 b.envelope = Cylinder{100.02, 60};
             },
             "girth", "sack"}});
}

TEST_CASE("the limits hold the bag too, and its numbers are sound")
{
    refuse({{"a thicker bag", tins_in_a_bag, [](Bundle& b) { b.bag->thickness += nanometre; }, "limit",
             "the bundle's diameter is 104.00000"},
            {"a lower limit", tins_in_a_bag, [](Bundle& b) { b.rule.height = 63; }, "limit", "height is 64 mm"},
            {"proved best of what is in it", tins_in_a_bag,
             [](Bundle& b) {
                 b.status = Status::proved_best;
                 b.lower_bound_ml = volume_ml(b.envelope);
             },
             "limit", "below the bundle's own"},
            {"no thickness", tins_in_a_bag, [](Bundle& b) { b.bag->thickness = 0; }, "number", "the bag's thickness"},
            {"a girth of nothing", tins_in_a_bag, [](Bundle& b) { b.bag->girth = -260; }, "number", "the bag's girth"},
            {"no finite girth", tins_in_a_bag,
             [](Bundle& b) { b.bag->girth = std::numeric_limits<double>::infinity(); }, "number", "not a finite number"},
            {"a length off the grid", tins_in_a_bag, [](Bundle& b) { b.bag->length += 1e-7; }, "number",
             "not a whole number of nanometres"},
            {"a band's girth that is no number", tins_in_a_bag, [](Bundle& b) { b.bands[0].girth = std::nan(""); },
             "number", "\"strap\": its girth"},
            {"a weight below nothing", tins_in_a_bag, [](Bundle& b) { b.bag->weight_g = -1; }, "number", "the bag's weight"},
            {"a band's weight", tins_in_a_bag, [](Bundle& b) { b.bands[0].weight_g = -1; }, "number", "its weight"}});
    auto box = touching_boxes();
    box.bag = Bag{"bag", "bag", 9, 201, 20, 1.5};
    box.rule.length = 63;
    box.rule.width = 43;
    box.rule.height = 23;
    CHECK(first_rule(box) == "none");
    box.rule.width = 42.999999;
    CHECK(said(box, "limit") == "the bundle's width is 43 mm, above the limit of 42.999999 mm");
    box.bag->girth = 199;
    CHECK(first_rule(box) == "girth");
}

namespace {

/// A pot with its lid, 129 wide and 99 high, and a band over it that just goes round: 2 (128 + 1 + 99).
Bundle banded_pot()
{
    auto bundle = cup_in_lidded_pot();
    bundle.bands = {Band{"strap", "strap", 8, 456, "pot-lid"}};
    return bundle;
}

/// One that stands upside down, on its lid.
Bundle banded_pot_turned_over()
{
    auto bundle = lidded_pot_upside_down();
    bundle.bands = {Band{"strap", "strap", 8, 2 * (102 + 85), "pot-lid"}};
    return bundle;
}

} // namespace

TEST_CASE("a band over a lid goes over it shut, and under its vessel")
{
    REQUIRE(first_rule(banded_pot()) == "none");
    REQUIRE(first_rule(banded_pot_turned_over()) == "none");
    refuse({{"too short by a nanometre", banded_pot, [](Bundle& b) { b.bands[0].girth -= nanometre; }, "girth",
             "\"strap\" is 455.999999 mm round, and over \"pot-lid\" and under \"pot\" it is 456 mm"},
            {"over what is no lid", banded_pot, [](Bundle& b) { b.bands[0].over = "cup"; }, "girth",
             "holds \"cup\" shut, but that is carried loose"},
            {"a lid carried loose", pot_over_cup,
             [](Bundle& b) {
                 b.bands = {Band{"strap", "strap", 8, 900, "pot-lid"}};
             },
             "girth", "holds \"pot-lid\" shut, but that is carried loose"},
            {"shut when the pot is in its place", banded_pot, [](Bundle& b) { std::swap(b.steps[1], b.steps[2]); },
             "girth", "cannot go under \"pot\", which is in its place before \"pot-lid\" is shut"},
            {"over two lids of one name", banded_pot,
             [](Bundle& b) {
                 auto spare = b.items[2];
                 spare.copy = 2;
                 spare.closes.reset();
                 spare.solids[0].pose.center.z += 3;
                 b.items.push_back(spare);
                 b.envelope = Cylinder{129, 102};
                 step(b, 3);
                 lies_on(b, 3, 2, {0, 0, 98.995});
             },
             "girth", "holds \"pot-lid\" shut, of which there are several"},
            {"over what is not there", banded_pot, [](Bundle& b) { b.bands[0].over = "pan-lid"; }, "girth",
             "holds \"pan-lid\" shut, which is not there"},
            {"a second band too short", banded_pot,
             [](Bundle& b) {
                 b.bands.push_back({"cord", "", 1, 300, "pot-lid"});
             },
             "girth", "\"cord\" is 300 mm round"},
            {"round everything instead", banded_pot,
             [](Bundle& b) {
                 b.bands[0].over.clear(); // pi 129 is 405.3
                 b.bands[0].girth = 405;
             },
             "girth", "and what it goes round may be up to 405.2"},
            {"a pot with a handle on two sides", banded_pot,
             [](Bundle& b) {
                 b.items[0].solids.push_back(box(10, 10, 10, {69, 0, 50}));
                 b.items[0].solids.push_back(box(10, 10, 10, {0, 69, 50}));
                 b.envelope = Cylinder{160, 99};
             },
             "girth", "under \"pot\" it is 475 mm"},
            {"turned over and too short", banded_pot_turned_over, [](Bundle& b) { b.bands[0].girth -= nanometre; },
             "girth", "it is 374 mm"}});
    auto elsewhere = banded_pot(); // far from the origin, and its first step the one that counts
    for (PlacedItem& item : elsewhere.items) {
        for (auto* poses : {&item.solids}) {
            for (Solid& solid : *poses) {
                solid.pose.center.x += 200;
                solid.pose.center.y += 200;
            }
        }
        for (PlacedCavity& cavity : item.cavities) {
            cavity.pose.center.x += 200;
            cavity.pose.center.y += 200;
        }
    }
    elsewhere.envelope = Box{300, 300, 99};
    elsewhere.rule = {};
    elsewhere.rule.shape = BundleShape::box;
    INFO(objections_of(elsewhere));
    CHECK(first_rule(elsewhere) == "none");
    elsewhere.bands[0].girth -= nanometre;
    CHECK(first_rule(elsewhere) == "girth");
    auto one_side = banded_pot(); // it goes round past the handle
    one_side.items[0].solids.push_back(box(10, 10, 10, {69, 0, 50}));
    one_side.envelope = Cylinder{160, 99};
    CHECK(first_rule(one_side) == "none");
    auto turned = one_side;
    for (PlacedItem& item : turned.items) {
        for (Solid& solid : item.solids) {
            solid.pose = {{solid.pose.center.y, -solid.pose.center.x, solid.pose.center.z},
                          compose({1, 0, 0, -1}, solid.pose.turn)};
        }
    }
    CHECK(first_rule(turned) == "none");
}

TEST_CASE("a bundle has the bag and the bands of its kit")
{
    const auto kit = read_kit_text("kit: Two tins\nbundle: {diameter: 104, height: 64}\nitems:\n"
                                   "  - {id: sack, weight: 40, bag: {girth: 258, length: 60, thickness: 2}}\n"
                                   "  - {id: tin, weight: 50, count: 2, cylinder: {diameter: 50, height: 60}}\n"
                                   "  - {id: strap, weight: 8, band: {girth: 300}}\n",
                                   "kit.yaml");
    REQUIRE(kit.ok());
    auto bundle = tins_in_a_bag();
    bundle.bag = kit->bag;
    REQUIRE(check(bundle).empty());
    CHECK(check_against(bundle, *kit).empty());
    const auto refused = [&](void (*spoil)(Bundle&)) {
        auto other = bundle;
        spoil(other);
        const auto objections = check_against(other, *kit);
        return !objections.empty() && objections.front().what.find("bag and the bands") != std::string::npos;
    };
    CHECK(refused([](Bundle& b) { b.bag.reset(); }));
    CHECK(refused([](Bundle& b) { b.bag->girth = 400; }));
    CHECK(refused([](Bundle& b) { b.bag->thickness = 1; }));
    CHECK(refused([](Bundle& b) { b.bag->length = 61; }));
    CHECK(refused([](Bundle& b) { b.bag->weight_g = 0; }));
    CHECK(refused([](Bundle& b) { b.bands.clear(); }));
    CHECK(refused([](Bundle& b) { b.bands[0].girth = 301; }));
    CHECK(refused([](Bundle& b) { b.bands.push_back(b.bands[0]); }));
    CHECK(refused([](Bundle& b) { b.bands[0].over = "tin"; }));
}
