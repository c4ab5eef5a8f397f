// SPDX-License-Identifier: GPL-3.0-or-later
/// Who may be with whom: two cups that fit one another, and two rods.
#include <catch2/catch.hpp>

#include "packing/construct.hpp"
#include "packing/scenes.hpp"
#include "packing/separation.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;

namespace {

constexpr int pot = 0, mug = 1, red = 2, blue = 3;

Scene cups_and_rods()
{
    Scene scene = scene_of({cup(100, 80), cup(60, 60), body(Cylinder{10, 50}), body(Cylinder{12, 40})});
    let_in(scene, mug, pot);
    for (const std::size_t rod : {red, blue}) {
        let_in(scene, rod, pot);
        let_in(scene, rod, mug);
    }
    scene.company.apart.assign(4, std::vector<bool>(4, false));
    scene.company.out = scene.company.apart;
    scene.company.within.resize(4);
    return scene;
}

Place floor_of(int cell) { return {cell, Form::standing, 0, 0, 30, 1, 0}; }

} // namespace

TEST_CASE("things that keep apart share no vessel, however deep")
{
    Scene scene = cups_and_rods();
    scene.company.apart[red][blue] = scene.company.apart[blue][red] = true;
    Layout layout(scene, round_envelope(200, 200));
    layout.put(red, floor_of(mug));
    CHECK_FALSE(layout.may_enter(blue, mug, Form::standing));
    CHECK(layout.may_enter(blue, pot, Form::standing)); // the mug is beside the pot
    layout.put(mug, floor_of(pot));
    CHECK_FALSE(layout.may_enter(blue, pot, Form::standing));
    CHECK(layout.may_enter(blue, outermost, Form::standing));
    layout.put(mug, floor_of(outermost));
    layout.put(blue, floor_of(pot));
    CHECK_FALSE(layout.may_enter(mug, pot, Form::standing)); // with the red one in it
    CHECK(layout.may_enter(red, mug, Form::standing));       // where it is
}

TEST_CASE("a vessel and what keeps apart from it do not hold one another")
{
    Scene scene = cups_and_rods();
    scene.company.apart[red][pot] = scene.company.apart[pot][red] = true;
    Layout layout(scene, round_envelope(200, 200));
    CHECK_FALSE(layout.may_enter(red, pot, Form::standing));
    layout.put(mug, floor_of(pot));
    CHECK_FALSE(layout.may_enter(red, mug, Form::standing));
    CHECK(layout.may_enter(blue, mug, Form::standing));
}

TEST_CASE("a thing stays out of a vessel at any depth, also when it is carried in")
{
    Scene scene = cups_and_rods();
    scene.company.out[red][pot] = true;
    Layout layout(scene, round_envelope(200, 200));
    CHECK(layout.may_enter(red, mug, Form::standing));
    CHECK_FALSE(layout.may_enter(red, pot, Form::standing));
    layout.put(red, floor_of(mug));
    CHECK_FALSE(layout.may_enter(mug, pot, Form::standing));
}

TEST_CASE("a thing that must lie in a vessel may lie deeper in it, and does not leave it with what holds it")
{
    Scene scene = cups_and_rods();
    scene.company.within[red] = {{pot}};
    Layout layout(scene, round_envelope(200, 200));
    CHECK_FALSE(layout.may_enter(red, outermost, Form::standing));
    CHECK_FALSE(layout.may_enter(red, mug, Form::standing));
    CHECK(layout.may_enter(red, pot, Form::standing));
    CHECK(layout.unmet_company(red, outermost) == 1);
    CHECK(layout.excess_of(red) >= scene.size);
    layout.put(mug, floor_of(pot));
    CHECK(layout.may_enter(red, mug, Form::standing));
    layout.put(red, floor_of(mug));
    CHECK(layout.unmet_company(red, mug) == 0);
    CHECK_FALSE(layout.may_enter(mug, outermost, Form::standing));
    CHECK(layout.may_enter(pot, outermost, Form::standing)); // it goes along in it
}

TEST_CASE("construction and separation keep the rules of company")
{
    Scene scene = cups_and_rods();
    scene.company.within[red] = {{mug}};
    scene.company.apart[red][blue] = scene.company.apart[blue][red] = true;
    scene.company.out[mug][pot] = true;
    for (const std::uint64_t seed : {1, 2, 3, 4, 5}) {
        Random random(seed);
        Layout layout(scene, round_envelope(75, 400));
        construct(layout, random, 1, 60);
        REQUIRE(separate(layout, random, {}));
        CHECK(layout.place(red).cell == mug);
        CHECK(layout.place(mug).cell == outermost);
        CHECK(layout.place(blue).cell != mug);
    }
}

TEST_CASE("those that go together count as parted while they lie in different cells, whichever would move")
{
    Scene scene = cups_and_rods();
    scene.company.together.resize(4);
    scene.company.together[red] = {{blue}};
    Layout layout(scene, round_envelope(200, 200));
    CHECK(layout.unmet_company(red, outermost) == 0);
    CHECK(layout.unmet_company(red, pot) == 1);
    CHECK(layout.unmet_company(blue, pot) == 1); // though it asks for nobody itself
    layout.put(blue, floor_of(pot));
    CHECK(layout.unmet_company(red, outermost) == 1);
    CHECK(layout.unmet_company(blue, pot) == 1);
    CHECK(layout.excess_of(red) >= scene.size);
    layout.put(red, floor_of(pot));
    CHECK(layout.unmet_company(red, pot) == 0);
    CHECK(layout.unmet_company(blue, pot) == 0);
    layout.hide(blue); // nobody knows yet where it will be
    CHECK(layout.unmet_company(red, outermost) == 0);
}

TEST_CASE("construction and separation bring together what goes together")
{
    Scene scene = cups_and_rods();
    scene.company.together.resize(4);
    scene.company.together[red] = {{blue}};
    scene.company.out[blue][mug] = true;
    for (const std::uint64_t seed : {1, 2, 3, 4, 5}) {
        Random random(seed);
        Layout layout(scene, round_envelope(75, 400));
        construct(layout, random, 1, 60);
        REQUIRE(separate(layout, random, {}));
        CHECK(layout.place(red).cell == layout.place(blue).cell);
    }
}
