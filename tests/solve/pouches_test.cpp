// SPDX-License-Identifier: GPL-3.0-or-later
/// Small soft bags round a part of the bundle: the forms that they take, what they change, and what cannot go in.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "nesting/lower_bound.hpp"
#include "solve/pouches.hpp"
#include "support/kit_text.hpp"
#include "tuckwright/stowage.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

std::string pouch(double girth, double length)
{
    return "pouch: {girth: " + mm(girth) + ", length: " + mm(length) + ", thickness: 1}";
}

/// Two reels of 40 x 30 and an awl, loose or in a pouch, beside a can. Loose, the reels stand side by side in the can; a
/// pouch 200 mm round takes them only on one another, with the awl beside, higher than the can.
KitText mending(const std::string& in, double girth = 200, double length = 100)
{
    KitText kit(round_bundle(), 0.5);
    kit.item("can", cylinder(90, 70) + ", inside: {wall: 1, base: 1}").item("ditty", pouch(girth, length));
    return kit.item("reel", cylinder(40, 30) + in, 2).item("awl", box(74, 12, 12) + in);
}

const PlacedItem& item_of(const Bundle& bundle, const std::string& id)
{
    const auto found =
        std::find_if(bundle.items.begin(), bundle.items.end(), [&](const PlacedItem& item) { return item.id == id; });
    REQUIRE(found != bundle.items.end());
    return *found;
}

double round_plan(const Shape& shape)
{
    const auto* c = std::get_if<Cylinder>(&shape);
    return c != nullptr ? std::numbers::pi * c->diameter
                        : 2 * (std::get<Box>(shape).length + std::get<Box>(shape).width);
}

} // namespace

TEST_CASE("two discs side by side, or one on the other, take the girth and length that they need", "[solve][pouches]")
{
    // Side by side two discs of 50 need a round pouch 100 across or a box of 100 x 50, both 300 mm round and more.
    const auto packed = [](double girth, double length) {
        KitText kit(round_bundle());
        kit.item("ditty", pouch(girth, length)).item("tin", cylinder(50, 60) + ", upright: yes, goes-in: ditty", 2);
        return solved(kit, Effort::quick);
    };
    const Bundle flat = packed(301, 61);
    REQUIRE(has_bundle(flat.status));
    CHECK(height_of(flat.envelope) == Approx(62).epsilon(1e-3)); // tins, bottom and top
    const Bundle tower = packed(201, 121);                       // a square 50 wide is 200 mm round
    REQUIRE(has_bundle(tower.status));
    CHECK(height_of(tower.envelope) == Approx(122).epsilon(1e-3));
    const Bundle none = packed(298, 61);
    CHECK(none.status == Status::not_found);
    CHECK(none.explanation.starts_with("no bundle with all that must lie in the ditty within the limits was found"));
    CHECK_FALSE(has_bundle(packed(201, 119).status));
}

TEST_CASE("a pouch changes the best bundle, and holds what goes in it within its girth and length", "[solve][pouches]")
{
    const Bundle loose = solved(mending(""), Effort::quick);
    REQUIRE(has_bundle(loose.status));
    const KitText text = mending(", goes-in: ditty");
    const Bundle held = solved(text, Effort::quick);
    REQUIRE(has_bundle(held.status));
    for (const PlacedItem& item : held.items) {
        if (item.id == "reel" || item.id == "awl") {
            REQUIRE(item.in);
            CHECK(held.items[item.in->item].id == "ditty");
        }
    }
    const PlacedItem& ditty = item_of(held, "ditty");
    REQUIRE(ditty.cavities.size() == 1);
    CHECK(round_plan(ditty.cavities[0].shape) <= 200);
    CHECK(height_of(ditty.cavities[0].shape) <= 100);
    CHECK(volume_ml(ditty.solids[0].shape) < 0.75 * 200 * 200 / (4 * std::numbers::pi) * 102 / 1000); // not filled out
    CHECK(item_of(loose, "ditty").cavities.empty());                                                  // folded
    CHECK(volume_ml(loose.envelope) == Approx(volume_ml(Cylinder{90, 70})).epsilon(1e-4));
    CHECK(volume_ml(held.envelope) > 1.05 * volume_ml(loose.envelope));
    CHECK(check_against(held, kit_of(text.text())).empty());
    CHECK_FALSE(
        check_against(held, kit_of(mending(", goes-in: ditty", round_plan(ditty.cavities[0].shape) - 0.001).text()))
            .empty());
    CHECK_FALSE(
        check_against(held, kit_of(mending(", goes-in: ditty", 200, height_of(ditty.cavities[0].shape) - 0.001).text()))
            .empty());

    CHECK(ditty.stowed.starts_with("filled out "));
    CHECK(ditty.how == "draw it shut");
    CHECK(item_of(loose, "ditty").stowed.starts_with("empty, "));
    const auto says = [&](const std::string& words) {
        return std::any_of(held.steps.begin(), held.steps.end(),
                           [&](const Step& step) { return step.text.find(words) != std::string::npos; });
    };
    CHECK(says("into ditty"));
    CHECK(says("ditty: draw it shut. Put ditty, with all that is in it,"));
}

