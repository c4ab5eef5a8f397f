// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>

#include "support/stacking_samples.hpp"
#include "tuckwright/stacking.hpp"

using namespace tuckwright;
using Items = std::vector<std::size_t>;
using Direction = std::array<std::int64_t, 3>;

namespace {

Items order_of(const Bundle& bundle) { return stacking_samples::of_steps(bundle, &Step::item); }

} // namespace

TEST_CASE("ring into pot, mug into ring, then the lid, then the pot")
{
    const auto order = stacking_order(stacking_samples::mug_in_ring_in_lidded_pot());
    CHECK(order.cycle.empty());
    REQUIRE(order.steps.size() == 4);
    CHECK(order_of(stacking_samples::mug_in_ring_in_lidded_pot()) == Items{2, 3, 0, 1});
    for (const Step& step : order.steps) {
        CHECK(step.direction == Direction{0, 0, -1});
        CHECK_FALSE(step.text.empty());
    }
}

TEST_CASE("what lies under a board that juts out goes in before the board")
{
    CHECK(order_of(stacking_samples::tin_under_board()) == Items{1, 2, 0}); // the block first: it is larger
}

TEST_CASE("ties go to the lower, the larger, the earlier")
{
    using namespace handmade;
    const auto cube = [](double size, double x, double z) { return box(size, size, size, {x, 0, z}); };
    const Bundle low = bundle("", Box{100, 20, 30}, {item("a", cube(10, 50, 25)), item("b", cube(10, 20, 5))});
    CHECK(order_of(low) == Items{1, 0});
    const Bundle large = bundle("", Box{100, 20, 30}, {item("a", cube(10, 50, 5)), item("b", cube(12, 20, 6))});
    CHECK(order_of(large) == Items{1, 0});
    const Bundle same = bundle("", Box{100, 20, 30}, {item("a", cube(10, 50, 5)), item("b", cube(10, 20, 5))});
    CHECK(order_of(same) == Items{0, 1});
}

TEST_CASE("a lying pot is filled along its axis, exactly")
{
    const auto order = stacking_order(stacking_samples::cup_in_yawed_lying_pot());
    REQUIRE(order.steps.size() == 2);
    CHECK(order.steps[0].item == 1);
    CHECK(order.steps[0].direction == Direction{-3, -4, 0});
    CHECK(order.steps[1].direction == Direction{0, 0, -1});
}

TEST_CASE("where nothing goes straight down, one item comes in level")
{
    const Bundle bundle = stacking_samples::hook_round_seat();
    const auto order = stacking_order(bundle);
    CHECK(order.cycle.empty());
    REQUIRE(order.steps.size() == 2);
    CHECK(order.steps[0].direction == Direction{0, 0, -1});
    CHECK(order.steps[1].direction[2] == 0);
    CHECK(order.steps[1].text.find("in from the right") != std::string::npos);
}

TEST_CASE("links of a chain bar each other; what has nothing to do with it is not blamed")
{
    const auto order = stacking_order(stacking_samples::chained_rings());
    CHECK(order.steps.empty());
    auto cycle = order.cycle;
    std::sort(cycle.begin(), cycle.end());
    CHECK(cycle == Items{1, 2});
}

TEST_CASE("three slanting boards, each over the next, bar each other in a pot")
{
    const Bundle bundle = stacking_samples::pinwheel_in_pot();
    for (std::size_t a = 1; a < 4; ++a) {
        for (std::size_t b = a + 1; b < 4; ++b) {
            const auto apart = separation(hull_of(bundle.items[a].solids[0]), hull_of(bundle.items[b].solids[0]));
            REQUIRE(apart.distance > 0.1);
        }
    }
    const auto order = stacking_order(bundle);
    CHECK(order.steps.empty());
    auto cycle = order.cycle;
    std::sort(cycle.begin(), cycle.end());
    CHECK(cycle == Items{1, 2, 3});
}

TEST_CASE("the same boards on the table: one of them is slid in")
{
    const auto order = stacking_order(stacking_samples::pinwheel_on_table());
    CHECK(order.cycle.empty());
    REQUIRE(order.steps.size() == 3);
    const auto straight = std::count_if(order.steps.begin(), order.steps.end(), [](const Step& step) {
        return step.direction == Direction{0, 0, -1};
    });
    CHECK(straight == 2);
}

