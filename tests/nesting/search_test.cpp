// SPDX-License-Identifier: GPL-3.0-or-later
/// The search's own promises, and those of squeezing, refining and putting a layout on the grid.
#include <catch2/catch.hpp>

#include "nesting/bundle_of_layout.hpp"
#include "nesting/search.hpp"
#include "nesting/squeeze.hpp"
#include "packing/construct.hpp"
#include "support/kit_text.hpp"
#include "support/workload.hpp"
#include "tuckwright/units.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::packing;
using namespace tuckwright::test;

namespace {

Kit breakfast(const std::string& bundle = round_bundle())
{
    KitText kit(bundle, 0.5);
    kit.item("pot", cylinder(120, 100) + ", inside: {wall: 1, base: 1, opens: top}");
    kit.item("lid", cylinder(121, 9) + ", closes: {item: pot, adds: 3, intrudes: 6}");
    kit.item("cup", cylinder(80, 70) + ", inside: {wall: 1, base: 1, opens: top}");
    kit.item("oats", box(110, 70, 40)).item("spoon", box(160, 38, 20), 2).item("rod", cylinder(10, 90));
    return kit_of(kit.text());
}

SearchOptions short_search(unsigned threads = 1)
{
    SearchOptions options;
    options.effort = {6, 2, 1, 60'000, 120'000};
    options.threads = threads;
    options.stop = [] { return false; };
    return options;
}

} // namespace

TEST_CASE("proposals come in rising volume, free of overlap, alike for any number of threads")
{
    for (const auto& bundle : {round_bundle(), box_bundle()}) {
        const Kit kit = breakfast(bundle);
        const auto one = search(kit, short_search(1)), two = search(kit, short_search(2));
        REQUIRE_FALSE(one.empty());
        REQUIRE(one.size() == two.size());
        for (std::size_t k = 0; k < one.size(); ++k) {
            CHECK(one[k].volume == two[k].volume);
            CHECK(one[k].volume == Approx(volume(one[k].layout.envelope())).epsilon(1e-9));
            CHECK(one[k].layout.total_overlap() < 1e-4);
            if (k > 0) {
                CHECK(one[k].volume >= one[k - 1].volume);
            }
            for (int body = 0; body < static_cast<int>(one[k].layout.size()); ++body) {
                CHECK(one[k].layout.place(body).x == two[k].layout.place(body).x);
                CHECK(one[k].layout.place(body).cell == two[k].layout.place(body).cell);
            }
        }
    }
}

TEST_CASE("limits that cannot be met give no proposal")
{
    CHECK(search(breakfast(round_bundle(125, 105)), short_search()).empty());
    const Kit roomy = breakfast(box_bundle(260, 200, 150));
    for (const auto& proposal : search(roomy, short_search())) {
        CHECK(within(proposal.layout.envelope(), envelope_limits(roomy)));
    }
}

TEST_CASE("a search that is stopped at once ends at once")
{
    SearchOptions options = short_search();
    options.effort = {64, 12, 10, 4'000'000, 30'000'000};
    int asked = 0;
    options.stop = [&asked] {
        ++asked;
        return true;
    };
    search(breakfast(), options); // would take minutes
    CHECK(asked > 0);
}

TEST_CASE("squeezing and refining leave no overlap, keep the limits and never grow")
{
    const Kit kit = breakfast();
    const KitScene made = kit_scene(kit, {true});
    int within_limits = 0;
    for (int trial = 0; trial < count(12, 3); ++trial) {
        Random random(600 + static_cast<std::uint64_t>(trial));
        Layout layout(made.scene, Envelope{true, 90.0 + 5 * (trial % 6), 0, 0, 10});
        construct(layout, random, 0.5, 40);
        tighten(layout);
        SqueezeOptions options;
        options.work = 60'000;
        options.stop = [] { return false; };
        if (trial % 3 == 2) {
            options.limits.height = 130;
        }
        const double before = volume(layout.envelope());
        CAPTURE(trial);
        if (!squeeze(layout, random, options)) {
            continue;
        }
        ++within_limits;
        CHECK(within(layout.envelope(), options.limits));
        CHECK(layout.total_overlap() < 1e-4);
        if (trial % 3 != 2) {
            CHECK(volume(layout.envelope()) <= before * (1 + 1e-9));
        }
        const double squeezed = volume(layout.envelope());
        refine(layout, random, options);
        CHECK(within(layout.envelope(), options.limits));
        CHECK(layout.total_overlap() < 1e-4);
        CHECK(volume(layout.envelope()) <= squeezed * (1 + 1e-9));
    }
    CHECK(within_limits >= count(6, 1));
}

TEST_CASE("a layout on the grid keeps its order, its places and its turns")
{
    const Kit kit = breakfast();
    auto proposals = search(kit, short_search());
    REQUIRE_FALSE(proposals.empty());
    Layout layout = proposals.front().layout;
    const Layout before = layout;
    round_turns(layout);
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        const Place &p = before.place(body), &q = layout.place(body);
        CHECK(std::hypot(p.c - q.c, p.s - q.s) < 2e-5);
        CHECK(q.c * q.c + q.s * q.s == Approx(1).margin(1e-14));
    }
    const Bundle bundle = bundle_of_layout(kit, *proposals.front().scene, layout);
    std::vector<std::string> order;
    for (std::size_t k = 0; k < bundle.items.size(); ++k) {
        order.push_back(label(bundle, k));
    }
    CHECK(order == std::vector<std::string>{"pot", "lid", "cup", "oats", "spoon 1", "spoon 2", "rod"});
    for (const auto& item : bundle.items) {
        for (const auto& solid : item.solids) {
            const Vec3 c = solid.pose.center;
            CHECK((c.x == snap(c.x) && c.y == snap(c.y) && c.z == snap(c.z)));
            CHECK(c.z > 0);
        }
        CHECK(item.cavities.size() == (item.id == "pot" || item.id == "cup" ? 1u : 0u));
    }
    CHECK(volume_ml(bundle.envelope) * 1000 == Approx(volume(layout.envelope())).epsilon(1e-3));
}
