// SPDX-License-Identifier: GPL-3.0-or-later
/// Layouts: who may enter where, what is seen of what stands out, what overlaps, and how pieces lie in a form.
#include <catch2/catch.hpp>

#include "packing/scenes.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;

namespace {

/// A cup, a smaller cup and a rod, each of which fits the one before; the rod is longer than both.
Scene cups_and_rod()
{
    Scene scene = scene_of({cup(80, 60), cup(60, 50), body(Cylinder{10, 100}, {Form::standing, Form::on_end})});
    let_in(scene, 1, 0);
    let_in(scene, 2, 0);
    let_in(scene, 2, 1);
    return scene;
}

Place standing(int cell, double x, double y, double z) { return {cell, Form::standing, x, y, z, 1, 0}; }

} // namespace

TEST_CASE("a piece lies as its form says")
{
    const Body box = body(Box{60, 40, 20});
    const Piece up = piece_at(box, 0, {outermost, Form::standing, 1, 2, 3, 1, 0}, 7);
    CHECK(up.kind == PieceKind::rectangle);
    CHECK(up.owner == 7);
    CHECK(up.a == 30);
    CHECK(up.b == 20);
    CHECK(up.half_height == 10);
    const Piece end = piece_at(box, 0, {outermost, Form::on_end, 0, 0, 0, 1, 0}, 0); // own z along x, own x up
    CHECK(end.a == 10);
    CHECK(end.b == 20);
    CHECK(end.half_height == 30);
    const Piece side = piece_at(box, 0, {outermost, Form::on_side, 0, 0, 0, 1, 0}, 0); // own z along -y, own y up
    CHECK(side.a == 30);
    CHECK(side.b == 10);
    CHECK(side.half_height == 20);
    const Piece rod = piece_at(body(Cylinder{10, 100}), 0, {outermost, Form::on_end, 0, 0, 5, 0, 1}, 0);
    CHECK(rod.kind == PieceKind::lying);
    CHECK(rod.a == 50);
    CHECK(rod.radius == 5);
    CHECK(rod.half_height == 5);
    CHECK(rod.s == 1); // turned a quarter: along y
    CHECK(rod.reach == Approx(std::hypot(50, 5)));
}

TEST_CASE("a body's reach counts all its pieces, each at its offset")
{
    Body lidded = body(Cylinder{80, 60});
    lidded.pieces.push_back({Cylinder{82, 4}, 32});
    const Reach up = vertical_reach(lidded, Form::standing);
    CHECK(up.below == 30);
    CHECK(up.above == 34);
    CHECK(plan_reach(lidded, Form::standing) == 41);
    const Reach lying = vertical_reach(lidded, Form::on_end);
    CHECK(lying.below == 41);
    CHECK(lying.above == 41);
    CHECK(plan_reach(lidded, Form::on_end) == Approx(std::max(std::hypot(30, 40), 32 + std::hypot(2, 41))));
}

TEST_CASE("bodies enter only where the table, the circle of containers and uprightness allow")
{
    Scene scene = cups_and_rod();
    scene.fits[0][2] = bit(Form::standing); // as if either cup fitted the other
    Layout layout(scene, round_envelope(200, 200));
    CHECK(layout.may_enter(1, 0, Form::standing));
    CHECK_FALSE(layout.may_enter(1, 0, Form::on_end));
    CHECK_FALSE(layout.may_enter(1, 2, Form::standing));
    layout.put(1, standing(0, 0, 0, 25));
    CHECK_FALSE(layout.may_enter(0, 1, Form::standing)); // it holds that cup
    CHECK(layout.may_enter(2, 1, Form::on_end));

    Scene strict = cups_and_rod();
    strict.bodies[2].upright = true;
    strict.bodies[1].forms = {Form::standing, Form::on_end};
    strict.fits[1][0] |= bit(Form::on_end);
    Layout upright(strict, round_envelope(200, 200));
    CHECK_FALSE(upright.may_enter(2, 0, Form::on_end));
    CHECK(upright.may_enter(2, 1, Form::standing));
    upright.put(2, standing(1, 0, 0, 50));
    CHECK_FALSE(upright.may_enter(1, outermost, Form::on_end)); // what it holds must stand
    CHECK(upright.may_enter(1, outermost, Form::standing));
}

TEST_CASE("what stands out of a vessel is seen outside, at every level")
{
    const Scene scene = cups_and_rod();
    Layout layout(scene, round_envelope(200, 200));
    layout.put(0, standing(outermost, 100, 0, 30));
    layout.put(1, standing(0, 5, 0, 25));
    CHECK(layout.visible(0).size() == 1); // the small cup ends below the rim
    layout.put(2, standing(1, 3, 0, 50));
    REQUIRE(layout.visible(1).size() == 2);
    REQUIRE(layout.visible(0).size() == 2);
    const Piece& rod = layout.visible(0).back();
    CHECK(rod.owner == 2);
    CHECK(rod.x == Approx(100 + 5 + 3));
    CHECK(rod.z == Approx(1 + 1 + 50)); // two floors of 1 mm
    CHECK(layout.inside(outermost) == std::vector<int>{0});
    CHECK(layout.inside(0) == std::vector<int>{1});
    layout.put(2, standing(outermost, 0, 0, 50));
    CHECK(layout.visible(0).size() == 1);
    CHECK(layout.inside(outermost) == std::vector<int>{0, 2});
    layout.hide(2);
    CHECK(layout.inside(outermost) == std::vector<int>{0});
}

TEST_CASE("overlaps and excesses are counted wherever the bodies lie")
{
    const Scene scene = cups_and_rod();
    Layout layout(scene, round_envelope(100, 110));
    layout.put(0, standing(outermost, 0, 0, 30));
    layout.put(1, standing(0, 0, 0, 25));
    layout.put(2, standing(outermost, 60, 0, 50));
    CHECK(layout.total_overlap() == 0);
    layout.put(2, standing(outermost, 43, 0, 50)); // 40 + 5 - 43
    CHECK(layout.total_overlap() == Approx(2));
    CHECK(layout.overlap_of(0, 2) == Approx(2));
    CHECK(layout.overlap_of(2, 0) == Approx(2));
    CHECK(layout.overlap_of(1, 2) == 0); // in the cup, out of sight
    layout.put(2, standing(0, 36, 0, 50)); // in the wide cup beside the small one: 30 + 5 - 36 is none, the wall at 39
    CHECK(layout.total_overlap() == Approx(2)); // 36 + 5 - 39
    layout.put(2, standing(1, 0, 0, 50));
    CHECK(layout.total_overlap() == 0);
    layout.set_envelope(round_envelope(100, 100)); // the rod stands 102 high
    CHECK(layout.total_overlap() == Approx(2));
    CHECK(layout.excess_of(2) == Approx(2));
    const Weights even(layout.size());
    CHECK(layout.cost_at(2, layout.place(2), even, 1e300) == Approx(2));
    Weights heavy(layout.size());
    heavy.of(2, 2) = 3;
    CHECK(layout.cost_at(2, layout.place(2), heavy, 1e300) == Approx(6));
}

TEST_CASE("copies of a layout count their work together until one counts anew")
{
    const Scene scene = cups_and_rod();
    Layout layout(scene, round_envelope(100, 110));
    const auto before = layout.measured();
    Layout copy = layout;
    const Weights weights(layout.size());
    copy.cost_at(0, copy.place(0), weights, 1e300);
    CHECK(layout.measured() > before);
    copy.count_anew();
    CHECK(copy.measured() == 0);
    copy.count_work(5000);
    CHECK(copy.measured() == 5000);
    CHECK(layout.measured() < 5000);
}
