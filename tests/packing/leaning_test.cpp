// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/leaning.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "packing/random_pieces.hpp"
#include "packing/scenes.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;

namespace {

Place leaning_at(double x, double y, double z, double turn, double tilt)
{
    return {outermost, Form::leaning, x, y, z, std::cos(turn), std::sin(turn), 0, std::cos(tilt), std::sin(tilt)};
}

Body rod(const Shape& shape) { return body(shape, {Form::standing, Form::on_end, Form::leaning}); }

} // namespace

TEST_CASE("only long thin plain bodies lean, with their thin side tilting", "[leaning]")
{
    const auto spoon = rod_of(rod(Box{140, 30, 12}));
    REQUIRE(spoon.has_value());
    CHECK(spoon->along == 70);
    CHECK(spoon->across == 6);
    CHECK(spoon->aside == 15);
    CHECK(spoon->base == Form::on_end);
    CHECK_FALSE(rod_of(rod(Box{100, 30, 12})).has_value()); // too stout
    CHECK_FALSE(rod_of(cup(20, 200)).has_value());          // hollow
    Body upright = rod(Cylinder{10, 200});
    upright.upright = true;
    CHECK_FALSE(rod_of(upright).has_value());
    const auto ruler = rod_of(rod(Box{4, 30, 200}));
    REQUIRE(ruler.has_value());
    CHECK(ruler->base == Form::standing);
    CHECK_FALSE(ruler->quarter);
    CHECK(rod_of(rod(Box{30, 4, 200}))->quarter); // its thin side lies along y
}

TEST_CASE("a leaning piece reaches as far as its solid", "[leaning]")
{
    Dice dice(7);
    for (const Shape& shape : {Shape(Cylinder{8, 150}), Shape(Box{140, 30, 12}), Shape(Box{30, 140, 12})}) {
        const Body body = rod(shape);
        for (int k = 0; k < 200; ++k) {
            const Place place = leaning_at(dice.between(-20, 20), dice.between(-20, 20), dice.between(0, 90),
                                           dice.between(0, 6.3), dice.between(0.02, 1.5));
            const Piece piece = piece_at(body, 0, place, 0);
            const Hull hull = hull_of(piece);
            const Extent e = extent(hull);
            // The rounding that is kept to spare, 3e-6 mm, is all by which it may differ.
            CHECK(piece.z + piece.half_height == Approx(e.high.z).margin(1e-5));
            for (const Vec3& n : {Vec3{1, 0, 0}, Vec3{0, -1, 0}, Vec3{0.6, 0, -0.8}, Vec3{0.48, 0.64, 0.6}}) {
                CHECK(piece_support(piece, n.x, n.y, n.z) == Approx(support(hull, n)).margin(1e-5));
            }
        }
    }
}

TEST_CASE("pieces of which one leans are apart where no overlap is told", "[leaning]")
{
    Dice dice(11);
    int apart = 0, needless = 0, overlapping = 0;
    for (int k = 0; k < 4000; ++k) {
        const Body body = rod(k % 2 == 0 ? Shape(Cylinder{dice.between(2, 12), 150}) : Shape(Box{140, 30, 12}));
        const Piece p = piece_at(body, 0,
                                 leaning_at(dice.between(-40, 40), dice.between(-40, 40), dice.between(0, 90),
                                            dice.between(0, 6.3), dice.between(0.02, 1.5)),
                                 0);
        const Piece q = random_piece(dice, 40);
        const double distance = separation(hull_of(p), hull_of(q)).distance;
        const double told = overlap(p, q);
        if (told == 0) {
            ++apart;
            CHECK(distance > -1e-4);
        } else {
            ++overlapping;
            needless += distance > 0.01 ? 1 : 0;
        }
        CHECK(overlap(q, p) == Approx(told).margin(1e-9));
    }
    CHECK(apart > 400);
    CHECK(overlapping > 100);
    CHECK(needless < overlapping / 4); // it may err towards overlap at curved edges, but not often
}

TEST_CASE("a rod leans in a room by its width or its height", "[leaning]")
{
    const Body body = rod(Cylinder{2, 120});
    const Rod lean = rod_of(body).value();
    Room room;
    room.radius = 40;
    room.height = 100;
    const double wide = tilt_by_width(lean, room, 1, 0), high = tilt_by_height(lean, room.height);
    CHECK(60 * std::sin(wide) + std::cos(wide) == Approx(std::sqrt(40 * 40 - 1)));
    CHECK(60 * std::cos(high) + std::sin(high) == Approx(50));
    CHECK(may_lean_in(body, room)); // 120 < sqrt(80^2 + 100^2) = 128
    room.height = 85;
    CHECK_FALSE(may_lean_in(body, room)); // 120 > sqrt(80^2 + 85^2) = 116.7
    room.ceiling = false;
    CHECK(may_lean_in(body, room)); // it may stand out
}