TEST_CASE("a saved bundle with a pouch that is spoilt is refused", "[solve][pouches]")
{
    const Kit kit = kit_of(mending(", goes-in: ditty").text());
    const Bundle sound = solved(kit, Effort::quick);
    REQUIRE(has_bundle(sound.status));
    const auto refused = [&](auto spoil) {
        Bundle bundle = sound;
        for (PlacedItem& item : bundle.items) {
            if (item.id == "ditty") {
                spoil(item);
            }
        }
        return !check(bundle).empty() || !check_against(bundle, kit).empty();
    };
    CHECK_FALSE(refused([](PlacedItem&) {}));
    const auto stretch = [](Shape& shape, double wider, double higher) {
        if (auto* c = std::get_if<Cylinder>(&shape)) {
            *c = {c->diameter + wider, c->height + higher};
        } else {
            auto& b = std::get<Box>(shape);
            b = {b.length + wider, b.width, b.height + higher};
        }
    };
    CHECK(refused([&](PlacedItem& p) { stretch(p.cavities[0].shape, 0.5, 0); })); // a wider cavity
    CHECK(refused([&](PlacedItem& p) { stretch(p.cavities[0].shape, 0, 0.5); })); // a higher one
    CHECK(refused([&](PlacedItem& p) { stretch(p.solids[0].shape, -0.5, 0); }));  // a thinner wall
    CHECK(refused([&](PlacedItem& p) { stretch(p.solids[0].shape, 0, -0.5); }));  // a thinner bottom
    CHECK(refused([&](PlacedItem& p) { stretch(p.cavities[0].shape, -30, 0); })); // too tight for what is in it
    CHECK(refused([&](PlacedItem& p) { p.cavities.clear(); }));
    CHECK(refused([&](PlacedItem& p) { p.cavities[0].opens = Opening::top; }));
}

TEST_CASE("a pouch in a pouch, several alike, cloth and a held lid in one", "[solve][pouches]")
{
    KitText text(round_bundle(), 0.5);
    text.item("sack", pouch(420, 160)).item("purse", pouch(200, 60) + ", goes-in: sack");
    text.item("coin", cylinder(24, 8) + ", goes-in: purse", 4)
        .item("towel", "cloth: {volume: 150 ml, thickness: 6}, goes-in: sack");
    text.item("net", pouch(180, 70), 2).item("float", cylinder(30, 50) + ", goes-in: net", 2);
    text.item("jar", cylinder(50, 60) + ", inside: {wall: 1, base: 1}, goes-in: sack");
    text.item("cap", cylinder(51, 9) + ", closes: {item: jar, adds: 3, intrudes: 6}");
    Kit kit = kit_of(text.text());
    kit.bands.push_back({"elastic", "elastic", 2, 240, "cap"});
    const Bundle bundle = solved(kit, Effort::quick);
    REQUIRE(has_bundle(bundle.status));
    CHECK(check_against(bundle, kit).empty());
    CHECK(item_of(bundle, "cap").closes);
    CHECK(bundle.items[item_of(bundle, "coin").in.value().item].id == "purse");
    CHECK(bundle.items[item_of(bundle, "float").in.value().item].id == "net");
}

TEST_CASE("what is in a pouch is packed for the worst case too", "[solve][pouches]")
{
    Kit kit = kit_of("kit: Mending\nworst-case: yes\ntolerance: 0.5\nitems:\n"
                     "  - {id: ditty, weight: 9, pouch: {girth: 200, length: 80, thickness: 1}}\n"
                     "  - {id: reel, weight: 9, count: 2, cylinder: {diameter: 40, height: 30}, goes-in: ditty}\n");
    const Bundle bundle = solved(kit, Effort::quick);
    REQUIRE(has_bundle(bundle.status));
    CHECK(std::get<Cylinder>(item_of(bundle, "reel").solids[0].shape).diameter == Approx(40.5));
    CHECK(round_plan(item_of(bundle, "ditty").cavities[0].shape) <= 200);
}

