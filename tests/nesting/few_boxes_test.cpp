// SPDX-License-Identifier: GPL-3.0-or-later
/// The exact bound of kits of a few boxes, and kits that it says nothing of; and the searches that it ends.
#include <catch2/catch.hpp>

#include "nesting/few_boxes.hpp"
#include "nesting/search.hpp"
#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::test;

namespace {

constexpr std::uint64_t work = 1'000'000;

double bound(const KitText& text, double incumbent_ml, std::uint64_t most_work = work)
{
    return bound_of_few_boxes_ml(kit_of(text.text()), incumbent_ml, most_work);
}

KitText bricks(const std::string& bundle, const std::string& rule = "")
{
    return KitText(bundle).item("brick", box(90, 80, 70) + rule, 2).item("slab", box(100, 50, 20) + rule);
}

} // namespace

TEST_CASE("the bound of a few boxes is their least box, and the incumbent where that is no larger")
{
    // The bricks on one another, 80 x 70 in plan and 180 high, and the slab at their side: 90 x 70; 140 x 80 is larger.
    const double least = bound(bricks(box_bundle()), 1e6);
    CHECK(least == Approx(90 * 70 * 180 / 1000.0).margin(200));
    CHECK(least >= (2 * 90 * 80 * 70 + 100 * 50 * 20) / 1000.0);
    CHECK(bound(bricks(box_bundle()), least) == least);
    CHECK(bound(bricks(box_bundle()), least - 1) == least - 1);
    CHECK(bound(bricks(box_bundle(), ", upright: yes"), 1e6) >= least);
    CHECK(bound(bricks(box_bundle(500, 500, 70)), 1e6) >= least); // lower than it could be
    CHECK(bound(bricks(box_bundle()), 1e6, 10) == 0);             // not proved
}

TEST_CASE("of other kits the bound of a few boxes says nothing")
{
    CHECK(bound(bricks(round_bundle()), 1e6) == 0);
    CHECK(bound(bricks(box_bundle()).item("can", cylinder(50, 60)), 1e6) == 0);
    CHECK(bound(bricks(box_bundle()).item("more", box(20, 20, 20), 10), 1e6) == 0);
    CHECK(bound(bricks(box_bundle()).item("tin", box(99, 99, 99) + ", inside: {wall: 1, base: 1, opens: top}"), 1e6) ==
          0);
}

TEST_CASE("a search ends with what is proved the least, and does without where there is no work for that")
{
    const Kit kit = kit_of(bricks(box_bundle()).text());
    SearchOptions options;
    options.effort = {6, 2, 1, 20'000, 40'000};
    options.effort.box_work = work;
    options.stop = [] { return false; };
    const auto proved = search(kit, options);
    REQUIRE(proved.size() == 1);
    CHECK(proved.front().is_least);
    CHECK(proved.front().volume / 1000 == Approx(bound(bricks(box_bundle()), 1e6)).epsilon(1e-9));
    options.accepts = [](const Proposal& proposal) { return !proposal.is_least; };
    CHECK(search(kit, options).size() > 1); // what is least but not accepted ends nothing
    options.accepts = nullptr;
    options.effort.box_work = 0;
    for (const Proposal& proposal : search(kit, options)) {
        CHECK_FALSE(proposal.is_least);
        CHECK(proposal.volume >= proved.front().volume * (1 - 1e-9));
    }
}

TEST_CASE("a search is handed the filling of a box")
{
    SearchOptions options;
    options.effort = {6, 2, 1, 20'000, 40'000};
    options.effort.fill_work = work;
    options.stop = [] { return false; };
    KitText blocks(box_bundle(30.02, 30.02, 30.02));
    blocks.item("slab", box(10, 20, 20), 6).item("cube", box(10, 10, 10), 3);
    const auto filled = search(kit_of(blocks.text()), options);
    REQUIRE(filled.size() == 1);
    CHECK(filled.front().volume == Approx(27000).epsilon(1e-12));
    CHECK(filled.front().is_least);
}
