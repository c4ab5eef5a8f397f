// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/exact.hpp"

#include <catch2/catch.hpp>
#include <limits>
#include <random>

#include "proof/piece.hpp"
#include "tuckwright/contract.hpp"

using namespace tuckwright;
using namespace tuckwright::proof;

TEST_CASE("roots of squares are exact, all others lie between their bounds")
{
    std::mt19937_64 engine(7);
    std::uniform_int_distribution<long> whole(1, 1'000'000'000'000);
    const Rational width = Rational(1) / Rational(CGAL::Gmpz(1UL << 32) * CGAL::Gmpz(1UL << 32));
    for (int i = 0; i < 2000; ++i) {
        const Rational value = Rational(whole(engine)) / Rational(whole(engine));
        const Bounds square = root(value * value);
        CHECK((square.below == value && square.above == value));
        const Bounds bounds = root(value);
        CHECK((bounds.below * bounds.below <= value && bounds.above * bounds.above >= value));
        CHECK((bounds.below >= 0 && bounds.above - bounds.below <= width));
    }
    CHECK((root(0).below == 0 && root(0).above == 0));
    CHECK((root(2).below < root(2).above));
    CHECK_THROWS_AS(root(-1), ContractBroken);
}

TEST_CASE("axes are exactly unit vectors at right angles, right-handed, even for the largest quaternions")
{
    std::mt19937_64 engine(8);
    std::uniform_int_distribution<std::int64_t> any(std::numeric_limits<std::int64_t>::min());
    std::uniform_int_distribution<std::int64_t> small(-9, 9);
    for (int i = 0; i < 500; ++i) {
        auto& from = i % 2 == 0 ? any : small;
        const Quaternion turn{from(engine), from(engine), from(engine), 1 + i % 3};
        const auto axis = axes_of(turn);
        for (std::size_t k = 0; k < 3; ++k) {
            CHECK(dot(axis[k], axis[k]) == 1);
            CHECK(dot(axis[k], axis[(k + 1) % 3]) == 0);
            const Vector &a = axis[(k + 1) % 3], &b = axis[(k + 2) % 3];
            CHECK((axis[k][0] == a[1] * b[2] - a[2] * b[1] && axis[k][1] == a[2] * b[0] - a[0] * b[2]));
        }
        const Matrix3 rough = rotation_matrix(turn); // column k is the image of axis k
        for (std::size_t k = 0; k < 3; ++k) {
            for (std::size_t j = 0; j < 3; ++j) {
                CHECK(approximate(axis[k][j]) == Approx(rough[j][k]).margin(1e-15));
            }
        }
    }
    CHECK_THROWS_AS(axes_of({0, 0, 0, 0}), ContractBroken);
}

TEST_CASE("points are told exactly: outside, on the surface, within")
{
    const Quaternion turn{2, 0, 0, 1}; // cosine 3/5, sine 4/5
    const Piece box = piece_of(Box{10, 20, 30}, {{1, 2, 3}, turn});
    const Piece tin = piece_of(Cylinder{10, 30}, {{1, 2, 3}, turn});
    const auto at = [](double x, double y, double z) { return nanometres(Vec3{x, y, z}); };
    CHECK(where_is(at(1, 2, 3), box) == Where::inner);
    CHECK(where_is(at(4, 6, 3), box) == Where::surface); // 5 mm along the box's own x
    CHECK(where_is(at(4.000001, 6, 3), box) == Where::outside);
    CHECK(where_is(at(3.999999, 6, 3), box) == Where::inner);
    CHECK(where_is(at(1, 2, 18), box) == Where::surface);
    CHECK(where_is(at(-7, 8, 3), box) == Where::surface); // 10 mm along its own y
    CHECK(where_is(at(-7, 8.000001, 3), box) == Where::outside);
    CHECK(where_is(at(-7.000001, 8, 3), box) == Where::outside);
    CHECK(where_is(at(4, 6, 3), tin) == Where::surface);
    CHECK(where_is(at(4, 6, 18), tin) == Where::surface);
    CHECK(where_is(at(4, 6.000001, 3), tin) == Where::outside);
    CHECK(where_is(at(4, 6, 18.000001), tin) == Where::outside);
    CHECK(where_is(at(1, 2, 17.999999), tin) == Where::inner);
}

TEST_CASE("a reach that is no rational lies between its bounds, any other is exact")
{
    const Piece tin = piece_of(Cylinder{2e-6, 4e-6}, {}); // radius 1 nm, half height 2 nm
    const Bounds aslant = reach(tin, {1, 1, 0});
    CHECK((aslant.below < aslant.above && aslant.below * aslant.below < 2 && aslant.above * aslant.above > 2));
    const Bounds level = reach(tin, {3, 4, 7});
    CHECK((level.below == 19 && level.above == 19)); // 2 * 7 + sqrt(9 + 16)
    const Piece box = piece_of(Box{2e-6, 4e-6, 6e-6}, {{9, 9, 9}, {2, 0, 0, 1}});
    const Bounds turned = reach(box, {5, 0, 1});
    CHECK((turned.below == 14 && turned.above == 14)); // 1 * 3 + 2 * 4 + 3 * 1, along axes of 3/5 and 4/5, length 5
}
