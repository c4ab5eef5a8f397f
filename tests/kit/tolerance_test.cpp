// SPDX-License-Identifier: GPL-3.0-or-later
/// Measuring tolerances: as the file gives them, and what they make of a kit at worst.
#include <catch2/catch.hpp>

#include "kit/quantity.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/worst_case.hpp"

using namespace tuckwright;

namespace {

Kit read(const std::string& text)
{
    const auto kit = read_kit_text(text, "kit.yaml");
    INFO((kit ? "" : to_string(kit.problems().front())));
    REQUIRE(kit.ok());
    return *kit;
}

Item only_item(const std::string& fields, const std::string& head = "")
{
    return read("kit: One\n" + head + "items:\n  - {id: a, weight: 10, " + fields + "}\n").items.front();
}

Spread off(double a, double b, double c = 0) { return {{a, b, c}}; }

const std::string pot = "cylinder: {diameter: 110 ±1, height: 90 ±0.5}, inside: {cylinder: {diameter: 108 ±2, height: 88 ±1}}";

} // namespace

TEST_CASE("a tolerance behind a number, in all its spellings and units")
{
    CHECK(only_item("cylinder: {diameter: 64 ±0.5, height: 64 +-0.25}").outside_off == off(0.5, 0.25));
    CHECK(only_item("cylinder: {diameter: 64 mm ± 0.5 mm, height: 64±1}").outside_off == off(0.5, 1));
    CHECK(only_item("box: {length: 64 +/- 1, width: 30, height: 20 ±0}").outside_off == off(1, 0, 0));
    // A unit that only one of the two has counts for both, whatever the file's own is.
    const Item item = only_item("box: {length: 2 ±0.5 cm, width: 2 in ±0.1, height: 20 mm ±0.1 cm}");
    CHECK(item.outside_off == off(5, 2.54, 1));
    CHECK(item.outside == Shape(Box{20, 50.8, 20}));
    CHECK(only_item("cylinder: {diameter: 6 ±0.1, height: 5}", "units: {length: cm}\n").outside_off == off(1, 0));
}

TEST_CASE("tolerances are rounded up to the grid")
{
    CHECK(only_item("cylinder: {diameter: 64 ±0.0000001, height: 64 ±0.1234567}").outside_off ==
          off(0.000001, 0.123457));
}

TEST_CASE("the file's own tolerance holds where a size has none, but not for walls")
{
    const std::string head = "tolerance: 0.5 mm\n";
    CHECK(only_item("cylinder: {diameter: 64, height: 30 ±0}", head).outside_off == off(0.5, 0));
    const Item thin = only_item("cylinder: {diameter: 64, height: 30 ±1}, inside: {wall: 0.4, base: 0.4}", head);
    CHECK(thin.inside->off == off(0.5, 1));
    const Item thick =
        only_item("cylinder: {diameter: 64, height: 30}, inside: {wall: 3 ±0.2, base: 3 ±0.1, lid: own}", head);
    CHECK(thick.inside->off == off(0.9, 0.7)); // twice the wall's, and base and lid
    CHECK(only_item("cylinder: {diameter: 64, height: 30}").outside_off == Spread{});
    const Item sleeve = only_item("cylinder: {diameter: 64, height: 30 ±2}, inside: {cylinder: {diameter: 60 ±1}, opens: both}");
    CHECK(sleeve.inside->off == off(1, 2));
}

TEST_CASE("what a lid adds and takes has tolerances; the usual one is no more than the depth itself")
{
    const std::string head = "kit: Two\ntolerance: 0.5\nitems:\n  - {id: pot, weight: 10, " + pot + "}\n";
    const Kit kit = read(head + "  - {id: lid, weight: 9, cylinder: {diameter: 111, height: 8}, "
                                "closes: {item: pot, adds: 2 ±0.3, intrudes: 0}}\n");
    CHECK(kit.items[1].closes->adds_off == 0.3);
    CHECK(kit.items[1].closes->intrudes_off == 0);
    const Kit usual = read(head + "  - {id: lid, weight: 9, cylinder: {diameter: 111, height: 8}, "
                                  "closes: {item: pot, adds: 2, intrudes: 0.2}}\n");
    CHECK(usual.items[1].closes->adds_off == 0.5);
    CHECK(usual.items[1].closes->intrudes_off == 0.2);
}

