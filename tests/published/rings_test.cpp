// SPDX-License-Identifier: GPL-3.0-or-later
/// Rings that nest in one another in a rectangle: sleeves and cylinders of one height in a box of that height.
#include <catch2/catch.hpp>
#include <vector>

#include "support/kit_text.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

/// Equal rings: how many, their inner radius (0 for a disc) and their outer one.
struct Rings {
    int demand;
    double inner, outer;
};

// J. P. Pedroso, S. Cunha, J. N. Tavares, "Recursive circle packing problems", International Transactions in
// Operational Research 23 (2016); their data as kept with the SCIP solver: each set fits in one rectangle.
const std::vector<Rings> ring1{{1, 2.45, 3.00}, {4, 0.45, 1.0}, {5, 0, 0.45}};                  // in 6 x 6
const std::vector<Rings> ring2{{6, 0.15, 0.2}, {3, 0.4, 0.7}, {3, 0.8, 1.0}, {2, 0.1, 1.0}};    // in 4.83 x 4.83
const std::vector<Rings> circle6{{6, 0, 1.00}};                                                 // in 5.33 x 5.33

/// Ten millimetres for their unit. No cylinder may lie: each is higher than the box would let it be wide.
constexpr double unit = 10, height = 100;

Bundle in_square(const std::vector<Rings>& set, double side, Effort effort)
{
    KitText kit(box_bundle(unit * side + 0.02, unit * side + 0.02, height));
    for (std::size_t k = 0; k < set.size(); ++k) {
        std::string fields = cylinder(2 * unit * set[k].outer, height);
        if (set[k].inner > 0) {
            fields += ", inside: {cylinder: {diameter: " + mm(2 * unit * set[k].inner) + "}, opens: both}";
        }
        kit.item("ring-" + std::to_string(k), fields, set[k].demand);
    }
    return solved(kit, effort);
}

} // namespace

TEST_CASE("ten rings and discs fit a square, four rings in the widest")
{
    const Bundle bundle = in_square(ring1, 6, Effort::normal);
    REQUIRE(has_bundle(bundle.status));
    // Beside the widest ring, which is as wide as the square, a corner takes a radius of 0.51 at most: all four
    // rings of radius 1 must lie in it.
    for (const auto& item : bundle.items) {
        if (item.id == "ring-1") {
            REQUIRE(item.in.has_value());
            CHECK(bundle.items[item.in->item].id == "ring-0");
        }
    }
}

TEST_CASE("fourteen rings of four kinds fit a square", "[heavy]")
{
    // Thorough, since a normal effort seldom finds this: three wide rings, two thick ones and a nest each.
    if (slow_build) { // there only for the faults that sanitizers see
        const Bundle bundle = in_square(ring2, 4.83, Effort::quick);
        CHECK((has_bundle(bundle.status) || bundle.status == Status::not_found));
        return;
    }
    CHECK(has_bundle(in_square(ring2, 4.83, Effort::thorough).status));
}

TEST_CASE("six discs fit a square")
{
    CHECK(has_bundle(in_square(circle6, 5.33, Effort::normal).status));
}
