// SPDX-License-Identifier: GPL-3.0-or-later
/// Vessels that are full when they are packed.
#include <algorithm>
#include <catch2/catch.hpp>

#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

const PlacedItem& find(const Bundle& bundle, const std::string& id)
{
    REQUIRE(has_bundle(bundle.status));
    return *std::find_if(bundle.items.begin(), bundle.items.end(), [&](const auto& item) { return item.id == id; });
}

/// A bottle with a salt tube that would fit it.
Bundle bottle(const std::string& contents)
{
    KitText kit(round_bundle(), 0.5);
    kit.item("spirit", cylinder(62, 115) + ", inside: {wall: 1, base: 1, lid: own}" + contents);
    kit.item("salt", cylinder(24, 80));
    return solved(kit, Effort::quick);
}

/// A pot with a lid that would fit a shut pan, though the pot does not.
Bundle pot(const std::string& contents)
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(120, 90) + ", inside: {wall: 1, base: 1, opens: top}" + contents);
    kit.item("lid", cylinder(121, 20) + ", upright: yes, closes: {item: pot, adds: 20, intrudes: 0}");
    kit.item("pan", cylinder(140, 30) + ", upright: yes, inside: {wall: 1, base: 1, lid: own}");
    return solved(kit, Effort::quick);
}

} // namespace

TEST_CASE("nothing goes into a bottle that is full")
{
    CHECK(find(bottle(""), "salt").in.has_value());
    const Bundle full = bottle(", contents: {what: spirit, amount: 200}");
    CHECK_FALSE(find(full, "salt").in.has_value());
    CHECK(find(full, "spirit").full);
    const Bundle part = bottle(", contents: {what: cotton wool, amount: 5, fills: no}");
    CHECK(find(part, "salt").in.has_value());
    CHECK_FALSE(find(part, "spirit").full);
    CHECK(part.lower_bound_ml < full.lower_bound_ml);
}

TEST_CASE("nothing goes into a shut bottle of liquid, whether or not the file says what is in it")
{
    const Bundle shut = bottle(", kind: liquid");
    CHECK_FALSE(find(shut, "salt").in.has_value());
    CHECK(find(shut, "spirit").full);
    CHECK(find(bottle(", kind: liquid, contents: {what: dregs, amount: 5, fills: no}"), "salt").in.has_value());
}

TEST_CASE("the lid of a full pot is shut, even where loose would be smaller")
{
    CHECK(find(pot(", upright: yes"), "lid").in.has_value()); // in the pan
    const Bundle full = pot(", contents: {what: rice, amount: 300}");
    CHECK(find(full, "lid").closes.has_value());
    CHECK(find(full, "pot").full);
    CHECK_FALSE(find(pot(", contents: {what: rice, amount: 300, fills: no}"), "lid").closes.has_value());
}