TEST_CASE("at worst outsides grow, cavities shrink, and mouths stay in the top face")
{
    const Kit kit = worst_case(read("kit: One\nworst-case: yes\nitems:\n  - {id: pot, weight: 10, " + pot + "}\n"));
    CHECK(kit.worst_case);
    CHECK(kit.items[0].outside == Shape(Cylinder{111, 90.5}));
    CHECK(kit.items[0].inside->shape == Shape(Cylinder{106, 87}));
    CHECK(kit.items[0].inside->floor == 3.5);
    const Kit own = worst_case(read("kit: One\nitems:\n  - {id: tin, weight: 10, cylinder: {diameter: 50 ±1, height: "
                                    "40 ±1}, inside: {wall: 1, base: 1, lid: own}}\n"));
    CHECK_FALSE(own.worst_case);
    CHECK(own.items[0].inside->shape == Shape(Cylinder{47, 37}));
    CHECK(own.items[0].inside->floor == 2);
    const Kit sleeve = worst_case(read("kit: One\nitems:\n  - {id: ring, weight: 10, cylinder: {diameter: 50 ±1, "
                                       "height: 40 ±1}, inside: {wall: 1, opens: both}}\n"));
    CHECK(sleeve.items[0].inside->shape == Shape(Cylinder{47, 41}));
}

TEST_CASE("at worst a lid stands higher, hangs deeper and reaches farther down, and gets no skirt that it had not")
{
    const auto lid_of = [](const std::string& height, const std::string& closes) {
        return worst_case(read("kit: Two\nitems:\n  - {id: pot, weight: 10, " + pot +
                               "}\n  - {id: lid, weight: 9, cylinder: {diameter: 112, height: " + height +
                               "}, closes: {item: pot, " + closes + "}}\n"))
            .items[1];
    };
    const Item plug = lid_of("8 ±2", "adds: 3 ±0.5, intrudes: 5 ±0.25");
    CHECK(plug.closes->adds == 3.5);
    CHECK(height_of(plug.outside) == 10);
    CHECK(height_of(plug.outside) - plug.closes->adds <= plug.closes->intrudes); // or it would count as a skirt
    const Item skirted = lid_of("20 ±2", "adds: 3 ±0.5, intrudes: 5 ±0.25");
    CHECK(skirted.closes->intrudes == 5.25);
    CHECK(height_of(skirted.outside) - skirted.closes->adds == Approx(17 + 2 + 0.5)); // down from the rim
    const Item deep = lid_of("92.5 ±2", "adds: 3 ±0.5, intrudes: 80 ±20");
    CHECK(height_of(deep.outside) - deep.closes->adds <= 90.5);
    CHECK(deep.closes->intrudes < 87);
}

TEST_CASE("a kit without tolerances is its own worst case")
{
    const Kit kit = read("kit: Two\nitems:\n  - {id: pot, weight: 10, cylinder: {diameter: 110, height: 90}, inside: "
                         "{wall: 1, base: 1}}\n  - {id: lid, weight: 9, cylinder: {diameter: 111, height: 8}, "
                         "closes: {item: pot, adds: 2, intrudes: 5}}\n");
    const Kit worst = worst_case(kit);
    for (std::size_t i = 0; i < 2; ++i) {
        CHECK(worst.items[i].outside == kit.items[i].outside);
    }
    CHECK(worst.items[0].inside->shape == kit.items[0].inside->shape);
    CHECK(worst.items[0].inside->floor == kit.items[0].inside->floor);
    CHECK(worst.items[1].closes->adds == kit.items[1].closes->adds);
    CHECK(worst.items[1].closes->intrudes == kit.items[1].closes->intrudes);
}

TEST_CASE("a size's text is taken apart at its tolerance")
{
    using reading::take_tolerance_off;
    CHECK(take_tolerance_off("64").size == "64");
    CHECK_FALSE(take_tolerance_off("64").off);
    CHECK(take_tolerance_off("64 ± 0.5 mm").size == "64 mm");
    CHECK(take_tolerance_off("64 cm±0.5").off == std::optional<std::string>("0.5 cm"));
    CHECK(take_tolerance_off("-1 +- 2").size == "-1");
    CHECK(take_tolerance_off("64 ±").off == std::optional<std::string>(""));
}
