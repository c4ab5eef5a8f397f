// SPDX-License-Identifier: GPL-3.0-or-later
/// What tapers, in numbers that can be worked out in the head: points in it, and beakers in one another.
#include <catch2/catch.hpp>

#include "proof/disc.hpp"
#include "proof/room.hpp"
#include "proof_support.hpp"

using namespace tuckwright;
using namespace tuckwright::proof;

namespace {

constexpr double nm = 1e-6;

/// 40 mm wide at the rim, 20 at the foot, 30 high: the radius grows by a millimetre every three.
Cylinder beaker() { return {40, 30, 20}; }

Room inside(const Shape& shape, bool open_top = true, const Quaternion& turn = {})
{
    return room_of(piece_of(shape, {{0, 0, 0}, turn}), 0, false, open_top);
}

bool fits(const Cylinder& what, const Vec3& center, const Room& room)
{
    return against_walls(piece_of(what, {center, {}}), room).inside;
}

} // namespace

TEST_CASE("a point is in what tapers by the radius at its height")
{
    const Piece piece = piece_of(beaker(), {{0, 0, 0}, {}});
    const auto at = [&](double x, double z) { return where_is(nanometres(Vec3{x, 0, z}), piece); };
    CHECK(at(15, 0) == Where::surface);
    CHECK(at(15 + nm, 0) == Where::outside);
    CHECK(at(15 - nm, 0) == Where::inner);
    CHECK(at(12, -9) == Where::surface);
    CHECK(at(12 + nm, -9) == Where::outside);
    CHECK(at(18, 9) == Where::surface);
    CHECK(at(18 + nm, 9) == Where::outside);
    CHECK(at(10, -15) == Where::surface);
    CHECK(at(10 + nm, -15) == Where::outside);
    const Piece down = piece_of(beaker(), {{0, 0, 0}, {0, 1, 0, 0}}); // on its rim
    CHECK(where_is(nanometres(Vec3{18, 0, -9}), down) == Where::surface);
    CHECK(where_is(nanometres(Vec3{12, 0, 9}), down) == Where::surface);
    CHECK(where_is(nanometres(Vec3{13, 0, 9}), down) == Where::outside);
}

TEST_CASE("what is straight goes into what tapers as far as its foot is wide enough")
{
    const Room room = inside(beaker());
    CHECK(fits({30, 15}, {0, 0, 7.5}, room)); // from half-way up, where the radius is 15
    CHECK_FALSE(fits({30 + 2 * nm, 15}, {0, 0, 7.5}, room));
    CHECK_FALSE(fits({30, 15}, {0, 0, 7.5 - 6 * nm}, room));
    CHECK(fits({30, 15}, {0, 0, 7.5 + 60}, room)); // above the rim the wall goes on straight up
    CHECK(fits({40, 15}, {0, 0, 22.5}, room));
    CHECK_FALSE(fits({40 + 2 * nm, 15}, {0, 0, 22.5}, room));
    CHECK(fits({20, 5}, {0, 0, -12.5}, room));
    CHECK_FALSE(fits({20 + 2 * nm, 5}, {0, 0, -12.5}, room));
    CHECK(fits({24, 5}, {3, 0, 2.5}, room)); // 3 mm aside, half-way up: 12 + 3 is 15
    CHECK_FALSE(fits({24, 5}, {3 + nm, 0, 2.5}, room));
    // What lies keeps within the wall where that is narrowest for it: 3 mm below the middle it is 14.
    const auto lying = [&](double height) {
        return against_walls(piece_of(Cylinder{6, height}, {{0, 0, 0}, {1, 0, 1, 0}}), room).inside;
    };
    CHECK(lying(27));       // 13.5 and 3 are 13.83 from the axis
    CHECK_FALSE(lying(28)); // 14 and 3 are more than 14
}

