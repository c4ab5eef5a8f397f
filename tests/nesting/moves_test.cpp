// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "nesting/moves.hpp"
#include "packing/construct.hpp"
#include "support/kit_text.hpp"
#include "tuckwright/stowage.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::test;

namespace {

Kit pot_with_lid()
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(100, 80) + ", inside: {wall: 1, base: 1}");
    kit.item("lid", cylinder(102, 9) + ", closes: {item: pot, adds: 4, intrudes: 5}");
    kit.item("cup", cylinder(70, 60) + ", inside: {wall: 1, base: 1}");
    kit.item("rod", cylinder(8, 120));
    return kit_of(kit.text());
}

Proposal constructed(const Kit& kit, bool shut)
{
    auto scene = std::make_shared<const KitScene>(kit_scene(kit, {shut}));
    packing::Layout layout(scene->scene, {true, 80, 0, 0, 400});
    packing::Random random(7);
    packing::construct(layout, random, 1, 60);
    return {scene, layout, 1};
}

} // namespace

TEST_CASE("a loose lid is shut, and all else stays in its container")
{
    const Kit kit = pot_with_lid();
    const Proposal loose = constructed(kit, false);
    REQUIRE(loose.scene->origins.size() == 4);
    packing::Random random(1);
    const auto shut = with_a_lid_shut(kit, loose, random);
    REQUIRE(shut);
    REQUIRE(shut->scene->origins.size() == 3);
    CHECK(shut->scene->origins[0].lid == Copy{1, 1});
    CHECK(shut->layout.place(1).cell == loose.layout.place(2).cell); // the cup, in the pot both times
    CHECK(shut->layout.place(1).cell == 0);
    for (int body = 0; body < 3; ++body) { // the rod does not fit a shut pot
        const packing::Place place = shut->layout.place(body);
        CHECK(shut->layout.may_enter(body, place.cell, place.form));
    }
    CHECK_FALSE(with_a_lid_shut(kit, *shut, random));
}

TEST_CASE("turning a pile over mirrors the heights of what lies in the bundle")
{
    const Kit kit = pot_with_lid();
    Proposal pile = constructed(kit, true);
    std::vector<std::pair<double, double>> before;
    const auto spans = [&](const packing::Layout& layout) {
        std::vector<std::pair<double, double>> found;
        for (const int body : layout.inside(packing::outermost)) {
            double low = 1e9, high = -1e9;
            for (const packing::Piece& piece : layout.visible(body)) {
                low = std::min(low, piece.z - piece.half_height);
                high = std::max(high, piece.z + piece.half_height);
            }
            found.emplace_back(low, high);
        }
        return found;
    };
    before = spans(pile.layout);
    turn_over(pile.layout);
    const auto after = spans(pile.layout);
    const double height = pile.layout.envelope().height;
    REQUIRE(after.size() == before.size());
    for (std::size_t k = 0; k < after.size(); ++k) {
        CHECK(after[k].first == Approx(height - before[k].second).margin(1e-9));
        CHECK(after[k].second == Approx(height - before[k].first).margin(1e-9));
    }
}

TEST_CASE("wrapping slips a sleeve round things, and leaves everything where it may be")
{
    const std::string springs = GENERATE("", ", springy: yes");
    KitText text(round_bundle(), 0.5);
    text.item("pot", cylinder(122, 90) + ", inside: {wall: 1, base: 1}");
    text.item("screen", "sheet: {length: 300, width: 80, thickness: 0.5, roll: 40" + springs + "}");
    text.item("tin", cylinder(60, 50));
    text.item("mug", cylinder(80, 70) + ", inside: {wall: 1, base: 1}");
    text.item("rod", cylinder(8, 60));
    const Kit kit = with_stowages(kit_of(text.text()));
    const auto scene = std::make_shared<const KitScene>(kit_scene(kit, {}));
    REQUIRE(has_sleeves(scene->scene));
    packing::Layout layout(scene->scene, {true, 200, 0, 0, 400});
    packing::Random random(5);
    packing::construct(layout, random, 1, 60);
    int wrapped = 0;
    for (int k = 0; k < 200; ++k) {
        wrap(layout, random);
        for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
            const packing::Place place = layout.place(body);
            CHECK(layout.may_enter(body, place.cell, place.form, place.way));
            wrapped += place.cell == 1 ? 1 : 0;
        }
        const packing::Place screen = layout.place(1);
        CHECK((screen.cell != packing::outermost || !scene->scene.stowed(1, screen.way).held)); // it would spring open
    }
    CHECK(wrapped > (springs.empty() ? 20 : 0)); // what springs open is wrapped in the pot only
    const Kit plain = pot_with_lid();
    CHECK_FALSE(has_sleeves(kit_scene(plain, {true}).scene));
}
