// SPDX-License-Identifier: GPL-3.0-or-later
/// Pouches as the file gives them, and the forms that they take.
#include <catch2/catch.hpp>
#include <numbers>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/stowage.hpp"

using namespace tuckwright;

namespace {

Kit kit_with(const std::string& pouch, const std::string& tin = "")
{
    const auto kit = read_kit_text("kit: Pouches\nitems:\n  - {id: ditty, weight: 20, pouch: {" + pouch +
                                       "}}\n"
                                       "  - {id: tin, weight: 9, cylinder: {diameter: 60, height: 40}" +
                                       tin + "}\n",
                                   "kit.yaml");
    INFO((kit ? "" : to_string(kit.problems().front())));
    REQUIRE(kit.ok());
    return *kit;
}

/// The way round a plan, mm.
double round_plan(const Shape& shape)
{
    const auto* c = std::get_if<Cylinder>(&shape);
    return c != nullptr ? std::numbers::pi * c->diameter
                        : 2 * (std::get<Box>(shape).length + std::get<Box>(shape).width);
}

} // namespace

TEST_CASE("a pouch is read with its girth and length rounded down and its wall up, and lies flat by itself")
{
    const Kit kit = kit_with("girth: 30.00000005 cm, length: 12.00000005 cm, thickness: 0.10000005 cm");
    REQUIRE(kit.items[0].pouch);
    CHECK(*kit.items[0].pouch == Pouch{300, 120, 1.000001});
    CHECK(kit.items[0].outside == Shape{Box{150, 120, 2.000002}});
    CHECK_FALSE(kit.items[0].inside);
    CHECK_FALSE(kit.items[1].pouch);
}

TEST_CASE("a pouch takes no form that its girth does not go round, nor one that is higher than it is long")
{
    const Pouch pouch{300, 120, 1};
    const auto box = filled_out(pouch, Box{100, 50, 120});
    REQUIRE(box);
    CHECK(box->outside == Shape{Box{102, 52, 122}});
    REQUIRE(box->inside);
    CHECK(box->inside->opens == Opening::closed);
    CHECK(box->inside->floor == 1);
    CHECK(box->name == "filled out 100 x 50 mm, 120 mm high");
    CHECK_FALSE(filled_out(pouch, Box{100, 50.000001, 120}));
    CHECK_FALSE(filled_out(pouch, Box{100, 50, 120.000001}));
    const auto round = filled_out(pouch, Cylinder{95.492957, 60}); // 300 * 113 / 355
    REQUIRE(round);
    CHECK(round->outside == Shape{Cylinder{97.492957, 62}});
    CHECK(round->name == "filled out 95 mm across, 60 mm high");
    CHECK_FALSE(filled_out(pouch, Cylinder{95.492958, 60}));
}

TEST_CASE("a pouch that need hold nothing is folded, one that something goes in is filled out, in few forms")
{
    for (const bool holds : {false, true}) {
        const Kit kit =
            with_stowages(kit_with("girth: 300, length: 120, thickness: 1", holds ? ", goes-in: ditty" : ""));
        const Item& ditty = kit.items[0];
        CHECK(must_hold_something(kit, "ditty") == holds);
        CHECK_FALSE(must_hold_something(kit, "tin"));
        CHECK(ditty.forms.size() >= 8);
        CHECK(ditty.forms.size() <= 24);
        CHECK(ditty.outside == ditty.forms.front().outside);
        CHECK(ditty.inside.has_value() == holds);
        for (const Stowage& form : ditty.forms) {
            INFO(form.name);
            CHECK_FALSE(form.name.empty());
            CHECK_FALSE(form.how.empty());
            CHECK(form.inside.has_value() == holds);
            if (form.inside) {
                CHECK(round_plan(form.inside->shape) <= 300);
                CHECK(round_plan(form.inside->shape) > 299.99); // as wide as it gets
                CHECK(height_of(form.inside->shape) <= 120);
                CHECK(height_of(form.outside) == Approx(height_of(form.inside->shape) + 2));
            } else { // never less than its stuff: 300 x 120 x 1
                CHECK(volume_ml(form.outside) == Approx(36));
            }
        }
    }
}