TEST_CASE("in a sleeve, what lies under another goes in first; a plug on both sides of a cap bars it")
{
    using namespace handmade;
    const auto sleeve =
        hollow(item("sleeve", cylinder(60, 40, {0, 0, 40})), cylinder(58, 40, {0, 0, 40}), Opening::both);
    auto cap = in(item("cap", cylinder(56, 10, {0, 0, 55})), 0);
    cap.solids.push_back(cylinder(4, 40, {25, 0, 40})); // a stem beside what lies under the cap
    const auto core = in(item("core", cylinder(20, 10, {0, 0, 40})), 0);
    CHECK(order_of(bundle("", Cylinder{60, 90}, {sleeve, cap, core})) == Items{0, 2, 1});
    auto plug = in(item("plug", cylinder(40, 10, {0, 0, 25})), 0);
    plug.solids.push_back(cylinder(40, 10, {0, 0, 65}));
    const auto barred = stacking_order(bundle("", Cylinder{60, 90}, {sleeve, cap, plug}));
    CHECK(barred.cycle == Items{1, 2});
    // A sleeve that stands on its head is filled from above all the same.
    auto turned = bundle("", Cylinder{60, 90}, {sleeve, core});
    turned.items[1].in = Lodging{0, 0};
    turned.items[0].solids[0].pose.turn = turned.items[0].cavities[0].pose.turn = upside_down;
    CHECK(stacking_order(turned).steps.front().direction == Direction{0, 0, -1});
}

TEST_CASE("sleeves go in empty, one in another, and each is filled before anything else goes in")
{
    using namespace handmade;
    const auto pot = hollow(item("pot", cylinder(130, 96, {0, 0, 48})), cylinder(126, 94, {0, 0, 49}), Opening::top);
    const auto ring = [](double diameter, std::size_t holder) {
        const auto made = item("ring", cylinder(diameter, 60, {0, 0, 32}));
        return in(hollow(made, cylinder(diameter - 4, 60, {0, 0, 32}), Opening::both), holder);
    };
    const auto cup =
        in(hollow(item("cup", cylinder(70, 70, {0, 0, 37})), cylinder(68, 68, {0, 0, 38}), Opening::top), 2);
    const auto tea = in(item("tea", cylinder(40, 30, {0, 0, 19})), 3);
    const auto bag = in(item("bag", cylinder(120, 20, {0, 0, 82})), 0);
    const auto rod = in(item("rod", cylinder(4, 40, {42, 0, 22})), 1);
    const Bundle all = bundle("", Cylinder{130, 96}, {pot, ring(120, 0), ring(80, 1), cup, tea, bag, rod});
    CHECK(order_of(all) == Items{1, 2, 4, 3, 6, 5, 0});
    for (const Step& step : stacking_order(all).steps) {
        CHECK(step.text.find("held together") == std::string::npos);
    }
}

TEST_CASE("a sleeve that lies in a standing vessel can only go in with what it holds")
{
    using namespace handmade;
    const auto pot = hollow(item("pot", cylinder(130, 96, {0, 0, 48})), cylinder(126, 94, {0, 0, 49}), Opening::top);
    const auto sleeve = in(hollow(item("sleeve", cylinder(60, 80, {0, 0, 32}, up_to_x)),
                                  cylinder(58, 80, {0, 0, 32}, up_to_x), Opening::both),
                           0);
    const auto rod = in(item("rod", cylinder(10, 70, {0, 0, 20}, up_to_x)), 1);
    const auto order = stacking_order(bundle("", Cylinder{130, 96}, {pot, sleeve, rod}));
    REQUIRE(order.steps.size() == 3);
    CHECK(order.steps[0].item == 2);
    CHECK(order.steps[1].text.find("Put sleeve, held together with all that is in it, lying into pot") == 0);
}

TEST_CASE("the same bundle gives the same steps")
{
    const Bundle tower = stacking_samples::random_tower(7, 15);
    const auto once = stacking_order(tower), twice = stacking_order(tower);
    REQUIRE(once.steps.size() == twice.steps.size());
    for (std::size_t k = 0; k < once.steps.size(); ++k) {
        CHECK(once.steps[k].item == twice.steps[k].item);
        CHECK(once.steps[k].direction == twice.steps[k].direction);
        CHECK(once.steps[k].text == twice.steps[k].text);
    }
}

TEST_CASE("an empty bundle has no steps, and nothing bars it")
{
    const auto order = stacking_order(Bundle{});
    CHECK(order.steps.empty());
    CHECK(order.cycle.empty());
}
