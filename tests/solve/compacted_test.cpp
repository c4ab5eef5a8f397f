// SPDX-License-Identifier: GPL-3.0-or-later
/// A known arrangement with other sizes.
#include "solve/compacted.hpp"

#include <catch2/catch.hpp>

#include "support/kit_text.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

double volume(const Bundle& bundle) { return volume_ml(bundle.envelope); }

Kit sample(const std::string& name)
{
    const auto kit = read_kit_file(TUCKWRIGHT_SOURCE_DIR "/kits/" + name + ".yaml");
    REQUIRE(kit.ok());
    return *kit;
}

/// A pot with a lid, a block on it that does not go in, and a tin in it.
Kit tower()
{
    KitText text("{shape: cylinder}", 0.5);
    text.item("pot", cylinder(100, 80) + ", inside: {wall: 1, base: 1}");
    text.item("lid", cylinder(101, 8) + ", closes: {item: pot, adds: 2, intrudes: 5}");
    text.item("tin", cylinder(60, 40) + ", inside: {wall: 1, base: 1, lid: own}, upright: yes");
    text.item("box", box(70, 70, 24));
    return kit_of(text.text());
}

} // namespace

TEST_CASE("an arrangement comes back from its bundle, and is no larger")
{
    const std::vector<std::string> names{"bike-repair-roll", "sketching-shore"};
    for (std::size_t k = 0; k < static_cast<std::size_t>(count(2, 1)); ++k) {
        INFO(names[k]);
        const Kit kit = sample(names[k]);
        const Bundle first = solved(kit, Effort::quick);
        REQUIRE(has_bundle(first.status));
        const auto again = compacted(kit, first);
        REQUIRE(again);
        CHECK(volume(*again) <= volume(first) * (1 + 1e-6));
        REQUIRE(again->items.size() == first.items.size());
        for (std::size_t item = 0; item < first.items.size(); ++item) {
            CHECK(again->items[item].in == first.items[item].in);
            CHECK(again->items[item].closes == first.items[item].closes);
            CHECK(again->items[item].stowed == first.items[item].stowed);
        }
    }
}

TEST_CASE("a lower box makes the tower lower by as much, a wider one wider")
{
    Kit kit = tower();
    const Bundle first = solved(kit, Effort::quick);
    REQUIRE(std::get<Cylinder>(first.envelope).height == Approx(106).margin(1e-3));
    std::get<Box>(kit.items[3].outside).height -= 3;
    const auto lower = compacted(kit, first);
    REQUIRE(lower);
    CHECK(std::get<Cylinder>(lower->envelope).height == Approx(103).margin(1e-3));
    std::get<Box>(kit.items[3].outside).length = 120;
    const auto wider = compacted(kit, first);
    REQUIRE(wider);
    CHECK(std::get<Cylinder>(wider->envelope).diameter == Approx(std::hypot(120.0, 70.0)).margin(0.01));
}

TEST_CASE("without a vessel, what it held lies in what it lay in")
{
    Kit kit = tower();
    const Bundle first = solved(kit, Effort::quick);
    REQUIRE(first.items[2].in == Lodging{0, 0});
    const Bundle rest = without(first, 0); // and so the lid goes
    REQUIRE(rest.items.size() == 2);
    CHECK(rest.items[0].id == "tin");
    CHECK_FALSE(rest.items[0].in);
    kit.items.erase(kit.items.begin(), kit.items.begin() + 2);
    const auto packed = compacted(kit, rest);
    REQUIRE(packed);
    CHECK(std::get<Cylinder>(packed->envelope).height == Approx(64).margin(1e-3));
}

TEST_CASE("without a copy the others count on, and without a lid its vessel is open")
{
    KitText text("{shape: cylinder}", 0.5);
    text.item("cup", cylinder(60, 40) + ", inside: {wall: 1, base: 1}");
    text.item("lid", cylinder(60, 6) + ", closes: {item: cup, adds: 2, intrudes: 0}");
    text.item("tin", cylinder(50, 10), 3);
    const Bundle first = solved(kit_of(text.text()), Effort::quick);
    const Bundle two = without(first, 3);
    REQUIRE(two.items.size() == 4);
    CHECK(two.items[2].copy == 1);
    CHECK(two.items[3].copy == 2);
    CHECK(two.items[3].solids == first.items[4].solids);
    const Bundle open = without(first, 1);
    REQUIRE(open.items.size() == 4);
    Kit kit = kit_of(text.text());
    kit.items.erase(kit.items.begin() + 1);
    CHECK(compacted(kit, open));
}

TEST_CASE("what is missing is put where it takes the least room")
{
    const Kit kit = tower();
    const Bundle first = solved(kit, Effort::quick);
    const auto tin = completed(kit, without(first, 2), 1);
    REQUIRE(tin);
    CHECK(tin->items[2].in == Lodging{0, 0});
    CHECK(volume(*tin) == Approx(volume(first)).epsilon(1e-6));
    const auto block = completed(kit, without(first, 3), 1);
    REQUIRE(block);
    CHECK_FALSE(block->items[3].in);
    CHECK(volume(*block) >= volume(first) * (1 - 1e-6));
    const auto pot = completed(kit, without(first, 0), 1); // with its lid
    REQUIRE(pot);
    CHECK(pot->items.size() == first.items.size());
}

TEST_CASE("what cannot be had is not claimed")
{
    Kit kit = tower();
    const Bundle first = solved(kit, Effort::quick);
    SECTION("a tin too wide for the pot that it lies in")
    {
        std::get<Cylinder>(kit.items[2].outside).diameter = 99;
        CHECK_FALSE(compacted(kit, first));
    }
    SECTION("a thing that is not in the bundle")
    {
        kit.items[2].id = "other";
        CHECK_FALSE(compacted(kit, first));
    }
    SECTION("a rule that the arrangement breaks")
    {
        kit.rules.push_back({Keep::out, "tin", "pot", "the tin is to be at hand"});
        CHECK_FALSE(compacted(kit, first));
    }
    SECTION("limits that it cannot meet")
    {
        kit.bundle.height = 90;
        CHECK_FALSE(compacted(kit, first));
    }
}
