// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles made by hand in which things lie aslant: the exact check proves them, so solve must not deny them.
#include <catch2/catch.hpp>
#include <cmath>

#include "support/handmade_bundles_parts.hpp"
#include "support/kit_text.hpp"
#include "tuckwright/units.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

/// A stick of 100 mm across the corners of a flat tin that is 90 mm long and 60 mm wide inside.
Bundle stick_in_tin()
{
    using namespace tuckwright::handmade;
    auto tin = hollow(item("tin", handmade::box(92, 62, 14, {46, 31, 7})), handmade::box(90, 60, 12, {46, 31, 7}),
                      Opening::closed);
    // Turned by twice the angle whose tangent is 3/11: cosine 112/130, sine 66/130; so 88.7 by 55.1 of 89 by 59.
    auto stick = in(item("stick", handmade::box(100, 5, 8, {46, 31, 5}, {11, 0, 0, 3})), 0);
    auto result = bundle("A stick across", Box{92, 62, 14}, {tin, stick});
    step(result, 1);
    step(result, 0);
    stands(result, 0);
    stands(result, 1);
    return result;
}

} // namespace

TEST_CASE("a stick across the corners of a tin is a bundle that solve does not deny")
{
    Bundle by_hand = stick_in_tin();
    by_hand.lower_bound_ml = 0;
    for (const auto& objection : check(by_hand, 5)) {
        UNSCOPED_INFO(objection.rule << ": " << objection.what);
    }
    REQUIRE(check(by_hand).empty());
    KitText kit(box_bundle(92, 62, 14), 0.5);
    kit.item("tin", test::box(92, 62, 14) + ", inside: {" + test::box(90, 60, 12) + ", lid: own}");
    kit.item("stick", test::box(100, 5, 8));
    const Bundle bundle = solved(kit, Effort::quick);
    INFO(bundle.explanation);
    CHECK(bundle.status != Status::does_not_fit); // found is better, not found is honest
    CHECK(bundle.lower_bound_ml <= volume_ml(by_hand.envelope));
}
