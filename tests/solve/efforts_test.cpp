// SPDX-License-Identifier: GPL-3.0-or-later
/// What more effort may promise.
#include <catch2/catch.hpp>
#include <cmath>

#include "support/kit_text.hpp"
#include "support/workload.hpp"
#include "tuckwright/units.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

double litres(const Bundle& bundle) { return volume_ml(outer_envelope(bundle)) / 1000; }

/// A tin with a lid, discs that go into it, and sticks that hardly do.
KitText picnic()
{
    KitText kit(round_bundle(), 0.5);
    kit.item("tin", test::cylinder(90, 60) + ", inside: {" + test::cylinder(88, 58) + ", opens: top}");
    kit.item("disc", test::cylinder(42, 20), 2);
    kit.item("stick", test::cylinder(9, 85), 2);
    return kit;
}

} // namespace

TEST_CASE("thorough effort gives no larger bundle than normal effort")
{
    for (std::uint64_t seed = 1; seed <= count(2, 1); ++seed) {
        const Bundle normal = solved(picnic(), Effort::normal, seed), thorough = solved(picnic(), Effort::thorough, seed);
        REQUIRE(has_bundle(normal.status));
        REQUIRE(has_bundle(thorough.status));
        CHECK(litres(thorough) <= litres(normal));
        CHECK(thorough.effort == "thorough");
    }
}
