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

/// Cubes of 60, 40 and 40: the small ones on one another beside the large one, which takes 100 x 60 x 80. All in a row
/// are 140 x 60 x 60, and at two sides of the large one 100 x 100 x 60.
KitText cubes(const std::string& bundle, const std::string& rule = "")
{
    return KitText(bundle).item("large", box(60, 60, 60) + rule).item("small", box(40, 40, 40) + rule, 2);
}

} // namespace

TEST_CASE("the bound of a few boxes is their least box, and the incumbent where that is no larger")
{
    CHECK(bound(cubes(box_bundle()), 1000) == Approx(480).epsilon(1e-9));
    CHECK(bound(cubes(box_bundle()), 480) == Approx(480).epsilon(1e-9));
    CHECK(bound(cubes(box_bundle()), 450) == 450);
    CHECK(bound(cubes(box_bundle(), ", upright: yes"), 1000) == Approx(480).epsilon(1e-9));
    CHECK(bound(cubes(box_bundle(200, 79, 79)), 1000) == Approx(504).epsilon(1e-9)); // only the row is within
    CHECK(bound(cubes(box_bundle()), 1000, 10) == 0);                                // not proved
}

TEST_CASE("of other kits the bound of a few boxes says nothing")
{
    CHECK(bound(cubes(round_bundle()), 1e6) == 0);
    CHECK(bound(cubes(box_bundle()).item("can", cylinder(50, 60)), 1e6) == 0);
    CHECK(bound(cubes(box_bundle()).item("more", box(20, 20, 20), 10), 1e6) == 0);
    CHECK(bound(cubes(box_bundle()).item("tin", box(99, 99, 99) + ", inside: {wall: 1, base: 1, opens: top}"), 1e6) == 0);
}

TEST_CASE("a search ends with what is proved the least, and does without where there is no work for that")
{
    const Kit kit = kit_of(cubes(box_bundle()).text());
    SearchOptions options;
    options.effort = {6, 2, 1, 20'000, 40'000};
    options.effort.box_work = work;
    options.stop = [] { return false; };
    const auto proved = search(kit, options);
    REQUIRE(proved.size() == 1);
    CHECK(proved.front().is_least);
    CHECK(proved.front().volume / 1000 == Approx(480).epsilon(1e-9));
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