TEST_CASE("what is too far round for its pouch is told, whatever form the pouch takes", "[solve][pouches]")
{
    const auto proof = [](double girth, const std::string& thing, double length = 20) {
        return pouch_misfit(kit_of(KitText(round_bundle())
                                       .item("ditty", pouch(girth, length))
                                       .item("thing", thing + ", goes-in: ditty")
                                       .text()));
    };
    CHECK(proof(120.1, cylinder(50, 10)) == std::nullopt); // from the side it is 120 mm round
    const auto told = proof(119.9, cylinder(50, 10));
    REQUIRE(told);
    CHECK(told->find("the thing must lie in the ditty") == 0);
    CHECK(told->find("120.0 mm round, whichever way it may be turned; the ditty is 119.9 mm round") !=
          std::string::npos);
    CHECK(proof(119.9, cylinder(50, 10) + ", upright: yes").has_value());
    CHECK(proof(120.1, cylinder(50, 10) + ", upright: yes") == std::nullopt);       // the pouch may lie
    CHECK(proof(30, "cloth: {volume: 90 ml, thickness: 5}", 5000) == std::nullopt); // not proved
    CHECK(proof(119.9, cylinder(50, 10) + ", forms: [{name: flat, box: {length: 90, width: 40, height: 5}}]", 100) ==
          std::nullopt);
    const Bundle bundle = solved(
        KitText(round_bundle()).item("ditty", pouch(119.9, 60)).item("tin", cylinder(50, 10) + ", goes-in: ditty"),
        Effort::quick);
    CHECK(bundle.status == Status::does_not_fit);
    CHECK(bundle.explanation.find("the tin must lie in the ditty") == 0);
}

TEST_CASE("what is too much for its pouch is told by volume, what nests in one another counting once",
          "[solve][pouches]")
{
    const auto proof = [](const std::string& things, double girth) {
        return pouch_misfit(
            kit_of("kit: Full\nclearance: 0\nitems:\n  - {id: ditty, weight: 9, " + pouch(girth, 50) + "}\n" + things));
    };
    // Four cubes of 20 are 32 ml; 100 mm round and 50 high a pouch has 39.8 ml, in a square plan 31.25.
    const std::string cubes =
        "  - {id: cube, weight: 9, count: 4, box: {length: 20, width: 20, height: 20}, goes-in: ditty}\n";
    CHECK(proof(cubes, 100) == std::nullopt); // by volume alone a round one would do
    CHECK(proof(cubes, 89) ==
          "what must lie in the ditty needs at least 31.9 ml there, and the ditty has at most 31.6 ml");
    CHECK(proof(cubes, 80).has_value());
    const std::string cups =
        "  - {id: cup, weight: 9, cylinder: {diameter: 30, height: 40}, inside: {wall: 1, base: 1}, goes-in: ditty}\n"
        "  - {id: cap, weight: 9, cylinder: {diameter: 34, height: 30}, closes: {item: pot, adds: 1, intrudes: 1}, "
        "goes-in: ditty}\n"
        "  - {id: pot, weight: 9, cylinder: {diameter: 33, height: 40}, inside: {wall: 1, base: 1}, goes-in: ditty}\n";
    CHECK(proof(cups, 110) == std::nullopt); // the cup goes into the pot
}

TEST_CASE("a pouch adds nothing to the lower bound, and takes nothing from it", "[solve][pouches]")
{
    using nesting::lower_bound_ml;
    KitText without(round_bundle(), 0.5);
    without.item("can", cylinder(90, 70) + ", inside: {wall: 1, base: 1}")
        .item("reel", cylinder(40, 30), 2)
        .item("awl", box(74, 12, 12));
    const double bare = lower_bound_ml(kit_of(without.text()));
    CHECK(lower_bound_ml(kit_of(mending("").text())) == Approx(bare));
    CHECK(lower_bound_ml(kit_of(mending(", goes-in: ditty").text())) == Approx(bare));
    // A solid that fills a huge pouch: the bound is the solid's own.
    const auto full = [](const std::string& in) {
        return lower_bound_ml(
            kit_of(KitText(box_bundle()).item("ditty", pouch(400, 100)).item("brick", box(90, 90, 90) + in, 2).text()));
    };
    CHECK(full(", goes-in: ditty") == Approx(2 * 729));
    CHECK(full("") == Approx(2 * 729));
    // No limit is proved to be broken by a form that the pouch need not take.
    const Bundle small = solved(KitText(box_bundle(60, 60, 20))
                                    .item("ditty", pouch(400, 300))
                                    .item("tile", box(40, 40, 8) + ", goes-in: ditty"),
                                Effort::quick);
    CHECK(has_bundle(small.status));
}

TEST_CASE("the same kit gives the same forms, on any number of threads; a kit without pouches stays as it is",
          "[solve][pouches]")
{
    const Kit kit = with_stowages(kit_of(mending(", goes-in: ditty").text()));
    nesting::SearchOptions options;
    options.seed = 3;
    const Kit one = with_packed_pouches(kit, options);
    options.threads = 3;
    const Kit other = with_packed_pouches(kit, options);
    REQUIRE(one.items[1].forms.size() == other.items[1].forms.size());
    CHECK(one.items[1].forms.size() > kit.items[1].forms.size());
    CHECK(one.items[1].forms.size() <= 24);
    for (std::size_t k = 0; k < one.items[1].forms.size(); ++k) {
        CHECK(one.items[1].forms[k].outside == other.items[1].forms[k].outside);
    }
    const Kit plain = kit_of(KitText(round_bundle()).item("tin", cylinder(40, 30)).text());
    CHECK(with_packed_pouches(plain, options).items[0].forms.empty());
}
