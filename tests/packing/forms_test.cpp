// SPDX-License-Identifier: GPL-3.0-or-later
/// Pieces beside a body's axis in all six forms, tapering rooms, what lies beyond a rim, and several ways to stow a body.
#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>

#include "packing/scenes.hpp"
#include "packing/separation.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;

namespace {

constexpr std::array all_forms{Form::standing,    Form::on_end,       Form::on_side,
                               Form::upside_down, Form::on_other_end, Form::on_other_side};

Piece disc(double x, double y, double z, double radius, double half_height, double foot = 0)
{
    Piece piece;
    piece.x = x, piece.y = y, piece.z = z;
    piece.radius = piece.reach = radius;
    piece.half_height = half_height;
    piece.foot = foot;
    return piece;
}

/// A mug with a box for a handle along its x.
Body mug()
{
    Body made = body(Cylinder{80, 70}, {all_forms.begin(), all_forms.end()});
    made.pieces.push_back({Box{24, 10, 40}, 5, 52, 0});
    made.plan_is_round = false;
    return made;
}

} // namespace

TEST_CASE("the six forms are turns: they keep lengths and hands, and send the own z where their names say")
{
    const std::array<Vec3, 6> up{{{0, 0, 1}, {1, 0, 0}, {0, -1, 0}, {0, 0, -1}, {-1, 0, 0}, {0, 1, 0}}};
    for (std::size_t k = 0; k < all_forms.size(); ++k) {
        const Vec3 x = tipped(all_forms[k], {1, 0, 0}), y = tipped(all_forms[k], {0, 1, 0}),
                   z = tipped(all_forms[k], {0, 0, 1});
        CHECK(z == up[k]);
        CHECK(Vec3{x.y * y.z - x.z * y.y, x.z * y.x - x.x * y.z, x.x * y.y - x.y * y.x} == z); // right-handed
        CHECK(x.x * y.x + x.y * y.y + x.z * y.z == 0);
        const Vec3 any = tipped(all_forms[k], {2, 3, 5});
        CHECK(any == Vec3{2 * x.x + 3 * y.x + 5 * z.x, 2 * x.y + 3 * y.y + 5 * z.y, 2 * x.z + 3 * y.z + 5 * z.z});
    }
}

TEST_CASE("a handle goes along with its mug")
{
    const Body body = mug();
    const auto handle = [&](Form form, double c = 1, double s = 0) {
        return piece_at(body, 1, {outermost, form, 10, 20, 50, c, s}, 3);
    };
    const auto lies = [](const Piece& p, Vec3 at, double a, double b, double half_height) {
        CHECK(p.x == Approx(at.x));
        CHECK(p.y == Approx(at.y));
        CHECK(p.z == Approx(at.z));
        CHECK(p.a == Approx(a));
        CHECK(p.b == Approx(b));
        CHECK(p.half_height == Approx(half_height));
    };
    lies(handle(Form::standing), {62, 20, 55}, 12, 5, 20);
    lies(handle(Form::standing, 0, 1), {10, 72, 55}, 12, 5, 20);  // a quarter turn; a is along (c, s)
    lies(handle(Form::upside_down), {62, 20, 45}, 12, 5, 20);
    lies(handle(Form::on_end), {15, 20, -2}, 20, 5, 12);          // the handle hangs down
    lies(handle(Form::on_other_end), {5, 20, 102}, 20, 5, 12);    // and points up
    lies(handle(Form::on_side), {62, 15, 50}, 12, 20, 5);
    lies(handle(Form::on_other_side), {62, 25, 50}, 12, 20, 5);
    CHECK(handle(Form::standing).further);
    CHECK(handle(Form::standing).owner == 3);
    CHECK_FALSE(piece_at(body, 0, {}, 0).further);
    const Reach down = vertical_reach(body, Form::on_end), up = vertical_reach(body, Form::on_other_end);
    CHECK(down.below == 64);
    CHECK(down.above == 40);
    CHECK(up.below == 40);
    CHECK(up.above == 64);
}

TEST_CASE("a lying part of a body is a lying piece, whichever way the body lies")
{
    Body body = mug();
    body.pieces.push_back({Cylinder{8, 30}, 10, 0, 44, Form::on_side}); // along the body's y
    CHECK(piece_at(body, 2, {outermost, Form::standing}, 0).kind == PieceKind::lying);
    CHECK(piece_at(body, 2, {outermost, Form::upside_down}, 0).kind == PieceKind::lying);
    const Piece upright = piece_at(body, 2, {outermost, Form::on_side}, 0); // the body's y points up
    CHECK(upright.kind == PieceKind::disc);
    CHECK(upright.half_height == 15);
    const Piece turned = piece_at(body, 2, {outermost, Form::on_end}, 0);
    CHECK(turned.kind == PieceKind::lying);
    CHECK(std::abs(turned.s) == 1);
    CHECK(turned.a == 15);
}

