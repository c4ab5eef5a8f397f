// SPDX-License-Identifier: GPL-3.0-or-later
/// Boxes whose least bundle is published, and blocks that fill a cube.
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
    return volume_ml(bundle.envelope);
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
    const Bundle bundle = solved(kit, Effort::normal);
    REQUIRE(has_bundle(bundle.status));
    CHECK(volume_ml(bundle.envelope) >= 27 * (1 - 1e-9));
}
