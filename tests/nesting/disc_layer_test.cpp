// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "nesting/disc_layer.hpp"
#include "nesting/kit_scene.hpp"
#include "packing/separation.hpp"
#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::test;

namespace {

/// Some tins of 20 mm in a row, each `rise` mm higher than the one before.
packing::Layout in_a_row(const KitScene& kit, double rise)
{
    const auto count = static_cast<int>(kit.scene.bodies.size());
    packing::Layout layout(kit.scene, {true, 10.1 * count, 0, 0, 500});
    for (int body = 0; body < count; ++body) {
        packing::Place place;
        place.x = 20.01 * (body - 0.5 * (count - 1));
        place.z = 20 + rise * body;
        layout.put(body, place);
    }
    return layout;
}

KitScene tins(int count)
{
    KitText kit(round_bundle(500, 500), 0);
    kit.item("tin", cylinder(20, 40), count);
    return kit_scene(kit_of(kit.text()), {});
}

} // namespace

TEST_CASE("a layer of discs is of round things that stand beside one another in a round bundle")
{
    const KitScene kit = tins(3);
    CHECK(is_disc_layer(in_a_row(kit, 0)));
    CHECK(is_disc_layer(in_a_row(kit, 10)));
    CHECK_FALSE(is_disc_layer(in_a_row(kit, 25))); // the third stands above the first
    CHECK_FALSE(is_disc_layer(in_a_row(tins(1), 0)));

    packing::Layout lying = in_a_row(kit, 0);
    packing::Place place = lying.place(1);
    place.form = packing::Form::on_end;
    lying.put(1, place);
    CHECK_FALSE(is_disc_layer(lying));

    packing::Layout square(kit.scene, {false, 0, 50, 50, 50});
    CHECK_FALSE(is_disc_layer(square));

    KitText boxes(round_bundle(500, 500), 0);
    boxes.item("block", box(20, 20, 20), 2);
    const KitScene blocks = kit_scene(kit_of(boxes.text()), {});
    CHECK_FALSE(is_disc_layer(in_a_row(blocks, 0)));
}

// Seven discs of radius 10 lie in a circle of radius 30: one in the middle, six round it (common knowledge).
TEST_CASE("a layer of discs is rearranged into a smaller one, and only into one")
{
    const KitScene kit = tins(7);
    packing::Layout layout = in_a_row(kit, 1);
    packing::Random random(1);
    SqueezeOptions options;
    options.work = 20'000;
    REQUIRE(rearrange_discs(layout, random, options));
    CHECK(layout.envelope().radius > 30);
    CHECK(layout.envelope().radius < 30.01); // with air between what is curved
    CHECK(layout.total_overlap() <= packing::negligible_overlap(kit.scene));
    for (int body = 0; body < 7; ++body) {
        CHECK(layout.place(body).z == 20 + body);
    }
    CHECK(layout.measured() >= options.work);

    const double radius = layout.envelope().radius;
    CHECK_FALSE(rearrange_discs(layout, random, options));
    CHECK(layout.envelope().radius == radius);
}
