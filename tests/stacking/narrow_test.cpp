// SPDX-License-Identifier: GPL-3.0-or-later
/// Ways through openings narrower than the cavity below them.
#include "stacking/narrow.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "support/handmade_bundles.hpp"
#include "tuckwright/footing.hpp"
#include "tuckwright/handling.hpp"
#include "tuckwright/stacking.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

stacking::Replay complete(const Bundle& bundle)
{
    stacking::Replay replay(bundle);
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        replay.place(i);
    }
    return replay;
}

} // namespace

TEST_CASE("what passes a narrow opening straight has that way first, what does not is moved aside")
{
    const Bundle crock = tins_under_a_shoulder();
    const auto replay = complete(crock);
    const auto peg = stacking::ways_of(replay, 3), wide = stacking::ways_of(replay, 1),
               out = stacking::ways_of(replay, 0);
    CHECK_FALSE(peg.front().via.has_value());
    CHECK(peg.size() > 10);
    REQUIRE(wide.front().via.has_value());
    CHECK(*wide.front().via == Vec3{32, 0, 0}); // down the middle
    REQUIRE(wide[1].via.has_value());
    CHECK(wide[1].via->x == Approx(17.5).margin(1e-5)); // as near as it goes
    CHECK(wide[1].via->x > 17.5);
    for (const stacking::Way& way : wide) {
        REQUIRE(way.via.has_value());
        CHECK(std::hypot(way.via->x - 32, way.via->y) <= 14.5);
        CHECK(way.via->z == 0);
    }
    CHECK_FALSE(out.front().via.has_value());
}

TEST_CASE("through a rectangular opening things go turned as they lie")
{
    Bundle chest = brick_in_a_chest();
    const auto ways = stacking::ways_of(complete(chest), 1);
    REQUIRE(ways.front().via.has_value());
    CHECK(*ways.front().via == Vec3{20, 17.5, 0});
    chest.items[1].solids[0] = box(55, 40, 30, {30, 30, 17}, {1, 0, 0, 1}); // 55 mm where the opening has 50
    const auto turned = stacking::ways_of(complete(chest), 1);
    REQUIRE(turned.size() == 1);
    CHECK_FALSE(turned.front().via.has_value());
}

TEST_CASE("a lying crock is filled through its opening along its axis")
{
    const Quaternion aslant_up{4, -1, 3, 0}; // its own z is level, and none of the world's axes
    for (const Quaternion& turn : {up_to_x, compose({2, 0, 0, 1}, up_to_x), aslant_up}) {
        Bundle crock = tins_under_a_shoulder();
        const Matrix3 m = rotation_matrix(turn);
        const auto lay = [&](Pose& pose) {
            const Vec3 c = pose.center;
            const auto row = [&](std::size_t k) { return m[k][0] * c.x + m[k][1] * c.y + m[k][2] * (c.z - 45); };
            pose = {{snap(row(0)), snap(row(1)), snap(row(2) + 65)}, turn};
        };
        crock.envelope = Cylinder{200, 140};
        for (PlacedItem& item : crock.items) {
            lay(item.solids[0].pose);
            for (PlacedCavity& cavity : item.cavities) {
                lay(cavity.pose);
            }
        }
        const StackingOrder order = stacking_order(crock);
        REQUIRE(order.steps.size() == 4);
        CHECK(std::count_if(order.steps.begin(), order.steps.end(), [](const Step& s) { return s.via.has_value(); }) ==
              2);
    }
}

TEST_CASE("a narrow opening's steps are told in words")
{
    const auto order = stacking_order(tins_under_a_shoulder());
    std::string all;
    for (const Step& step : order.steps) {
        all += step.text + "\n";
    }
    INFO(all);
    CHECK(all.find("Put wide tin standing through the opening of crock and push it aside to its place: at the bottom, "
                   "against the wall") != std::string::npos);
    CHECK(all.find("Put peg on its end") == std::string::npos);
    CHECK(all.find("Put peg standing into crock, at the bottom") != std::string::npos);
}

TEST_CASE("what lies over a narrow opening alone hangs over nothing")
{
    Bundle crock = tins_under_a_shoulder();
    crock.items.push_back(item("sugar", box(10, 10, 10, {30, 0, 95})));
    crock.envelope = Cylinder{120, 100};
    CHECK_FALSE(footings(crock)[4].carried);
    crock.items[4].solids[0].pose.center.x = 50; // on the shoulder, over the cavity
    CHECK(footings(crock)[4].carried);
    CHECK(footings(crock)[4].overhang == 0);
}

TEST_CASE("what was moved aside comes out after all that went in later, and what went in straight after what bars it")
{
    const Bundle bundle = tins_under_a_shoulder();
    CHECK(unpacking(bundle, 1).count == 3); // the wide tin: the slim one, the peg, the crock
    CHECK(unpacking(bundle, 2).count == 2);
    CHECK(unpacking(bundle, 3).count == 0); // the peg
}
