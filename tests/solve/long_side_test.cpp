// SPDX-License-Identifier: GPL-3.0-or-later
/// Which way round a box lies: its length is its long side unless the kit's limits ask for the contrary.
#include <catch2/catch.hpp>

#include "support/kit_text.hpp"
#include "tuckwright/units.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

Box envelope_of(const std::string& bundle_rule, std::uint64_t seed)
{
    KitText kit(bundle_rule, 0.5);
    kit.item("tin", test::box(120, 50, 40) + ", inside: {" + test::box(118, 48, 38) + ", opens: top}");
    kit.item("rod", test::cylinder(9, 100), 2);
    kit.item("wedge", test::box(60, 22, 16), 3);
    const Bundle bundle = solved(kit, Effort::quick, seed);
    REQUIRE(has_bundle(bundle.status));
    for (const PlacedItem& item : bundle.items) {
        CHECK(item.form == posture(bundle, static_cast<std::size_t>(&item - bundle.items.data())));
    }
    return std::get<Box>(bundle.envelope);
}

} // namespace

TEST_CASE("a box without limits, or with none that asks for the contrary, is longer than wide")
{
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        const Box free = envelope_of(box_bundle(), seed);
        CHECK(free.length >= free.width);
        const Box low = envelope_of(box_bundle(140, 140, 60), seed);
        CHECK(low.length >= low.width);
    }
}

TEST_CASE("a box whose length is limited lies the other way round")
{
    const Box narrow = envelope_of(box_bundle(80, 140, 60), 1);
    CHECK(narrow.length <= 80);
    CHECK(narrow.width >= 120);
}
