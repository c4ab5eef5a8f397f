// SPDX-License-Identifier: GPL-3.0-or-later
/// Boxes whose least bundle is published, and blocks that fill a box.
#include <catch2/catch.hpp>
#include <vector>

#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

struct Sides {
    double length, width, height;
};

// C. S. Chen, S. M. Lee, Q. S. Shen, "An analytical model for the container loading problem", European J. Operational
// Research 80 (1995); J.-F. Tsai, H.-L. Li, "A global optimization method for packing problems", Engineering
// Optimization 38 (2006). Sides and volumes from memory; the volumes are proved again by exhaustive search.
const std::vector<Sides> boxes{{25, 8, 6}, {20, 10, 5}, {16, 7, 3}, {15, 12, 6}, {22, 8, 3}, {20, 10, 4}};

/// The problems have no unit. Taken as centimetres, the boxes are as large as things of a kit, and volumes are
/// millilitres; boxes along the axes touch without a gap, so that the unit makes no difference to the figures.
double least_volume(std::size_t count, Effort effort)
{
    KitText kit(box_bundle());
    for (std::size_t k = 0; k < count; ++k) {
        kit.item("box-" + std::to_string(k + 1), box(10 * boxes[k].length, 10 * boxes[k].width, 10 * boxes[k].height));
    }
    const Bundle bundle = solved(kit, effort);
    REQUIRE(has_bundle(bundle.status));
    CHECK(bundle.lower_bound_ml <= volume_ml(bundle.envelope));
    CHECK(bundle.status == Status::proved_best);
    return volume_ml(bundle.envelope);
}

/// Nothing is left free in the bundle, which is proved the smallest thereby.
void check_filled(const KitText& kit, double volume, Effort effort)
{
    const Bundle bundle = solved(kit, effort);
    REQUIRE(has_bundle(bundle.status));
    CHECK(bundle.status == Status::proved_best);
    CHECK(volume_ml(bundle.envelope) == Approx(volume).epsilon(1e-9));
}

} // namespace

TEST_CASE("four boxes of the classic problem take 4368")
{
    CHECK(least_volume(4, Effort::normal) == Approx(4368).epsilon(1e-6));
}

TEST_CASE("five boxes of the classic problem take 5040")
{
    CHECK(least_volume(5, Effort::normal) == Approx(5040).epsilon(1e-6));
}

TEST_CASE("six boxes of the classic problem take 5880", "[heavy]")
{
    CHECK(least_volume(6, Effort::normal) == Approx(5880).epsilon(1e-6));
}

TEST_CASE("nine blocks fill a cube of three")
{
    // The Slothouber-Graatsma puzzle: six blocks of 1 x 2 x 2 and three of 1 x 1 x 1 fill 3 x 3 x 3 in one way only.
    // E. R. Berlekamp, J. H. Conway, R. K. Guy, Winning Ways for Your Mathematical Plays (1982).
    KitText kit(box_bundle(30.02, 30.02, 30.02));
    kit.item("slab", box(10, 20, 20), 6).item("cube", box(10, 10, 10), 3);
    check_filled(kit, 27, Effort::quick);
}

TEST_CASE("eighteen blocks fill a cube of five")
{
    // J. H. Conway's puzzle, in the same book.
    KitText kit(box_bundle(50.02, 50.02, 50.02));
    kit.item("slab", box(10, 20, 40), 13).item("cube", box(20, 20, 20)).item("tile", box(10, 20, 20));
    kit.item("rod", box(10, 10, 30), 3);
    check_filled(kit, 125, Effort::quick);
}

TEST_CASE("twenty-one squares fill a square of 112")
{
    // A. J. W. Duijvestijn, "Simple perfect squared square of lowest order", J. Combinatorial Theory B 25 (1978); the
    // sides are sequence A014530 of the On-Line Encyclopedia of Integer Sequences. From memory; the areas add up.
    KitText kit(box_bundle(1120.02, 1120.02, 10.02));
    for (const int side : {2, 4, 6, 7, 8, 9, 11, 15, 16, 17, 18, 19, 24, 25, 27, 29, 33, 35, 37, 42, 50}) {
        kit.item("square-" + std::to_string(side), box(10 * side, 10 * side, 10));
    }
    check_filled(kit, 12544, Effort::quick);
}