TEST_CASE("in a tapering room the wall at each height counts")
{
    Room room{true, 40, 0, 0, 80, true, false};
    room.foot = 30; // 1 mm wider for every 8 mm of height
    CHECK(room.radius_at(0) == 30);
    CHECK(room.radius_at(40) == 35);
    CHECK(room.radius_at(100) == 40);
    CHECK(excess(disc(0, 0, 10, 30, 10), room) == 0);
    CHECK(excess(disc(0, 0, 10, 31, 10), room) == Approx(1));          // at its foot
    CHECK(excess(disc(0, 0, 18, 31, 10), room) == Approx(0).margin(1e-12)); // 8 mm higher up
    CHECK(rise_to_fit(disc(0, 0, 10, 31, 10), room) == Approx(8));
    CHECK(excess(disc(2, 0, 18, 31, 10), room) == Approx(2));
    CHECK(excess(disc(0, 0, 40, 40, 40, 30), room) == Approx(0).margin(1e-12)); // tapers as the room does
    CHECK(excess(disc(0, 0, 40, 41, 40, 30), room) == Approx(1));      // wider at its top
    CHECK(excess(disc(0, 0, 48, 41, 40, 31), room) == Approx(0).margin(1e-12)); // the same beaker a rise of w / s higher
    CHECK(excess(disc(0, 0, 60, 46, 40, 30), room) > 0);               // too wide where it passes the rim
    Room straight = room;
    straight.foot = 0;
    CHECK(rise_to_fit(disc(0, 0, 10, 41, 10), straight) == 0);
    CHECK(excess(disc(0, 0, 10, 40, 10, 20), straight) == 0);
}

TEST_CASE("a further piece may lie beyond an open rim that is too narrow for it, a first piece may not")
{
    const Room open{true, 40, 0, 0, 80, true, false};
    Piece wide = disc(0, 0, 90, 60, 10); // from the rim up
    CHECK(excess(wide, open) == Approx(20));
    wide.further = true;
    CHECK(excess(wide, open) == 0);
    wide.z = 87; // 3 mm below the rim: rather that than 20 mm through the wall
    CHECK(excess(wide, open) == Approx(3));
    wide.z = 20;
    CHECK(excess(wide, open) == Approx(20));
    Room shut = open;
    shut.ceiling = true;
    wide.z = 90;
    CHECK(excess(wide, shut) == Approx(20 + 20)); // through the wall and the ceiling
}

TEST_CASE("a body with two ways to stow it has the doors of both")
{
    Scene scene = scene_of({cup(100, 80), body(Cylinder{120, 30}, {Form::standing, Form::on_end})});
    scene.others.push_back(body(Box{90, 30, 10}, {Form::standing}));
    scene.stowages = {{}, {0}};
    const unsigned up = bit(Form::standing), end = bit(Form::on_end);
    scene.fits = {{up, 0, 0, 0}, {up | end, 0, 0, 0}, {up, up, 0, 0}}; // wide, it goes beside the cup only
    CHECK(scene.ways(0) == 1);
    CHECK(scene.ways(1) == 2);
    CHECK(scene.row(1, 1) == 2);
    Layout layout(scene, round_envelope(200, 300));
    const auto open = doors(layout, 1);
    const auto has = [&](int cell, Form form, int way) {
        return std::any_of(open.begin(), open.end(), [&](const Door& door) {
            return door.cell == cell && door.form == form && door.way == way;
        });
    };
    CHECK(open.size() == 4);
    CHECK(has(outermost, Form::standing, 0));
    CHECK(has(outermost, Form::on_end, 0));
    CHECK(has(outermost, Form::standing, 1));
    CHECK(has(0, Form::standing, 1));
    CHECK_FALSE(layout.may_enter(1, 0, Form::standing, 0));
    Random random(3);
    for (int k = 0; k < 50; ++k) {
        const Place place = sample_place(layout, 1, {0, Form::standing, 1}, random);
        CHECK(place.way == 1);
        CHECK(place.cell == 0);
        layout.put(1, place);
        CHECK(layout.stowed(1).pieces.front().shape == Shape{Box{90, 30, 10}});
    }
}