TEST_CASE("one beaker goes into another like it as far as their walls let it")
{
    const Room room = inside(beaker());
    CHECK(fits({38, 30, 18}, {0, 0, 0}, room));
    CHECK(fits({40, 30, 20}, {0, 0, 0}, room)); // wall to wall
    CHECK_FALSE(fits({40 + 2 * nm, 30, 20}, {0, 0, 0}, room));
    CHECK_FALSE(fits({40, 30, 20 + 2 * nm}, {0, 0, 0}, room));
    CHECK(fits({40, 30, 20}, {1, 0, 3}, room)); // 3 mm higher, the wall is a millimetre wider at its foot
    CHECK_FALSE(fits({40, 30, 20}, {1 + nm, 0, 3}, room));
    CHECK(fits({46, 60, 26}, {0, 0, 24}, room)); // foot at 3 below the middle, radius 13 in 14; at the rim 16 in 20
    // One that widens faster than the wall, so that it counts at the rim: from radius 5 to 45 in 40 mm.
    CHECK(fits({90, 40, 10}, {0, 0, 20}, room)); // at the rim, 15 mm up, it is 20
    CHECK_FALSE(fits({90, 40, 10}, {0, 0, 20 - 6 * nm}, room));
    CHECK_FALSE(keeps_to_prism(piece_of(Cylinder{90, 40, 10}, {{0, 0, 20}, {}}), room)); // beyond the rim it is wider
    CHECK(keeps_to_prism(piece_of(Cylinder{40, 30, 20}, {{0, 0, 0}, {}}), room));
    // Mouth down, neither taper helps: it counts as wide as its rim, where the wall is narrowest for it.
    const auto down = [&](double diameter) {
        return against_walls(piece_of(Cylinder{diameter, 6, 4}, {{0, 0, 0}, {0, 1, 0, 0}}), room).inside;
    };
    CHECK((down(28) && !down(28 + 2 * nm)));
}

TEST_CASE("a disc that fills its circle is within it, and one that is wider is not, though no multiplier tells at once")
{
    const auto disc = [](const Rational& slope) {
        return SlantedDisc{{0, 0}, {1, 0}, {0, slope}, 10, slope};
    };
    CHECK(multiplier_proves(disc(1), 10, 100)); // level: all that is left over is nought
    CHECK_FALSE(multiplier_proves(disc(1), 9, 100));
    CHECK_FALSE(multiplier_proves(disc(1), 10, 99));
    CHECK_FALSE(multiplier_proves(disc(1), 10, 101));
    const Rational slope = Rational(3) / Rational(5); // seen as an ellipse, 10 by 6
    CHECK(multiplier_proves(disc(slope), 10, 100));
    CHECK_FALSE(multiplier_proves(disc(slope), 6, 36)); // as if only the smaller half axis counted
    const SlantedDisc turned{{0, 0}, {0, slope}, {1, 0}, 10, slope};
    CHECK_FALSE(multiplier_proves(turned, 6, 36));
    const proof::Fit wide = within_circle(disc(slope), 10), narrow = within_circle(disc(slope), 9);
    CHECK((wide.inside && !wide.outside && wide.excess_nm == Approx(0).margin(1e-6)));
    CHECK((!narrow.inside && narrow.outside && narrow.excess_nm == Approx(1)));
    CHECK(within_circle({{3, 0}, {1, 0}, {0, slope}, 10, slope}, 10).excess_nm == Approx(3)); // beside the middle
    CHECK(within_circle({{-3, 0}, {1, 0}, {0, slope}, 10, slope}, 10).excess_nm == Approx(3));
}

TEST_CASE("what a clearance leaves nothing of holds nothing, and says how much is missing")
{
    const Piece grain = piece_of(Box{2 * nm, 2 * nm, 1}, {});
    const proof::Fit tube = against_walls(grain, room_of(piece_of(Cylinder{10, 10}, {}), nanometres(7), true, true));
    CHECK((!tube.inside && tube.outside && tube.excess_nm == Approx(2e6)));
    const proof::Fit chest = against_walls(grain, room_of(piece_of(Box{30, 10, 10}, {}), nanometres(7), true, true));
    CHECK((!chest.inside && chest.outside && chest.excess_nm == Approx(2e6)));
    const proof::Fit across = against_walls(grain, room_of(piece_of(Box{10, 30, 10}, {}), nanometres(7), true, true));
    CHECK((!across.inside && across.outside && across.excess_nm == Approx(2e6)));
}

TEST_CASE("vectors are parallel only where all of them agree")
{
    CHECK(parallel({1, 2, 3}, {-2, -4, -6}));
    CHECK(parallel({0, 0, 5}, {0, 0, 1}));
    CHECK_FALSE(parallel({1, 2, 3}, {1, 2, 4}));
    CHECK_FALSE(parallel({1, 2, 3}, {1, 3, 3}));
    CHECK_FALSE(parallel({1, 2, 3}, {2, 2, 3}));
    CHECK_FALSE(parallel({1, 2, 0}, {1, 3, 0}));
    CHECK_FALSE(parallel({0, 2, 1}, {0, 3, 1}));
    CHECK_FALSE(parallel({2, 0, 1}, {3, 0, 1}));
    CHECK_FALSE(parallel({1, 0, 0}, {0, 1, 0}));
}
